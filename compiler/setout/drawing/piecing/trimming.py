"""A board that is cut already, with the saw cuts that make it another: the waste hatched, what stays measured."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.drawing.ink import dimension
from setout.drawing.ink.hatch import hatch
from setout.drawing.ink.lettering import SMALL, width, wrapped
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import HEAVY_DASHED, OVER, Area, Canvas
from setout.drawing.model import Drawing
from setout.drawing.piecing.frame import ACROSS, Frame
from setout.drawing.piecing.laying import SIDES, Lie, faces_to_draw, standing
from setout.drawing.piecing.naming import draw_bands, draw_grain
from setout.drawing.piecing.outline import draw_outline
from setout.drawing.piecing.wording import seen_from
from setout.drawing.piecing.working import draw_bores, draw_cavities
from setout.geometry import Face
from setout.join.model import JoinedBoard
from setout.units import Style, say

Trims = Sequence[tuple[Face, Fraction]]
LEAST = 26.0  # points; a narrower board is drawn wider than to scale
MOST_SCALE = 8.0  # points an inch
BELOW, BESIDE = 16.0, 14.0  # from the board to its sizes
LINE = 12.0


def trimmed(board: JoinedBoard, trims: Trims, style: Style, width: float, height: float) -> Drawing:
    """`trims`: the board's own faces, and how much is sawn off there. It lies as it stands in its place, or a quarter
    turn round where that shows it larger; about `width` by `height` points."""
    lie = _lie(board, width, height)
    off = {side: by for face, by in trims if (side := lie.side(face))}
    canvas, taken = Canvas(), Taken()
    words = {side: f"{say(by, style)} off" for side, by in off.items()}
    frame = _frame(lie, words, width, height)
    waste = {side: _waste(frame, side, by) for side, by in off.items()}
    for area in waste.values():
        hatch(canvas, area, 2.4, rising=False)
        taken.add(area)
    shown = {lie.face} | {lie.edge(side) for side in SIDES}
    draw_cavities(canvas, frame, [cut for cut in board.cuts if cut.face in shown], taken)
    draw_outline(canvas, frame, board, taken)
    draw_bores(canvas, frame, [bore for bore in board.bores if bore.face in shown], taken)
    for side, area in waste.items():
        _saw(canvas, area, side)
        _say(canvas, frame, side, words[side])
    _kept(canvas, frame, off, words, style)
    draw_bands(canvas, frame, board.board, taken)
    draw_grain(canvas, frame, board.board, taken)
    _caption(canvas, seen_from(board.board, lie, ()), width)
    return canvas.finished(f"Cut lines on a board, seen from {lie.face.word}")


def _lie(board: JoinedBoard, width: float, height: float) -> Lie:
    upright = standing(board, faces_to_draw(board)[0])
    turned = upright.turned()
    return turned if _scale(turned, width, height) > 1.2 * _scale(upright, width, height) else upright


def _scale(lie: Lie, wide: float, high: float) -> float:
    return min((wide - 60) / float(lie.wide), (high - 60) / float(lie.high), MOST_SCALE)


def _frame(lie: Lie, words: dict[str, str], wide: float, high: float) -> Frame:
    """As large as there is room for beside the words and sizes."""
    aside = sum(width(words[side], bold=True) + 8 for side in ("left", "right") if side in words)
    aside += 2 * BESIDE if "top" in words or "bottom" in words else 8
    scale = min((wide - aside) / float(lie.wide), _scale(lie, wide, high))
    across, up = (max(scale, LEAST / float(size)) for size in (lie.wide, lie.high))
    return Frame(lie, across, up, 0.0, 0.0)


def _waste(frame: Frame, side: str, by: Fraction) -> Area:
    left, top, right, bottom = frame.area
    deep = float(by) * frame.scale_from(side)
    return {
        "left": Area(left, top, left + deep, bottom),
        "right": Area(right - deep, top, right, bottom),
        "top": Area(left, top, right, top + deep),
        "bottom": Area(left, bottom - deep, right, bottom),
    }[side]


def _saw(canvas: Canvas, waste: Area, side: str) -> None:
    """Along the waste, and a little beyond the board at both ends."""
    left, top, right, bottom = waste
    if side in ACROSS:
        y = bottom if side == "top" else top
        canvas.line((left - 5, y), (right + 5, y), HEAVY_DASHED, OVER)
    else:
        x = right if side == "left" else left
        canvas.line((x, top - 5), (x, bottom + 5), HEAVY_DASHED, OVER)


def _say(canvas: Canvas, frame: Frame, side: str, words: str) -> None:
    """How much goes, outside that side."""
    (x, y), area = frame.area.middle, frame.area
    if side in ACROSS:
        canvas.text((x, area.top - 10 if side == "top" else area.bottom + 10), words, bold=True)
    else:
        at, anchor = (area.left - 8, "end") if side == "left" else (area.right + 8, "start")
        canvas.text((at, y), words, anchor=anchor, bold=True)


def _kept(canvas: Canvas, frame: Frame, off: dict[str, Fraction], words: dict[str, str], style: Style) -> None:
    """What stays, along the sides that are cut."""
    none, area = Fraction(0), frame.area
    if "left" in off or "right" in off:
        left, right = off.get("left", none), off.get("right", none)
        y = area.bottom + BELOW + (LINE if "bottom" in off else 0)
        ends = area.left + float(left) * frame.across, area.right - float(right) * frame.across
        dimension.level(canvas, *ends, y, say(frame.lie.wide - left - right, style))
    if "top" in off or "bottom" in off:
        top, bottom = off.get("top", none), off.get("bottom", none)
        x = area.left - BESIDE - (width(words["left"], bold=True) + 8 if "left" in off else 0)
        ends = area.top + float(top) * frame.up, area.bottom - float(bottom) * frame.up
        dimension.upright(canvas, *ends, x, say(frame.lie.high - top - bottom, style))


def _caption(canvas: Canvas, words: str, wide: float) -> None:
    """Above all that is drawn."""
    lines = wrapped(words, wide, 3)
    left, top = canvas.bounds.left, canvas.bounds.top
    for n, line in enumerate(reversed(lines)):
        canvas.text((left, top - LINE * n - SMALL), line, anchor="start")
