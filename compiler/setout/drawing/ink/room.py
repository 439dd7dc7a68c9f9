"""Finding room for words: what is taken, and the nearest place still free."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from heapq import heapify, heappop, merge
from itertools import islice, pairwise
from math import ceil
from typing import TypeVar

from setout.drawing.ink.svg import Area, Point

CELL = 2.5  # points; how finely places are tried
BOX = 30.0  # points; the squares in which areas are kept
REACH = 14.0  # how far off words beside a thing stand at best
TRIES = 40
CLEARLY = 1.2  # so much larger
USED = -2  # in a raster: words stand there

_T = TypeVar("_T")


def clearly_best(scales: Sequence[float]) -> int:
    """Which room to draw in, by the scale in each: the first, unless another shows things clearly larger."""
    return max(range(len(scales)), key=lambda n: scales[n] / (CLEARLY if n else 1))


class Taken:
    """Areas that words must keep off."""

    def __init__(self) -> None:
        self._boxes: dict[tuple[int, int], list[Area]] = {}

    def add(self, area: Area) -> None:
        for box in _boxes(area):
            self._boxes.setdefault(box, []).append(area)

    def line(self, a: Point, b: Point, air: float = 1.0) -> None:
        """A straight line as a chain of small areas."""
        steps = max(1, int(max(abs(b[0] - a[0]), abs(b[1] - a[1])) / (4 * CELL)))
        if a[0] == b[0] or a[1] == b[1]:
            steps = 1
        at = [(a[0] + (b[0] - a[0]) * i / steps, a[1] + (b[1] - a[1]) * i / steps) for i in range(steps + 1)]
        for (x, y), (p, q) in pairwise(at):
            self.add(Area(min(x, p), min(y, q), max(x, p), max(y, q)).grown(air))

    def free(self, area: Area) -> bool:
        return not any(area.meets(a) for box in _boxes(area) for a in self._boxes.get(box, ()))

    def nearest(self, want: Point, wide: float, high: float, within: Area) -> Area | None:
        """The free area of that size inside `within` whose middle is nearest to `want`."""
        for x, y in _ring_places(want, wide, high, within):
            area = Area(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            if self.free(area):
                return area
        return None


def _boxes(area: Area) -> list[tuple[int, int]]:
    """The squares of a coarse grid that an area touches; what is looked for is only looked for there."""
    across = range(int(area.left // BOX), int(area.right // BOX) + 1)
    down = range(int(area.top // BOX), int(area.bottom // BOX) + 1)
    return [(i, j) for i in across for j in down]


def _ring_places(want: Point, wide: float, high: float, within: Area) -> Iterable[Point]:
    """Middles on a grid about `want` that keep the area inside `within`, nearest first."""
    left, right = within.left + wide / 2, within.right - wide / 2
    top, bottom = within.top + high / 2, within.bottom - high / 2
    if left > right or top > bottom:
        return ()
    x0, y0 = min(max(want[0], left), right), min(max(want[1], top), bottom)
    step_x, step_y = max(CELL, (right - left) / 40), max(CELL, (bottom - top) / 40)
    xs = _steps(x0, left, right, step_x)
    ys = _steps(y0, top, bottom, step_y)
    return _by_distance(want, xs, ys)


def _by_distance(want: Point, xs: Iterable[float], ys: Iterable[float]) -> Iterator[Point]:
    """The points of a grid, the nearest to `want` first; sorted as they are taken, for few of them ever are."""
    down = sorted(((y - want[1]) ** 2, y) for y in ys)

    def column(x: float) -> Iterator[tuple[float, Point]]:
        off = (x - want[0]) ** 2
        return ((off + far, (x, y)) for far, y in down)

    return (point for _, point in merge(*map(column, xs)))


def _steps(start: float, low: float, high: float, step: float) -> list[float]:
    return [start + i * step for i in range(-int((start - low) / step), int((high - start) / step) + 1)]


class Raster:
    """Which of the caller's things is seen at each point of a drawing, on a grid of `CELL` points."""

    def __init__(self, area: Area, seen: Callable[[list[float], list[float]], list[list[int]]]) -> None:
        """`seen` takes the x and the y of the cells' middles and gives rows of indexes, -1 for none."""
        self.area = area
        self.xs = [area.left + (i + 0.5) * CELL for i in range(int(area.wide / CELL) + 1)]
        self.ys = [area.top + (i + 0.5) * CELL for i in range(int(area.high / CELL) + 1)]
        self.rows = seen(self.xs, self.ys)

    def take(self, area: Area) -> None:
        """Marks an area as used up for everyone."""
        columns = [i for i, x in enumerate(self.xs) if area.left - CELL / 2 < x < area.right + CELL / 2]
        for row, y in zip(self.rows, self.ys):
            if area.top - CELL / 2 < y < area.bottom + CELL / 2:
                for i in columns:
                    row[i] = USED

    def take_line(self, a: Point, b: Point) -> None:
        """Marks what a straight line passes as used up."""
        for i, j in self._passed(a, b):
            self.rows[j][i] = USED

    def place(self, owner: int, wide: float, high: float, near: Point | None = None) -> Area | None:
        """The area of that size that is all `owner`, as close as can be to `near` or to the middle of its cells."""
        cells = self._cells(owner)
        if not cells:
            return None
        cx, cy = self._cell(near) if near else _mean(cells)
        columns, rows = _span(wide), _span(high)
        windows = _windows(self.rows, owner, columns, rows)
        best = min(windows, key=lambda p: _off(p, columns, rows, cx, cy), default=None)
        if best is None:
            return None
        return self._window(best, wide, high)

    def beside(self, end: Point, owner: int, wide: float, high: float) -> Area | None:
        """Open room for words about `end`, a point of `owner`: near, and best where the line to it crosses nothing."""
        columns, rows = _span(wide), _span(high)
        ci, cj = self._cell((end[0] + REACH, end[1] - REACH))
        windows = (_off(p, columns, rows, ci, cj) for p in _windows(self.rows, -1, columns, rows))
        best: tuple[float, Area] | None = None
        for n, (_, window) in enumerate(islice(_least_first(windows), 0, TRIES * TRIES, TRIES)):
            if best is not None and n >= best[0]:  # nor is any place further off better
                break
            area = self._window(window, wide, high)
            cost = n + 6 * self.crossed(area.middle, end, owner)
            if best is None or cost < best[0]:
                best = cost, area
        return best[1] if best else None

    def crossed(self, a: Point, b: Point, owner: int) -> int:
        """What a line runs over on its way: 1 for each thing other than `owner`, 3 for each cell of words and lines."""
        met = [self.rows[j][i] for i, j in self._passed(a, b)]
        return 3 * met.count(USED) + sum(p != q and q not in (-1, owner, USED) for p, q in pairwise(met))

    def _passed(self, a: Point, b: Point) -> list[tuple[int, int]]:
        """The cells under a straight line."""
        steps = int(max(abs(b[0] - a[0]), abs(b[1] - a[1])) / CELL) + 1
        out = []
        for n in range(steps + 1):
            i, j = self._cell((a[0] + (b[0] - a[0]) * n / steps, a[1] + (b[1] - a[1]) * n / steps))
            out.append((min(max(round(i), 0), len(self.xs) - 1), min(max(round(j), 0), len(self.ys) - 1)))
        return out

    def _window(self, cell: tuple[int, int], wide: float, high: float) -> Area:
        x = self.area.left + (cell[0] + _span(wide) / 2) * CELL
        y = self.area.top + (cell[1] + _span(high) / 2) * CELL
        return Area(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)

    def count(self, owner: int) -> int:
        """In how many cells `owner` is seen."""
        return sum(row.count(owner) for row in self.rows)

    def middle(self, owner: int) -> Point | None:
        """The seen cell of `owner` nearest to the middle of all its seen cells."""
        cells = self._cells(owner)
        if not cells:
            return None
        cx, cy = _mean(cells)
        i, j = min(cells, key=lambda p: ((p[0] - cx) ** 2 + (p[1] - cy) ** 2, p))
        return self.xs[i], self.ys[j]

    def _cells(self, owner: int) -> list[tuple[int, int]]:
        rows = ((j, row) for j, row in enumerate(self.rows) if owner in row)
        return [(i, j) for j, row in rows for i, k in enumerate(row) if k == owner]

    def _cell(self, at: Point) -> Point:
        return (at[0] - self.area.left) / CELL - 0.5, (at[1] - self.area.top) / CELL - 0.5


