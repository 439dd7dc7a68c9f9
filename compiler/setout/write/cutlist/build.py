"""cutlist.csv: one line a piece, for a spreadsheet. RFC 4180; `COLUMNS` says what each column means.

A text cell that a spreadsheet would take for a formula (it begins with = + - @, a tab or a line's end) gets an
apostrophe in front: the spec is text from elsewhere, and a cut list must not run.
"""

from __future__ import annotations

import csv
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from io import StringIO

from setout.piece.model import Piece
from setout.write.facts import Facts
from setout.write.facts.sizes import MM, Length, decimal, length, size

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")


@dataclass(frozen=True)
class Column:
    name: str
    means: str
    cell: Callable[[Facts, Piece], str]


def build(facts: Facts) -> str:
    out = StringIO()
    lines = csv.writer(out)  # the excel dialect is RFC 4180: commas, doubled quotes, CRLF
    lines.writerow(column.name for column in COLUMNS)
    for piece in facts.plan.pieces.pieces:
        lines.writerow(harmless(column.cell(facts, piece)) for column in COLUMNS)
    return out.getvalue()


def harmless(cell: str) -> str:
    return "'" + cell if cell.startswith(_FORMULA_STARTS) else cell


def _shown(facts: Facts, value: Length) -> str:
    """As on paper, with the unit: a spreadsheet takes a bare 23-1/16 for a date. A held size is left empty."""
    return "" if value.held else f"{'≈' if value.rounded else ''}{value.text} {facts.unit}"


def _mm(value: Fraction, held: bool = False) -> str:
    return "" if held else decimal(value * MM, 3)


def _reserve(facts: Facts, piece: Piece) -> str:
    if not piece.sized_by:
        return ""
    sides = (piece.length.reserve, piece.width.reserve)
    return " x ".join(_shown(facts, length(side, facts.style)) for side in sides)


def _banding(piece: Piece) -> str:
    """`birch edging: 1 long edge, 2 short edges`"""
    counts: dict[str, dict[str, int]] = {}
    for band in piece.bands:
        title = f"{band.edging.title} (added)" if band.added else band.edging.title
        sides = counts.setdefault(title, {})
        sides[band.along] = sides.get(band.along, 0) + 1
    return "; ".join(f"{title}: {_edges(sides)}" for title, sides in sorted(counts.items()))


def _edges(sides: dict[str, int]) -> str:
    words = {"length": "long", "width": "short"}
    said = [f"{sides[k]} {words[k]} edge{'s' if sides[k] > 1 else ''}" for k in words if k in sides]
    return ", ".join(said)


def _cut_from(facts: Facts, piece: Piece) -> str:
    return "; ".join(f"{source} x {count}" for source, count in facts.cut_from.get(piece.mark, ()))


COLUMNS = (
    Column("mark", "the piece's mark", lambda f, p: p.mark),
    Column("count", "boards to cut", lambda f, p: str(p.count)),
    Column("stock", "the stock's name in the spec", lambda f, p: p.stock.name),
    Column("material", "the stock's title", lambda f, p: p.stock.title),
    Column(
        "length",
        "in the spec's unit, which is named, to its mark; empty: held",
        lambda f, p: _shown(f, size(p.length, f.style)),
    ),
    Column("width", "the same", lambda f, p: _shown(f, size(p.width, f.style))),
    Column("thick", "the same", lambda f, p: _shown(f, length(p.thick, f.style))),
    Column("length_mm", "to 0.001 mm; empty: held", lambda f, p: _mm(p.length.amount, p.length.held)),
    Column("width_mm", "the same", lambda f, p: _mm(p.width.amount, p.width.held)),
    Column("thick_mm", "the same", lambda f, p: _mm(p.thick)),
    Column("grain", "length, width or any; empty: none", lambda f, p: p.grain or ""),
    Column("banding", "edges with banding, long ones run along the length; empty: none", lambda f, p: _banding(p)),
    Column("waits_for", "measures its size hangs on, separated by blanks", lambda f, p: " ".join(p.sized_by)),
    Column("reserve", "held sizes: length x width to keep material for", _reserve),
    Column("cut_from", "sources of the cutting plan with how many boards each gives; empty: not planned", _cut_from),
    Column("boards", "paths of the boards, separated by blanks", lambda f, p: " ".join(p.boards)),
)
