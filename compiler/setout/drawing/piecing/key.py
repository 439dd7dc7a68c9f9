"""The signs for holes, and the key that says what each letter stands for."""

from __future__ import annotations

from collections.abc import Sequence

from setout.drawing.ink.hatch import hatch
from setout.drawing.ink.lettering import LEADING, SMALL, width, wrapped
from setout.drawing.ink.svg import FINE, HAIR, OUTLINE, OVER, Area, Canvas, Point
from setout.drawing.piecing import wording
from setout.drawing.piecing.machining import Kind
from setout.place.model import Board
from setout.units import Style

LINE = 13.0
MOST_LINES = 40
MOST_WRAPPED = 4  # lines of one cell
_HEADS = ("", "", "", "what", "across", "deep", "screw or dowel, and drill stop")
_AIR = 9.0


def symbol(canvas: Canvas, at: Point, what: str, across: float) -> Area:
    """The sign of one hole seen end on, `across` points wide if that can be seen. Says what room it takes."""
    x, y = at
    r = max(across / 2, 2.2)
    if what == "dowel":
        canvas.circle(at, r, FINE, OVER, "black")
    else:
        canvas.circle(at, r, FINE, OVER, "white")
    if what == "clearance":
        canvas.line((x - r - 2, y), (x + r + 2, y), HAIR, OVER)
        canvas.line((x, y - r - 2), (x, y + r + 2), HAIR, OVER)
    elif what == "pilot":
        canvas.circle(at, 0.9, FINE, OVER, "black")
    elif what == "hardware":
        canvas.circle(at, r + 1.4, HAIR, OVER)
    return Area(x, y, x, y).grown(r + 3)


def draw_key(canvas: Canvas, kinds: Sequence[Kind], board: Board, style: Style, at: Point, room: float) -> None:
    """A row a letter: sign, how many, what and where, how wide and deep, with what."""
    left, top = at
    kinds, more = kinds[:MOST_LINES], len(kinds) - MOST_LINES
    rows = [_cells(k, board, style) for k in kinds]
    columns = _columns(rows, room)
    starts = [left + sum(columns[:n]) for n in range(len(columns))]
    for x, head in zip(starts, _HEADS):
        if head and any(r[starts.index(x)] for r in rows):
            canvas.text((x, top + 5), head, anchor="start")
    canvas.line((left, top + 12), (left + sum(columns), top + 12), HAIR)
    y = top + 19
    for kind, cells in zip(kinds, rows):
        _sign(canvas, kind, (starts[1] + 6, y))
        y += _row(canvas, cells, starts, columns, y)
    if more > 0:
        canvas.text((left, y), f"and {more} kinds more", anchor="start")


def _row(canvas: Canvas, cells: Sequence[str], starts: Sequence[float], columns: Sequence[float], y: float) -> float:
    """In as many lines as the longest cell needs. Says how high it is."""
    most = 1
    for i, (x, words) in enumerate(zip(starts, cells)):
        lines = wrapped(words, columns[i] - 2, MOST_WRAPPED, SMALL, i == 0)
        for n, line in enumerate(lines):
            canvas.text((x, y + LEADING * SMALL * n), line, anchor="start", bold=i == 0)
        most = max(most, len(lines))
    return LINE + LEADING * SMALL * (most - 1)


def _cells(kind: Kind, board: Board, style: Style) -> tuple[str, ...]:
    return (
        kind.letter,
        "",
        f"{kind.count} ×",
        wording.named(kind, board, style),
        wording.across(kind, style),
        wording.depth(kind, style),
        wording.driven(kind, style),
    )


def _columns(rows: Sequence[tuple[str, ...]], room: float) -> list[float]:
    """As wide as their words; the longest gives way when they would not fit."""
    wide = [max(width(r[i], SMALL, i == 0) for r in rows) + _AIR for i in range(len(_HEADS))]
    wide = [
        max(w, width(h) + _AIR) if h and any(r[i] for r in rows) else w for i, (w, h) in enumerate(zip(wide, _HEADS))
    ]
    wide[1] = 20.0
    over = sum(wide) - room
    for i in (3, 6):
        if over > 0:
            taken = min(over, max(wide[i] - 70, 0))
            wide[i] -= taken
            over -= taken
    return wide


def _sign(canvas: Canvas, kind: Kind, at: Point) -> None:
    x, y = at
    if kind.cuts:
        area = Area(x - 5, y - 4, x + 5, y + 4)
        hatch(canvas, area, 2.6)
        canvas.area(area, OUTLINE)
    elif kind.what == "pocket":
        canvas.slot((x - 2.5, y), (x + 3.5, y), 2, FINE)
        canvas.line((x - 7, y), (x - 4.5, y), HAIR)
    elif kind.off is not None:
        canvas.solid([(x - 2.4, y - 3), (x, y + 2), (x + 2.4, y - 3)], OVER)
    else:
        symbol(canvas, at, kind.what, 4.4)
