"""Looking at a plan without the compiler's help: solids by coordinate compression, mirror images by hand."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Callable, Iterable
from fractions import Fraction
from itertools import pairwise, product

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis.strategies import SearchStrategy

from setout.geometry import Box
from setout.join.model import Bore, JoinedBoard
from setout.place.model import Mitre, Notch
from setout.plan.model import Plan

PHASES = [Phase.explicit, Phase.reuse, Phase.generate, Phase.shrink]
QUIET = [HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large]


def over(strategy: SearchStrategy, few: int, many: int) -> Callable:
    """Makes a test of a check: on `few` specs, every time the same ones; and, marked slow, on `many` new ones."""

    def made(check: Callable) -> Callable:
        slow = pytest.param(many, False, id="many", marks=pytest.mark.slow)

        @pytest.mark.parametrize(("examples", "same"), [pytest.param(few, True, id="few"), slow])
        def test(examples, same):
            how = settings(
                max_examples=examples, derandomize=same, phases=PHASES, deadline=None, suppress_health_check=QUIET
            )
            how(given(strategy)(check))()

        return test

    return made


def gone(board: JoinedBoard) -> list[Box]:
    """What is milled and sawn out of a board."""
    return [cut.box for cut in board.cuts] + [f.box for f in board.features if isinstance(f, Notch)]


def volumes(solids: Iterable[tuple[Box, list[Box]]]) -> tuple[Fraction, list[Fraction]]:
    """The volume of the union of boxes less what is gone from each, and of each for itself."""
    solids = list(solids)
    every = [box for whole, out in solids for box in (whole, *out)]
    ends = [sorted({e for box in every for e in (box.lo[k], box.hi[k])}) for k in range(3)]
    steps = [[b - a for a, b in pairwise(line)] for line in ends]
    held = [_cells(ends, [whole]) - _cells(ends, out) for whole, out in solids]

    def measured(cells: set) -> Fraction:
        lines: Counter = Counter()
        for i, j, k in cells:
            lines[j, k] += steps[0][i]
        return sum((x * steps[1][j] * steps[2][k] for (j, k), x in lines.items()), Fraction(0))

    return measured(set().union(*held)), [measured(cells) for cells in held]


def _cells(ends: list[list[Fraction]], boxes: Iterable[Box]) -> set[tuple[int, ...]]:
    spans = ([range(bisect_left(e, lo), bisect_left(e, hi)) for e, lo, hi in zip(ends, b.lo, b.hi)] for b in boxes)
    return {cell for span in spans for cell in product(*span)}


def facts(plan: Plan, mirror: Fraction | None = None) -> Counter:
    """All that is cut and drilled in the job, as plain numbers and words; with `mirror`, as seen in a mirror that takes
    wide 0 to that coordinate."""
    return Counter(_board(board, mirror) for board in plan.pieces.joined.drawn.boards.values())


def _board(joined: JoinedBoard, mirror: Fraction | None) -> tuple:
    board = joined.board

    def point(at):
        return tuple(at) if mirror is None else (mirror - at[0], *at[1:])

    def box(of: Box):
        a, b = point(of.lo), point(of.hi)
        return tuple(map(min, a, b)), tuple(map(max, a, b))

    def face(of):
        if of is None:
            return None
        return (int(of.axis), of.sign if mirror is None or of.axis != 0 else -of.sign)

    def drilled(b: Bore):
        if b.kind == "hole" and b.depth is None:  # from either side
            return b.kind, b.face.axis, tuple(x for k, x in enumerate(point(b.at)) if k != b.face.axis), b.diameter
        return b.kind, face(b.face), point(b.at), b.diameter, b.depth, face(b.toward), b.fastener

    features = [
        ("mitre", face(f.end), f.angle, face(f.long)) if isinstance(f, Mitre) else (f.kind, box(f.box))
        for f in joined.features
    ]
    return (
        board.stock.name, box(joined.box), board.thick, board.run, board.grain, face(board.show),
        frozenset(drilled(b) for b in joined.bores),
        frozenset((c.kind, face(c.face), box(c.box), c.run, c.depth) for c in joined.cuts),
        frozenset(features),
    )  # fmt: skip
