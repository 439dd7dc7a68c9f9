"""What nothing holds up, though it touches something: the wall behind it, or a neighbour."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setout.geometry import Axis, Box, Face
from setout.inspect.view import View, reached
from setout.join.hanging import on_hardware
from setout.join.sweep import close_pairs

_WALLS = (Face(Axis.DEEP, 1), Face(Axis.WIDE, -1), Face(Axis.WIDE, 1), Face(Axis.DEEP, -1), Face(Axis.HIGH, 1))


def floating(view: View) -> list[tuple[str, ...]]:
    """The units that neither stand on the floor, nor lie on what is held, nor are joined to a wall or to what is held;
    those that touch each other together, in the order placed. None without a room: such a job may hang anywhere."""
    if view.scene.room is None:
        return []
    held = reached(_held_outright(view), _holds(view))
    loose = [unit for unit in view.units if unit not in held]
    if not loose:
        return []
    near = _near(view)
    groups: dict[str, tuple[str, ...]] = {}
    for unit in loose:
        if not any(unit in group for group in groups.values()):
            group = reached([unit], {one: some - held for one, some in near.items()})
            groups[unit] = tuple(one for one in loose if one in group)
    return [group for group in groups.values() if any(wall_at(view, u) or near.get(u, set()) & held for u in group)]


def wall_at(view: View, unit: str) -> Face | None:
    """The wall that the unit reaches, the back first, or else the room's top."""
    box = view.outline(view.units[unit])
    return next((face for face in _WALLS if _at_room(view, box, face)), None)


def _held_outright(view: View) -> list[str]:
    """What stands on the floor, is joined to the room, hangs by hardware at a wall, or is itself all hung in hardware
    (drawers, doors)."""
    to_room = {view.unit_of[contact.a] for contact in view.joined.contacts if contact.b is None}
    for fitting in view.scene.fittings:
        joined = view.joined.boards.get(fitting.board)
        if joined is not None and _at_room(view, joined.board.box, fitting.face):
            to_room.add(view.unit_of[fitting.board])
    hung = on_hardware(view.scene)
    return [
        unit
        for unit, boards in view.units.items()
        if unit in to_room or _stands(view, boards) or hung.issuperset(boards)
    ]


def _stands(view: View, boards: Iterable[str]) -> bool:
    """Feet lift the assembly that they are under as a whole, and it stands on them wherever they end."""
    lifted = max((view.feet.get(path, Fraction(0)) for path in boards), default=Fraction(0))
    return view.outline(boards).lo[Axis.HIGH] - lifted <= view.floor


def _at_room(view: View, box: Box, face: Face) -> bool:
    room = view.scene.room
    return room is not None and (box.face(face) - room.face(face)) * face.sign >= 0


def _holds(view: View) -> dict[str, set[str]]:
    """By unit, those that it holds up if it is held itself: joined to it, lying on it, or said to rest on it."""
    links = {unit: set(others) for unit, others in view.joined_to.items()}
    for upper, under in view.right_under.items():
        for touching in under:
            links[view.unit_of[touching.other]].add(view.unit_of[upper])  # type: ignore[index]
    for rest in view.scene.rests:
        for lower in rest.lower:
            links[view.unit_of[lower]].update(view.unit_of[upper] for upper in rest.upper)
    return links


def _near(view: View) -> dict[str, set[str]]:
    """By unit, those that it touches in a face."""
    paths = list(view.joined.boards)
    boxes = [view.true_box(path) for path in paths]
    links: dict[str, set[str]] = {}
    for i, j in close_pairs(boxes):
        a, b = view.unit_of[paths[i]], view.unit_of[paths[j]]
        area = boxes[i].shared(boxes[j]) if a != b else None
        if area is not None and sum(size > 0 for size in area.sizes) >= 2:
            links.setdefault(a, set()).add(b)
            links.setdefault(b, set()).add(a)
    return links
