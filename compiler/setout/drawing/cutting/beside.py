"""Words for what is too narrow to be written on: next to it, with a line."""

from __future__ import annotations

from collections.abc import Iterable

from setout.drawing.cutting.marking import Label
from setout.drawing.ink.lettering import SMALL, width
from setout.drawing.ink.room import Raster
from setout.drawing.ink.svg import HAIR, OVER, Area, Canvas, Pen, Point

MARK = 11.0
RING = 30.0  # points round the drawing in which words may stand
_GAP = 4.0

Narrow = tuple[Area, Label]


def leaders(canvas: Canvas, narrow: list[Narrow], solid: Iterable[Area], used: Iterable[Area]) -> None:
    """Writes beside each of `narrow`: off the board or on its waste, not on other pieces (`solid`) nor on words (`used`)."""
    if not narrow:
        return
    fills = [area for area, _ in narrow] + list(solid)
    raster = Raster(canvas.bounds.grown(RING), lambda xs, ys: _owners(fills, xs, ys))
    for area in used:
        raster.take(area)
    for n, (area, label) in enumerate(narrow):
        _lead(canvas, raster, n, area, label)


def _lead(canvas: Canvas, raster: Raster, owner: int, area: Area, label: Label) -> None:
    """Mark and sizes where there is room for both, else the mark."""
    mark, both = width(label.mark, MARK, True), width(label.both)
    room = raster.beside(area.middle, owner, mark + _GAP + both + 4, MARK + 3)
    small = room is None
    room = room or raster.beside(area.middle, owner, mark + 4, MARK + 3)
    if room is None:
        return
    start, y = _toward(room, area.middle), room.middle[1]
    canvas.line(start, area.middle, HAIR, OVER)
    canvas.circle(area.middle, 1.3, Pen(0), OVER, "black")
    canvas.mask(room)
    canvas.text((room.left + 2, y), label.mark, MARK, anchor="start", bold=True)
    if not small:
        canvas.text((room.left + 2 + mark + _GAP, y), label.both, SMALL, anchor="start")
    raster.take_line(start, area.middle)
    raster.take(room)


def _toward(area: Area, end: Point) -> Point:
    return min(max(end[0], area.left), area.right), min(max(end[1], area.top), area.bottom)


def _owners(fills: list[Area], xs: list[float], ys: list[float]) -> list[list[int]]:
    """Which area lies at each point, by index; -1 where none does."""
    rows = [[-1] * len(xs) for _ in ys]
    for n, area in enumerate(fills):
        inside = [i for i, x in enumerate(xs) if area.left <= x <= area.right]
        for j, y in enumerate(ys):
            if area.top <= y <= area.bottom:
                for i in inside:
                    rows[j][i] = n
    return rows
