"""The arrow that shows which way the grain runs."""

from __future__ import annotations

from setout.drawing.ink.svg import HAIR, OVER, Canvas, Point


def arrow(canvas: Canvas, middle: Point, step: Point, long: float) -> None:
    """A thin line with open heads at both ends, `step` its direction (a unit long)."""
    x, y = middle
    dx, dy = step[0] * long / 2, step[1] * long / 2
    canvas.line((x - dx, y - dy), (x + dx, y + dy), HAIR, OVER)
    for sign in (-1, 1):
        tip = (x + sign * dx, y + sign * dy)
        back = (tip[0] - sign * step[0] * 4, tip[1] - sign * step[1] * 4)
        side = (-step[1] * 1.6, step[0] * 1.6)
        canvas.polyline(
            [(back[0] + side[0], back[1] + side[1]), tip, (back[0] - side[0], back[1] - side[1])], HAIR, layer=OVER
        )
