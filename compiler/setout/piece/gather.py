"""Boards gathered by what they are: one Group for all that are one and the same to cut."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from setout.geometry import Axis, Face
from setout.join.model import Joined, JoinedBoard
from setout.piece.outline import loose_outline, outline, sources
from setout.piece.reckon import Reckoner, Reckoning, Seen
from setout.place.model import LooseBoard
from setout.resolve.model import Stock
from setout.source import Span
from setout.values import Trace


@dataclass(frozen=True)
class Group:
    """Equal boards. `home` is the assembly definition of the first of them, `span` where that one is written.
    The rest is as in Piece."""

    is_: Reckoning
    stock: Stock
    count: int
    boards: tuple[str, ...]
    exemplar: JoinedBoard | None
    loose: LooseBoard | None
    why_length: Trace
    why_width: Trace
    home: str
    span: Span


def gather(joined: Joined) -> tuple[Group, ...]:
    """All groups, in the order in which their first boards were placed; loose boards come after the placed ones."""
    reckoner = Reckoner(joined.placed)
    single = [_placed(joined, path, reckoner) for path in joined.drawn.boards]
    single += [_loose(joined, index, reckoner) for index in range(len(joined.drawn.scene.loose))]
    found: dict[tuple[str, str], list[Group]] = {}
    for group in single:
        found.setdefault((group.is_.kind, group.is_.shape), []).append(group)
    return tuple(_one(alike) for alike in found.values())


def _one(alike: list[Group]) -> Group:
    """A placed board stands for all: it can be drawn."""
    placed = next((g.exemplar for g in alike if g.exemplar), None)
    return replace(
        alike[0],
        count=sum(g.count for g in alike),
        boards=tuple(path for g in alike for path in g.boards),
        exemplar=placed,
        loose=None if placed else alike[0].loose,
    )


def _placed(joined: Joined, path: str, reckoner: Reckoner) -> Group:
    scenes = [scene.boards[path] for scene in joined.scenes]
    drawn, board = scenes[-1], scenes[-1].board
    whys = tuple(_why(drawn, axis) for axis in Axis)
    alike = len(scenes) == 1 or len({sources(b) for b in scenes}) == 1
    made = reckoner.reckon(Seen([outline(b) for b in scenes], alike, whys, board.held))
    length, width = (whys[axis] for axis in made.axes)
    home = _definition(joined, board.owner)
    return Group(made, board.stock, 1, (path,), drawn, None, length, width, home, board.head)


def _loose(joined: Joined, index: int, reckoner: Reckoner) -> Group:
    scenes = [scene.scene.loose[index] for scene in joined.scenes]
    loose = scenes[-1]
    whys = (*loose.why, Trace("rule", f"thickness of {loose.stock.name}", loose.stock.thick, 1))
    made = reckoner.reckon(Seen([loose_outline(b) for b in scenes], True, whys, (*loose.held, frozenset())))
    length, width = (whys[axis] for axis in made.axes)
    home = _definition(joined, loose.owner)
    return Group(made, loose.stock, loose.count, (loose.path,), None, loose, length, width, home, loose.span)


def _definition(joined: Joined, owner: str) -> str:
    return joined.drawn.scene.instances[owner].definition if owner else ""


def _why(board: JoinedBoard, axis: Axis) -> Trace:
    """Why the board is cut to this size: its own reason, and the tongues that joints added."""
    why = board.board.why[axis]
    tongues = [board.grown.get(Face(axis, sign), Fraction(0)) for sign in (-1, 1)]
    bands = [b.thick for b in board.board.bands if b.face.axis == axis and not b.added]
    if not any(tongues) and not bands:
        return why
    parts = (
        why,
        *(Trace("rule", "housing depth", depth, 1) for depth in tongues if depth),
        *(Trace("rule", "edge banding taken off", -thick, 1) for thick in bands),
    )
    return Trace("operation", "+", board.box.size(axis), 1, parts)
