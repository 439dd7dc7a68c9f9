"""Words for what is too narrow to be written on, and numbers of cuts too close together: next to them, with a line."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from setout.drawing.cutting.marking import Label
from setout.drawing.cutting.numbering import Stroke, pill, pill_size
from setout.drawing.ink.lettering import SMALL, width
from setout.drawing.ink.room import Raster
from setout.drawing.ink.svg import HAIR, OVER, Area, Canvas, Pen, Point

MARK = 11.0
RING = 34.0  # points round the drawing in which words may stand
TOUCHING = 2.5  # points between boards that lie side by side
CROSSED = 8.0
_GAP = 4.0


class Narrow(NamedTuple):
    """A board or leftover without room for all its words, and where a line to it may end, best first. The label's mark
    is "" where it stands on it."""

    area: Area
    label: Label
    ends: tuple[Point, ...]


class Pointed(NamedTuple):
    """What one line points at: points in a row, or one of `ends`. `mark` and `both` are written, or `numbers` in a
    drawn-out circle."""

    points: list[Point]
    ends: tuple[Point, ...]
    areas: list[Area]
    mark: str
    both: str
    numbers: str


def leaders(
    canvas: Canvas,
    narrow: list[Narrow],
    crowds: list[list[Stroke]],
    solid: Iterable[Area],
    used: Iterable[Area],
) -> None:
    """Writes beside each: off the board or on its waste, not on pieces (`solid`) nor on words (`used`)."""
    things = [_marked(stack) for stack in _stacks(narrow)] + [_numbered(crowd) for crowd in crowds]
    if not things:
        return
    fills = [(area, -3) for area in solid] + [(area, n) for n, thing in enumerate(things) for area in thing.areas]
    raster = Raster(canvas.bounds.grown(RING), lambda xs, ys: _owners(fills, xs, ys))
    for area in used:
        raster.take(area)
    for n, thing in enumerate(things):
        _lead(canvas, raster, n, thing)


def _stacks(narrow: list[Narrow]) -> list[list[Narrow]]:
    """Boards alike that lie side by side are pointed at together."""
    found: list[list[Narrow]] = []
    for one in narrow:
        near = next((s for s in found if s[-1].label == one.label and _touch(s[-1].area, one.area)), None)
        if near is None:
            found.append([one])
        else:
            near.append(one)
    return found


def _touch(a: Area, b: Area) -> bool:
    return a.grown(TOUCHING).meets(b)


def _marked(stack: list[Narrow]) -> Pointed:
    label = stack[0].label
    many = f" × {len(stack)}" if label.mark and len(stack) > 1 else ""
    points = [n.ends[0] for n in stack]
    ends = stack[0].ends if len(stack) == 1 else (points[0], points[-1])
    return Pointed(points, ends, [n.area for n in stack], label.mark + many, label.both, "")


def _numbered(crowd: list[Stroke]) -> Pointed:
    areas = [Area(*s.middle, *s.middle).grown(2) for s in crowd]
    points = [s.middle for s in crowd]
    return Pointed(points, (points[0], points[-1]), areas, "", "", _runs([s.number for s in crowd]))


def _runs(numbers: list[int]) -> str:
    """[1, 2, 3, 5] → "1–3, 5", in the order given."""
    parts: list[list[int]] = []
    for number in numbers:
        if parts and parts[-1][-1] + 1 == number:
            parts[-1].append(number)
        else:
            parts.append([number])
    return ", ".join(str(p[0]) if len(p) == 1 else f"{p[0]}–{p[-1]}" for p in parts)


def _lead(canvas: Canvas, raster: Raster, owner: int, thing: Pointed) -> None:
    """All of it where there is room, else without the sizes."""
    for both in (thing.both, "") if thing.mark else (thing.both,):
        wide, high = _size(thing, both)
        found = ((raster.beside(end, owner, wide, high), end) for end in dict.fromkeys(thing.ends))
        rooms = [(room, end) for room, end in found if room]
        if rooms:
            room, end = min(rooms, key=lambda pair: _worse(raster, owner, *pair))
            _line(canvas, raster, room, end, thing)
            _write(canvas, room, thing, both)
            raster.take(room)
            return


def _size(thing: Pointed, both: str) -> tuple[float, float]:
    if thing.numbers:
        return pill_size(thing.numbers)
    return width(thing.mark, MARK, True) + 4 + (_gap(thing) + width(both) if both else 0), MARK + 3


def _gap(thing: Pointed) -> float:
    return _GAP if thing.mark else 0.0


def _worse(raster: Raster, owner: int, room: Area, end: Point) -> float:
    """How far off it is, in points; what the line would cross counts as so much farther."""
    far = sum(abs(a - b) for a, b in zip(room.middle, end))
    return far + CROSSED * raster.crossed(room.middle, end, owner)


def _line(canvas: Canvas, raster: Raster, room: Area, end: Point, thing: Pointed) -> None:
    """To the nearer end of the row, and on through all of it, with a dot on each."""
    start = room.nearest(end)
    canvas.line(start, end, HAIR)  # under the circles
    if len(thing.points) > 1:
        canvas.polyline(thing.points, HAIR)
    for point in thing.points if len(thing.points) > 1 else [end]:
        canvas.circle(point, 1.3, Pen(0), OVER, "black")
    raster.take_line(start, end)


def _write(canvas: Canvas, room: Area, thing: Pointed, both: str) -> None:
    if thing.numbers:
        pill(canvas, room.middle, thing.numbers)
        return
    left, y = room.left + 2, room.middle[1]
    canvas.mask(room)
    if thing.mark:
        canvas.text((left, y), thing.mark, MARK, anchor="start", bold=True)
    if both:
        canvas.text((left + width(thing.mark, MARK, True) + _gap(thing), y), both, SMALL, anchor="start")


def _owners(fills: list[tuple[Area, int]], xs: list[float], ys: list[float]) -> list[list[int]]:
    """Whose area lies at each point; -1 where none does."""
    rows = [[-1] * len(xs) for _ in ys]
    for area, owner in fills:
        inside = [i for i, x in enumerate(xs) if area.left <= x <= area.right]
        for j, y in enumerate(ys):
            if area.top <= y <= area.bottom:
                for i in inside:
                    rows[j][i] = owner
    return rows