def _span(long: float) -> int:
    """Cells that hold a length wherever it starts."""
    return ceil(long / CELL) + 1


def _mean(cells: Sequence[tuple[int, int]]) -> Point:
    return sum(i for i, _ in cells) / len(cells), sum(j for _, j in cells) / len(cells)


def _windows(grid: Sequence[Sequence[int]], owner: int, columns: int, rows: int) -> Iterable[tuple[int, int]]:
    """Top left cells of the windows that are all `owner`. Read from the bottom right: `below` counts rows that do."""
    below = [0] * len(grid[0]) if grid else []
    for j in range(len(grid) - 1, -1, -1):
        row, run = grid[j], 0
        if owner not in row:
            below = [0] * len(below)
            continue
        for i in range(len(row) - 1, -1, -1):
            run = run + 1 if row[i] == owner else 0
            if run < columns:
                below[i] = 0
                continue
            below[i] += 1
            if below[i] >= rows:
                yield i, j


def _least_first(things: Iterable[_T]) -> Iterator[_T]:
    """Sorted as they are taken, for few of them ever are."""
    heap = list(things)
    heapify(heap)
    while heap:
        yield heappop(heap)


def _off(place: tuple[int, int], columns: int, rows: int, cx: float, cy: float) -> tuple[float, tuple[int, int]]:
    return (place[0] + (columns - 1) / 2 - cx) ** 2 + (place[1] + (rows - 1) / 2 - cy) ** 2, place
