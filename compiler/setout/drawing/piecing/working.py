"""Housings and holes as drawn on one view of a board."""

from __future__ import annotations

from collections.abc import Iterable

from setout.drawing.ink.hatch import hatch
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import FINE_DASHED, HAIR, HAIR_DASHED, OUTLINE, OVER, Area, Canvas
from setout.drawing.piecing.frame import ACROSS, INWARD, Frame
from setout.drawing.piecing.key import symbol
from setout.join.model import Bore, Cavity


def draw_cavities(canvas: Canvas, frame: Frame, cuts: Iterable[Cavity], taken: Taken) -> None:
    """Hatched where cut into the face seen, neighbours the other way; dashed where cut into an edge."""
    for n, cut in enumerate(cuts):
        area = frame.of(cut.box)
        if cut.face == frame.lie.face:
            hatch(canvas, area, rising=n % 2 == 0)
            canvas.area(area, OUTLINE)
        else:
            canvas.area(area, FINE_DASHED)
        taken.add(area)


def draw_bores(canvas: Canvas, frame: Frame, bores: Iterable[Bore], taken: Taken) -> None:
    for bore in bores:
        side = frame.lie.side(bore.toward or bore.face)
        if side is None:
            across = float(bore.diameter) * min(frame.across, frame.up)
            taken.add(symbol(canvas, frame.place(bore.at), bore.kind, across))
        elif bore.toward:
            taken.add(_pocket(canvas, frame, bore, side))
        else:
            taken.add(_edge_hole(canvas, frame, bore, side))


def _pocket(canvas: Canvas, frame: Frame, bore: Bore, side: str) -> Area:
    """A slot that points at its edge, as long as the pocket where the board is drawn large enough."""
    x, y = frame.on_edge(bore.at, side)
    dx, dy = INWARD[side]
    scale, room = frame.scale_from(side), frame.room_from(side) * 0.45
    near = min(max(0.6 * scale, 4.0), room / 3)
    far = min(max(1.7 * scale, near + 6), max(room, near + 5))
    radius = min(max(float(bore.diameter) * min(frame.across, frame.up) / 2, 1.6), 4.5)
    canvas.line((x, y), (x + dx * near, y + dy * near), HAIR)
    canvas.slot((x + dx * near, y + dy * near), (x + dx * far, y + dy * far), radius)
    return _reaching(x, y, side, far + radius, radius + 1)


def _edge_hole(canvas: Canvas, frame: Frame, bore: Bore, side: str) -> Area:
    """Its outline dashed, as deep as it goes, and a wedge on the edge where the drill starts."""
    x, y = frame.on_edge(bore.at, side)
    dx, dy = INWARD[side]
    half = max(float(bore.diameter) * (frame.across if side in ACROSS else frame.up) / 2, 1.0)
    full = frame.room_from(side)
    deep = full if bore.depth is None else min(max(float(bore.depth) * frame.scale_from(side), 8.0), full)
    sx, sy = abs(dy) * half, abs(dx) * half
    for way in (-1, 1):
        start = (x + way * sx, y + way * sy)
        canvas.line(start, (start[0] + dx * deep, start[1] + dy * deep), HAIR_DASHED)
    wx, wy = abs(dy) * 2.4, abs(dx) * 2.4
    canvas.solid([(x - wx, y - wy), (x + dx * 4.5, y + dy * 4.5), (x + wx, y + wy)], OVER)
    return _reaching(x, y, side, deep, 3)


def _reaching(x: float, y: float, side: str, far: float, half: float) -> Area:
    """A strip `far` long from a point of an edge into the board, `half` to each side."""
    dx, dy = INWARD[side]
    xs, ys = sorted((x, x + dx * far)), sorted((y, y + dy * far))
    return Area(xs[0], ys[0], xs[1], ys[1]).grown(half)
