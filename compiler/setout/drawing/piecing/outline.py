"""A board's outline as cut: notches and cut-outs gone, ends mitred."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import radians, tan
from typing import NamedTuple

from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import FINE, FINE_DASHED, HAIR, HEAVY, Area, Canvas, Point
from setout.drawing.piecing.frame import ACROSS, OPPOSITE, Frame
from setout.drawing.piecing.laying import Lie
from setout.drawing.solids.seen import Face2, Seen
from setout.drawing.solids.solid import Block, split
from setout.join.model import JoinedBoard
from setout.place.model import Mitre, Notch

MOST_NOTCHES = 200


class Slant(NamedTuple):
    """A cut across the face from `a` (the long corner) to `b`, inches on the page; `keep` is the sign of what stays."""

    a: Point
    b: Point
    keep: int


def draw_outline(canvas: Canvas, frame: Frame, board: JoinedBoard, taken: Taken) -> list[tuple[Point, Mitre]]:
    """Draws it; the mitres come back with the middle of their cut on the page, to be named."""
    notches = [f for f in board.features if isinstance(f, Notch)]
    mitres = [f for f in board.features if isinstance(f, Mitre)]
    slants = [s for s in (slant(frame.lie, m) for m in mitres) if s]
    for a, b in _material(frame.lie, notches, slants):
        canvas.line(frame.at(*a), frame.at(*b), HEAVY)
    for notch in notches:
        area = frame.of(notch.box)
        taken.add(area.grown(2))
        if notch.kind == "cutout":
            _void(canvas, area)
    return [(at, m) for m in mitres for at in _mitre(canvas, frame, m, board, taken)]


def _material(lie: Lie, notches: Sequence[Notch], slants: Sequence[Slant]) -> list[tuple[Point, Point]]:
    whole = Block((0.0, 0.0, 0.0), (float(lie.wide), float(lie.high), 1.0))
    gone = [_flat(lie, n) for n in notches[:MOST_NOTCHES]]
    seen = Seen([Face2(*b.lo[:2], *b.hi[:2], 0.0, 0) for b in split(whole, gone)])
    out = []
    for run in seen.runs():
        ends: tuple[Point, Point] | None = ((run.x, run.y), (run.x2, run.y2))
        for s in slants:
            ends = _clipped(ends, s) if ends else None
        if ends:
            out.append(ends)
    return out


def _flat(lie: Lie, notch: Notch) -> Block:
    left, low, right, high = map(float, lie.rect(notch.box))
    return Block((left, low, 0.0), (right, high, 1.0))


def _void(canvas: Canvas, area: Area) -> None:
    """Crossed out: nothing there."""
    canvas.line((area.left, area.top), (area.right, area.bottom), HAIR)
    canvas.line((area.left, area.bottom), (area.right, area.top), HAIR)


# --- mitres ---


def slant(lie: Lie, m: Mitre) -> Slant | None:
    """The cut of an end that slants across the face drawn; None when it is bevelled through the thickness."""
    end, long = lie.side(m.end), lie.side(m.long)
    if end is None or long is None or end in (long, OPPOSITE[long]):
        return None
    wide, high = float(lie.wide), float(lie.high)
    sides = {"left": 0.0, "right": wide, "bottom": 0.0, "top": high}
    back = _back(m, high if end not in ACROSS else wide)
    inner = sides[end] + (-back if end in ("right", "top") else back)
    if end in ACROSS:
        a, b = (sides[long], sides[end]), (sides[OPPOSITE[long]], inner)
    else:
        a, b = (sides[end], sides[long]), (inner, sides[OPPOSITE[long]])
    return Slant(a, b, 1 if _cross(a, b, (wide / 2, high / 2)) > 0 else -1)


def _back(m: Mitre, across: float) -> float:
    """How far the short side of a mitre falls back, `across` being the distance it is cut through."""
    return tan(radians(min(float(m.angle), 85.0))) * across


def _mitre(canvas: Canvas, frame: Frame, m: Mitre, board: JoinedBoard, taken: Taken) -> list[Point]:
    cut, end = slant(frame.lie, m), frame.lie.side(m.end)
    if cut:
        a, b, pen = frame.at(*cut.a), frame.at(*cut.b), HEAVY
    elif end is None:
        return []
    else:
        a, b = _bevel(frame, m, end, float(board.box.size(board.board.thick)))
        pen = FINE_DASHED if m.long == frame.lie.face else FINE
    canvas.line(a, b, pen)
    taken.line(a, b)
    return [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)]


def _bevel(frame: Frame, m: Mitre, end: str, thick: float) -> tuple[Point, Point]:
    """The line on the face where the bevel of an end begins."""
    area = frame.area
    back = min(_back(m, thick) * frame.scale_from(end), frame.room_from(end))
    at = frame.line_of(end) + (-back if end in ("right", "bottom") else back)
    if end in ACROSS:
        return (area.left, at), (area.right, at)
    return (at, area.top), (at, area.bottom)


def corner_gone(board: JoinedBoard, lie: Lie, x: Fraction, y: Fraction) -> tuple[Fraction, Fraction] | None:
    """Where a corner of the board is notched away: the width and height of what is gone there."""
    for notch in (f for f in board.features if isinstance(f, Notch)):
        left, low, right, high = lie.rect(notch.box)
        if x in (left, right) and y in (low, high):
            return right - left, high - low
    return None


def _cross(a: Point, b: Point, p: Point) -> float:
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])


def _clipped(ends: tuple[Point, Point], cut: Slant) -> tuple[Point, Point] | None:
    """The part of a line on the kept side of a slanting cut."""
    p, q = ends
    dp, dq = (cut.keep * _cross(cut.a, cut.b, e) for e in ends)
    if dp <= 0 and dq <= 0:
        return None
    if dp >= 0 and dq >= 0:
        return ends
    t = dp / (dp - dq)
    met = (p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t)
    return (p, met) if dp > 0 else (met, q)
