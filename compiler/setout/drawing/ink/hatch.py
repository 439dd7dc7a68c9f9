"""Hatching worked out line by line, clipped to rectangles: no patterns, which slow the printing down."""

from __future__ import annotations

from math import ceil, floor, sqrt

from setout.drawing.ink.svg import HAIR, HATCH, Area, Canvas


def hatch(canvas: Canvas, area: Area, spacing: float = 3.2, *, rising: bool = True) -> None:
    """Lines at 45 degrees across the area, `spacing` points apart, in step with every other hatched area."""
    step = spacing * sqrt(2)
    # a rising line keeps x + y, a falling one x - y
    ends = (area.top, area.bottom) if rising else (-area.bottom, -area.top)
    for n in range(ceil((area.left + ends[0]) / step), floor((area.right + ends[1]) / step) + 1):
        _line(canvas, area, n * step, rising)


def _line(canvas: Canvas, area: Area, total: float, rising: bool) -> None:
    if rising:
        low, high = max(area.left, total - area.bottom), min(area.right, total - area.top)
        a, b = (low, total - low), (high, total - high)
    else:
        low, high = max(area.left, total + area.top), min(area.right, total + area.bottom)
        a, b = (low, low - total), (high, high - total)
    if high - low > 0.2:
        canvas.line(a, b, HAIR, layer=HATCH)
