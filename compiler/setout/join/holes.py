"""The spec's own holes and those that hardware wants, as bores."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.geometry import Face, Vec
from setout.join import problems
from setout.join.ground import Ground
from setout.join.methods import Way
from setout.join.methods.task import rod
from setout.join.model import Bore
from setout.join.seats import moved
from setout.place.model import Board, Hole
from setout.source import Span


@dataclass(frozen=True)
class Holes:
    bores: Mapping[str, tuple[Bore, ...]]
    ways: tuple[Way, ...]
    diagnostics: tuple[Diagnostic, ...]


@dataclass(frozen=True)
class _Wanted:
    board: Board
    kind: str
    face: Face
    at: Vec
    diameter: Fraction
    depth: Fraction | None
    source: str
    name: str
    span: Span


def holes(ground: Ground) -> Holes:
    """Bores for the spec's holes, then for the fittings; those that find no wood are told."""
    bores, ways, found = defaultdict(list), [], []
    for count, want in enumerate([*_own(ground), *_fittings(ground)]):
        wood = ground.solids[want.board.path].depth_at(want.at, want.face)
        wrong = _wrong(ground, want, wood)
        if wrong is not None:
            found.append(wrong)
            continue
        bores[want.board.path].append(
            Bore(want.kind, want.face, want.at, want.diameter, want.depth, None, "", want.source)
        )
        box = rod(want.at, _end(ground, want), want.diameter / 2)
        ways.append(Way(want.board.path, want.at, box, want.name, f"hole {count}", want.span))
    return Holes({path: tuple(b) for path, b in bores.items()}, tuple(ways), tuple(found))


def _end(ground: Ground, want: _Wanted) -> Vec:
    """Where the hole ends: at the far face when it goes right through, whatever is milled on the way."""
    axis = want.face.axis
    if want.depth is None:
        return moved(want.at, axis, ground.solids[want.board.path].box.face(want.face.opposite))
    return moved(want.at, axis, want.at[axis] - want.face.sign * want.depth)


def _own(ground: Ground) -> Iterator[_Wanted]:
    for board in ground.scene.boards.values():
        for hole in board.features:
            if isinstance(hole, Hole):
                yield _Wanted(board, "hole", hole.face, hole.at, hole.diameter, hole.depth, "", "a hole", hole.span)


def _fittings(ground: Ground) -> Iterator[_Wanted]:
    for fitting in ground.scene.fittings:
        if fitting.hardware.hole is None or fitting.board not in ground.scene.boards:
            continue
        diameter, depth = fitting.hardware.hole
        board, name = ground.board(fitting.board), f"the hole for {fitting.hardware.name}"
        for point in fitting.points:
            yield _Wanted(board, "hardware", fitting.face, point, diameter, depth, fitting.id, name, fitting.span)


def _wrong(ground: Ground, want: _Wanted, wood: Fraction) -> Diagnostic | None:
    box = ground.solids[want.board.path].box
    across = [k for k in range(3) if k != want.face.axis]
    inside = all(box.lo[k] < want.at[k] < box.hi[k] for k in across)
    if not inside or wood <= 0:
        return problems.hole_in_the_air(want.board, want.name, want.span)
    if want.depth is not None and want.depth >= wood:
        return problems.hole_comes_out(ground, want.board, want.name, want.depth, wood, want.span)
    return None
