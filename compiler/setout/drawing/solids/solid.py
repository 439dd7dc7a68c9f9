"""A board as a solid: its box less what has been taken out of it. Floats from here on; each is its Fraction's nearest,
so coordinates that were equal still are.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from itertools import product
from typing import NamedTuple

from setout.geometry import Box
from setout.join.model import JoinedBoard
from setout.place.model import Notch

MOST_HOLES = 60  # in one board drawn in the solid; more could not be told apart
P3 = tuple[float, float, float]


class Block(NamedTuple):
    """A box in floats."""

    lo: P3
    hi: P3

    def moved(self, by: P3) -> Block:
        return Block(added(self.lo, by), added(self.hi, by))


class Edge(NamedTuple):
    """A straight edge of a solid from `a` along `axis` to `b`. `empty` lists which of the four quarters around it hold
    no material, as pairs of signs on the two other axes (in axis order): three is a corner that sticks out, one a
    corner that goes in.
    """

    a: P3
    b: P3
    axis: int
    empty: tuple[tuple[int, int], ...]


def block(box: Box) -> Block:
    lo, hi = (tuple(float(x) for x in end) for end in (box.lo, box.hi))
    return Block(lo, hi)  # type: ignore[arg-type]


def added(a: P3, b: P3) -> P3:
    return a[0] + b[0], a[1] + b[1], a[2] + b[2]


def without_notches(board: JoinedBoard) -> list[Block]:
    """The board as set in its place, between its shoulders, in blocks that don't overlap."""
    notches = sorted((f.box for f in board.features if isinstance(f, Notch)), key=lambda b: -b.volume)
    return split(block(board.board.box), [block(b) for b in notches[:MOST_HOLES]])


def taken_out(board: JoinedBoard) -> list[Block]:
    """What is gone from the board's box: notches, cut-outs, housings; past `MOST_HOLES` the smallest are left out."""
    gone = [f.box for f in board.features if isinstance(f, Notch)] + [c.box for c in board.cuts]
    gone.sort(key=lambda b: -b.volume)
    return [block(b) for b in gone[:MOST_HOLES]]


def split(whole: Block, gone: Iterable[Block]) -> list[Block]:
    """`whole` less `gone`, in blocks that don't overlap."""
    left = [whole]
    for hole in gone:
        left = [piece for part in left for piece in _less(part, hole)]
    return left


def _less(part: Block, hole: Block) -> list[Block]:
    if any(a >= d or c >= b for a, b, c, d in zip(part.lo, part.hi, hole.lo, hole.hi)):
        return [part]
    out = []
    lo, hi = list(part.lo), list(part.hi)
    for axis in range(3):
        if lo[axis] < hole.lo[axis]:
            out.append(_between(lo, hi, axis, lo[axis], hole.lo[axis]))
            lo[axis] = hole.lo[axis]
        if hole.hi[axis] < hi[axis]:
            out.append(_between(lo, hi, axis, hole.hi[axis], hi[axis]))
            hi[axis] = hole.hi[axis]
    return out


def _between(lo: list[float], hi: list[float], axis: int, low: float, high: float) -> Block:
    a, b = list(lo), list(hi)
    a[axis], b[axis] = low, high
    return Block(tuple(a), tuple(b))  # type: ignore[arg-type]


def edges(whole: Block, gone: Sequence[Block]) -> list[Edge]:
    """Every edge of `whole` less `gone`, each as long as it stays the same kind of corner."""
    if not gone:
        return [e for axis in range(3) for e in _box_edges(whole, axis)]
    grid = _Grid(whole, gone)
    return [e for axis in range(3) for e in grid.edges(axis)]


def _box_edges(whole: Block, axis: int) -> Iterable[Edge]:
    u, v = (i for i in range(3) if i != axis)
    for su, sv in product((-1, 1), repeat=2):
        a, b = list(whole.lo), list(whole.hi)
        a[u] = b[u] = whole.hi[u] if su > 0 else whole.lo[u]
        a[v] = b[v] = whole.hi[v] if sv > 0 else whole.lo[v]
        empty = tuple(q for q in product((-1, 1), repeat=2) if q != (-su, -sv))
        yield Edge(tuple(a), tuple(b), axis, empty)  # type: ignore[arg-type]


class _Grid:
    """The solid on the grid of all its faces: which cells hold material."""

    def __init__(self, whole: Block, gone: Sequence[Block]) -> None:
        inside = [g for g in gone if all(a < d and c < b for a, b, c, d in zip(whole.lo, whole.hi, g.lo, g.hi))]
        self.marks = [
            sorted(
                {
                    whole.lo[k],
                    whole.hi[k],
                    *(min(max(x, whole.lo[k]), whole.hi[k]) for g in inside for x in (g.lo[k], g.hi[k])),
                }
            )
            for k in range(3)
        ]
        self.solid = set(product(*(range(len(m) - 1) for m in self.marks)))
        for g in inside:
            self.solid.difference_update(product(*(self._cells(k, g.lo[k], g.hi[k]) for k in range(3))))

    def _cells(self, axis: int, low: float, high: float) -> range:
        """The cells of one axis that lie between two grid lines."""
        return range(bisect_left(self.marks[axis], low), bisect_left(self.marks[axis], high))

    def edges(self, axis: int) -> Iterable[Edge]:
        u, v = (i for i in range(3) if i != axis)
        for iu, iv in product(range(len(self.marks[u])), range(len(self.marks[v]))):
            yield from self._along(axis, u, v, iu, iv)

    def _along(self, axis: int, u: int, v: int, iu: int, iv: int) -> Iterable[Edge]:
        """The edges on one line of the grid, neighbours of one kind made one."""
        marks = self.marks[axis]
        kinds = [self._quarters(axis, u, v, i, iu, iv) for i in range(len(marks) - 1)]
        start = 0
        for i in range(1, len(kinds) + 1):
            if i == len(kinds) or kinds[i] != kinds[start]:
                if _is_corner(kinds[start]):
                    ends = [[0.0] * 3, [0.0] * 3]
                    for end, at in zip(ends, (marks[start], marks[i])):
                        end[axis], end[u], end[v] = at, self.marks[u][iu], self.marks[v][iv]
                    yield Edge(tuple(ends[0]), tuple(ends[1]), axis, kinds[start])  # type: ignore[arg-type]
                start = i

    def _quarters(self, axis: int, u: int, v: int, i: int, iu: int, iv: int) -> tuple[tuple[int, int], ...]:
        empty = []
        for su, sv in product((-1, 1), repeat=2):
            cell = [0, 0, 0]
            cell[axis], cell[u], cell[v] = i, iu - (su < 0), iv - (sv < 0)
            if tuple(cell) not in self.solid:
                empty.append((su, sv))
        return tuple(empty)


def _is_corner(empty: tuple[tuple[int, int], ...]) -> bool:
    """One or three quarters empty, or two that lie across from each other; two side by side are a flat face."""
    if len(empty) == 2:
        return empty[0][0] != empty[1][0] and empty[0][1] != empty[1][1]
    return len(empty) in (1, 3)
