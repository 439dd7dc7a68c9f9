"""What is seen of blocks looked at squarely: a grid of all their edges, each cell with the nearest face in it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

MOST_MARKS = 900  # grid lines a way, at most; a finer picture would be greyer, not better


class Face2(NamedTuple):
    """A face turned to the viewer. `near` grows with the distance from the eye; `owner` is an index of the caller's."""

    left: float
    low: float
    right: float
    high: float
    near: float
    owner: int


class Run(NamedTuple):
    """A straight line to draw from (x, y) to (x2, y2), between what is seen on its two sides (-1: nothing there)."""

    x: float
    y: float
    x2: float
    y2: float
    front: int  # owner of the nearer face
    behind: int  # owner of the farther one, or -1
    near: float
    step: float  # how far the farther face lies behind the nearer; 0 where they are flush


class Seen:
    """`cells[row][column]` is the index of the face seen there, or -1."""

    def __init__(self, faces: Sequence[Face2]) -> None:
        self.faces = sorted(faces, key=lambda f: (f.near, f.owner, f))
        self.xs = _marks([x for f in self.faces for x in (f.left, f.right)])
        self.ys = _marks([y for f in self.faces for y in (f.low, f.high)])
        self._column = {x: i for i, x in enumerate(self.xs)}
        self._row = {y: i for i, y in enumerate(self.ys)}
        self.cells = [[-1] * max(len(self.xs) - 1, 0) for _ in range(max(len(self.ys) - 1, 0))]
        self._fill()

    def _fill(self) -> None:
        """Nearest first; `free` leads from a column to the next cell of the row not yet filled."""
        frees = [list(range(len(self.xs))) for _ in self.cells]
        for index, f in enumerate(self.faces):
            left, right = _index(self._column, self.xs, f.left), _index(self._column, self.xs, f.right)
            for row in range(_index(self._row, self.ys, f.low), _index(self._row, self.ys, f.high)):
                free, cells = frees[row], self.cells[row]
                at = _next(free, left)
                while at < right:
                    cells[at] = index
                    free[at] = at + 1
                    at = _next(free, at)

    def runs(self) -> list[Run]:
        """The visible lines, each as long as what lies on its sides stays the same."""
        rows, columns = len(self.cells), len(self.xs) - 1
        out: list[Run] = []
        for j in range(rows + 1):
            pairs = [(self._at(j - 1, i), self._at(j, i)) for i in range(columns)]
            out += [r._replace(x=r.x, x2=r.x2, y=self.ys[j], y2=self.ys[j]) for r in self._line(pairs, self.xs)]
        for i in range(columns + 1):
            pairs = [(self._at(j, i - 1), self._at(j, i)) for j in range(rows)]
            out += [r._replace(x=self.xs[i], x2=self.xs[i], y=r.x, y2=r.x2) for r in self._line(pairs, self.ys)]
        return out

    def owner(self, row: int, column: int) -> int:
        """Who is seen in a cell; -1 for nobody."""
        found = self._at(row, column)
        return self.faces[found].owner if found >= 0 else -1

    def _line(self, pairs: Sequence[tuple[int, int]], marks: Sequence[float]) -> Iterable[Run]:
        """Lines along one grid line, with their ends in `x` and `x2`."""
        start, current = 0, None
        for i, pair in enumerate([*pairs, None]):
            kind = self._between(*pair) if pair else None
            if kind != current:
                if current:
                    yield Run(marks[start], 0, marks[i], 0, *current)
                start, current = i, kind

    def _between(self, a: int, b: int) -> tuple[int, int, float, float] | None:
        """Owner in front and behind, how near, and the step between; None where no line is to be drawn."""
        if a == b:
            return None
        near, far = sorted((k for k in (a, b)), key=lambda k: (k < 0, k))
        f = self.faces[near]
        if far < 0:
            return f.owner, -1, f.near, float("inf")
        g = self.faces[far]
        if f.owner == g.owner and f.near == g.near:
            return None
        return f.owner, g.owner, f.near, g.near - f.near

    def _at(self, row: int, column: int) -> int:
        if 0 <= row < len(self.cells) and 0 <= column < len(self.xs) - 1:
            return self.cells[row][column]
        return -1


def _marks(values: Sequence[float]) -> list[float]:
    """The distinct values in order; where there are too many, those too close to be told apart are left out."""
    marks = sorted(set(values))
    if len(marks) <= MOST_MARKS:
        return marks
    least = (marks[-1] - marks[0]) / MOST_MARKS
    kept = marks[:1]
    for m in marks:
        if m - kept[-1] >= least:
            kept.append(m)
    return kept


def _index(known: dict[float, int], marks: Sequence[float], value: float) -> int:
    """The grid line of `value`, or the last one below it where it was left out."""
    found = known.get(value)
    if found is None:
        from bisect import bisect_right

        found = bisect_right(marks, value) - 1
        known[value] = found
    return found


def _next(free: list[int], at: int) -> int:
    while free[at] != at:
        free[at] = free[free[at]]
        at = free[at]
    return at
