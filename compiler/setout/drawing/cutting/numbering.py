"""Cut numbers in small circles, on the line of the cut or at its end outside the board."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from setout.drawing.ink.lettering import SMALL, width
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import FINE, HAIR, OVER, Area, Canvas, Point

NEAR = 3.0  # points; a cut that ends this near the board's outline goes on to it
ROWS = 4  # of circles outside the board, one behind the other
_STEP = 2.5


class Stroke(NamedTuple):
    """A cut on the page, from `a` to `b`: `upright` from top to bottom, else from right to left."""

    number: str
    upright: bool
    a: Point
    b: Point


def circles(canvas: Canvas, strokes: list[Stroke], board: Area, taken: Taken) -> list[Area]:
    """Numbers the cuts: those that reach the board's outline outside it, then the others where their line is free.
    Says what room the circles take."""
    used = []
    for stroke in sorted(strokes, key=_along):
        place = _outside(stroke, board, taken)
        if place:
            end = _end(stroke, board, place)
            canvas.line(end, place, HAIR)
            used.append(_put(canvas, place, stroke.number, taken))
    shut = [s for s in strokes if not _ends(s, board)]
    for stroke in sorted(shut, key=_long):
        used.append(_put(canvas, _on_line(stroke, taken), stroke.number, taken))
    return used


def radius(number: str) -> float:
    return max(6.6, width(number) / 2 + 2.2)


def circle(canvas: Canvas, at: Point, number: str) -> None:
    canvas.circle(at, radius(number), FINE, OVER, "white")
    canvas.text(at, number)


def _put(canvas: Canvas, at: Point, number: str, taken: Taken) -> Area:
    circle(canvas, at, number)
    area = _square(at, radius(number))
    taken.add(area)
    return area


def _square(at: Point, r: float) -> Area:
    return Area(at[0] - r, at[1] - r, at[0] + r, at[1] + r)


def _along(stroke: Stroke) -> tuple[bool, float]:
    return stroke.upright, stroke.a[0] if stroke.upright else stroke.a[1]


def _long(stroke: Stroke) -> float:
    return abs(stroke.a[0] - stroke.b[0]) + abs(stroke.a[1] - stroke.b[1])


def _ends(stroke: Stroke, board: Area) -> tuple[int, ...]:
    """Which ends reach the outline: -1 top or left, 1 bottom or right; the better one first."""
    if stroke.upright:
        found = [(-1, stroke.a[1] - board.top), (1, board.bottom - stroke.b[1])]
    else:
        found = [(1, board.right - stroke.a[0]), (-1, stroke.b[0] - board.left)]
    return tuple(side for side, off in found if off <= NEAR)


def _outside(stroke: Stroke, board: Area, taken: Taken) -> Point | None:
    r = radius(stroke.number)
    for row in range(ROWS):
        for side in _ends(stroke, board):
            out = r + 3 + row * (2 * r + 1.5)
            place = _off_edge(stroke, board, side, out)
            if taken.free(_square(place, r)):
                return place
    ends = _ends(stroke, board)
    return _off_edge(stroke, board, ends[0], r + 3) if ends else None


def _off_edge(stroke: Stroke, board: Area, side: int, out: float) -> Point:
    if stroke.upright:
        return stroke.a[0], board.top - out if side < 0 else board.bottom + out
    return board.left - out if side < 0 else board.right + out, stroke.a[1]


def _end(stroke: Stroke, board: Area, place: Point) -> Point:
    """The end of the stroke that `place` lies beyond."""
    if stroke.upright:
        return stroke.a if place[1] < board.top else stroke.b
    return stroke.a if place[0] > board.right else stroke.b


def _on_line(stroke: Stroke, taken: Taken) -> Point:
    """The place nearest the line's start where the circle stands free; its middle when there is none."""
    r = radius(stroke.number)
    middle = ((stroke.a[0] + stroke.b[0]) / 2, (stroke.a[1] + stroke.b[1]) / 2)
    return next((p for p in _places(stroke, r) if taken.free(_square(p, r - 0.5))), middle)


def _places(stroke: Stroke, r: float) -> Iterator[Point]:
    """Along the line, a circle's width off its ends where it is long enough."""
    long = _long(stroke)
    clear = r + 3 if long > 2 * r + 6 else 0.0
    steps = int((long - 2 * clear) / _STEP)
    for n in range(steps + 1):
        t = (clear + n * _STEP) / long if long else 0.0
        yield stroke.a[0] + (stroke.b[0] - stroke.a[0]) * t, stroke.a[1] + (stroke.b[1] - stroke.a[1]) * t
