"""Cut numbers in small circles, on the line of the cut or at its end outside the board."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from setout.drawing.ink.lettering import width
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import FINE, HAIR, OVER, Area, Canvas, Point

NEAR = 3.0  # points; a cut that ends this near the board's outline goes on to it
ROWS = 4  # of circles outside the board, one behind the other
CROWD = 3  # short cuts this close together are numbered in one
_STEP = 2.5
_HALF = 6.6  # half as high as a circle


class Stroke(NamedTuple):
    """A cut on the page, from `a` to `b`: `upright` from top to bottom, else from right to left."""

    number: int
    upright: bool
    a: Point
    b: Point

    @property
    def middle(self) -> Point:
        return (self.a[0] + self.b[0]) / 2, (self.a[1] + self.b[1]) / 2

    @property
    def long(self) -> float:
        return abs(self.a[0] - self.b[0]) + abs(self.a[1] - self.b[1])


class Numbered(NamedTuple):
    """The room that circles took, and the cuts with no room for one, those close together in one group."""

    used: list[Area]
    crowds: list[list[Stroke]]


def circles(
    canvas: Canvas, strokes: Sequence[Stroke], board: Area, taken: Taken, harm: Callable[[Area], int] = lambda _: 0
) -> Numbered:
    """Numbers the cuts: those that reach the board's outline outside it, the others on their line, where a circle does
    least `harm`."""
    used: list[Area] = []
    shut_out: list[Stroke] = []
    for stroke in sorted((s for s in strokes if _ends(s, board)), key=_along):
        place = _outside(stroke, board, taken)
        if place:
            canvas.line(_end(stroke, board, place), place, HAIR)
            used.append(_put(canvas, place, stroke.number, taken))
        else:
            shut_out.append(stroke)
    inside = [s for s in strokes if not _ends(s, board)]
    crowds = [crowd for crowd in _grouped([s for s in inside if _is_short(s)]) if len(crowd) >= CROWD]
    crowded = {s.number for crowd in crowds for s in crowd}
    single = [s for s in inside if s.number not in crowded]
    for stroke in sorted(single, key=lambda s: s.long):
        on_line = _on_line(stroke, taken, harm)
        if on_line:
            used.append(_put(canvas, on_line, stroke.number, taken))
        else:
            shut_out.append(stroke)
    return Numbered(used, crowds + _grouped(sorted(shut_out)))


def pill(canvas: Canvas, middle: Point, words: str) -> None:
    """Numbers in a circle, or in one drawn out as long as they are."""
    half = max(width(words) / 2 + 2.2 - _HALF, 0.0)
    canvas.slot((middle[0] - half, middle[1]), (middle[0] + half, middle[1]), _HALF)
    canvas.text(middle, words)


def pill_size(words: str) -> tuple[float, float]:
    """With a little air."""
    return max(width(words) + 4.4, 2 * _HALF) + 4, 2 * _HALF + 2


def _radius(number: int) -> float:
    return max(_HALF, width(str(number)) / 2 + 2.2)


def _put(canvas: Canvas, at: Point, number: int, taken: Taken) -> Area:
    canvas.circle(at, _radius(number), FINE, OVER, "white")
    canvas.text(at, str(number))
    area = _square(at, _radius(number))
    taken.add(area)
    return area


def _square(at: Point, r: float) -> Area:
    return Area(at[0] - r, at[1] - r, at[0] + r, at[1] + r)


def _along(stroke: Stroke) -> tuple[bool, float]:
    return stroke.upright, stroke.a[0] if stroke.upright else stroke.a[1]


# --- outside the board ---


def _ends(stroke: Stroke, board: Area) -> tuple[int, ...]:
    """Which ends reach the outline: -1 top or left, 1 bottom or right; the better one first."""
    if stroke.upright:
        found = [(-1, stroke.a[1] - board.top), (1, board.bottom - stroke.b[1])]
    else:
        found = [(1, board.right - stroke.a[0]), (-1, stroke.b[0] - board.left)]
    return tuple(side for side, off in found if off <= NEAR)


def _outside(stroke: Stroke, board: Area, taken: Taken) -> Point | None:
    """The nearest free place off an end that reaches the outline."""
    r, ends = _radius(stroke.number), _ends(stroke, board)
    outs = [(side, r + 3 + row * (2 * r + 1.5)) for row in range(ROWS) for side in ends]
    places = [_off_edge(stroke, board, side, out) for side, out in outs]
    return next((place for place in places if taken.free(_square(place, r))), None)


def _off_edge(stroke: Stroke, board: Area, side: int, out: float) -> Point:
    if stroke.upright:
        return stroke.a[0], board.top - out if side < 0 else board.bottom + out
    return board.left - out if side < 0 else board.right + out, stroke.a[1]


def _end(stroke: Stroke, board: Area, place: Point) -> Point:
    """The end of the stroke that `place` lies beyond."""
    if stroke.upright:
        return stroke.a if place[1] < board.top else stroke.b
    return stroke.a if place[0] > board.right else stroke.b


# --- on the line ---


def _on_line(stroke: Stroke, taken: Taken, harm: Callable[[Area], int]) -> Point | None:
    """The free place nearest the line's start of those that do least harm; off its ends if it can be."""
    r = _radius(stroke.number)
    best: tuple[int, Point] | None = None
    for place in (p for clear in (r + 1, 0.0) for p in _places(stroke, clear)):
        square = _square(place, r)
        if taken.free(square):
            done = harm(square)
            if best is None or done < best[0]:
                best = done, place
            if not done:
                break
    return best[1] if best else None


def _places(stroke: Stroke, clear: float) -> Iterator[Point]:
    """Along the line, so far off its ends."""
    long = stroke.long
    for n in range(int((long - 2 * clear) / _STEP) + 1 if long >= 2 * clear else 0):
        t = (clear + n * _STEP) / long if long else 0.0
        yield stroke.a[0] + (stroke.b[0] - stroke.a[0]) * t, stroke.a[1] + (stroke.b[1] - stroke.a[1]) * t


def _is_short(stroke: Stroke) -> bool:
    return stroke.long < 2 * _radius(stroke.number) + 1


def _grouped(strokes: list[Stroke]) -> list[list[Stroke]]:
    """Those in a row or a stack that leave no room for a circle each stand together."""
    found: list[list[Stroke]] = []
    for stroke in strokes:
        near = next((crowd for crowd in found if _close(crowd[-1], stroke)), None)
        if near is None:
            found.append([stroke])
        else:
            near.append(stroke)
    return found


def _close(a: Stroke, b: Stroke) -> bool:
    apart = abs(a.middle[0] - b.middle[0]) + abs(a.middle[1] - b.middle[1])
    return a.upright == b.upright and apart < 2 * _radius(b.number) + 1
