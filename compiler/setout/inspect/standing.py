"""Free-standing pieces that could tip, and solid wood that moves over the year."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis
from setout.inspect.bearing import shares
from setout.inspect.model import Moves, OnFeet, Standing
from setout.inspect.view import View
from setout.inspect.walls import contents, held_through
from setout.place.model import Board
from setout.strength import figure, find_species, in_tip_over_scope, movement


def standing(view: View) -> tuple[Standing, ...]:
    """Every assembly placed in the job, in order."""
    held = held_through(view)
    return tuple(_stands(view, unit, held.get(unit)) for unit in view.units if unit in view.scene.instances)


def _stands(view: View, unit: str, held: tuple[str, ...] | None) -> Standing:
    outline, weight = view.outline(view.units[unit]), view.weights[unit]
    heavy = weight if weight is not None else figure("tip_weight")
    scope: bool | None = in_tip_over_scope(outline.size(Axis.HIGH), heavy, outline.volume, held is None)
    if scope and weight is None:
        scope = None
    return Standing(unit, outline.size(Axis.HIGH), weight, held is not None, scope, held or ())


def on_feet(view: View) -> tuple[OnFeet, ...]:
    """Units that stand on feet with a load said, and whose weight is known; with their share of what stands on them, as
    far as its weight is known."""
    found, borne = [], None
    for unit, boards in view.units.items():
        feet = [f for f in view.scene.fittings if f.board in boards and f.hardware.raises and f.hardware.load]
        weight = view.total(boards)
        if feet and weight is not None and unit in view.scene.instances:
            each = min(f.hardware.load for f in feet if f.hardware.load is not None)
            borne = borne if borne is not None else shares(view)
            above = {one: part * heavy for one, part in borne[unit].items() if (heavy := _filled(view, one))}
            total = weight + contents(view, list(boards)) + sum(above.values())
            names = tuple(one for one in view.units if one in above)
            found.append(OnFeet(unit, feet[0].hardware.name, sum(f.count for f in feet), each, total, names))
    return tuple(found)


def _filled(view: View, unit: str) -> Fraction:
    """Its weight, as far as it is known, with its contents."""
    boards = view.units[unit]
    return (view.total(boards) or Fraction(0)) + contents(view, list(boards))


def moves(view: View) -> tuple[Moves, ...]:
    """Every solid-wood board, in the order placed."""
    return tuple(
        _moves(view, joined.board) for joined in view.joined.boards.values() if joined.board.stock.species is not None
    )


def _moves(view: View, board: Board) -> Moves:
    """Flat-sawn is taken, which moves most."""
    wood = find_species(board.stock.species or "")
    assert wood is not None
    along = board.run if board.run is not None else board.grain if isinstance(board.grain, Axis) else None
    across = max((axis for axis in Axis if axis not in (board.thick, along)), key=lambda axis: board.box.size(axis))
    size = board.box.size(across)
    over = movement(size, wood.tangential)
    sides = {t.face.sign for t in view.touching[board.path] if t.face.axis == across}
    grows, shrinks = Fraction(over.grows), Fraction(over.shrinks)
    return Moves(board.path, wood.name, across, size, grows, shrinks, grows, len(sides) == 2)
