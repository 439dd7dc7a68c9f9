"""The cut list, a table a stock."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from setout.piece.model import Piece
from setout.resolve.model import Stock
from setout.write.facts import Facts
from setout.write.facts.paths import Where
from setout.write.facts.sizes import Length, length, size
from setout.write.facts.ticks import ticks
from setout.write.facts.totals import by_stock


@dataclass(frozen=True)
class Banded:
    """Edges with the same banding: how many run along the length and along the width. `added`: it comes on top of the
    size cut; else the size cut is less by it."""

    title: str
    long: int
    short: int
    added: bool


@dataclass(frozen=True)
class Row:
    """One piece. `ticks` boxes to tick, or 0: write the tally. `similar` marks that print the same size and are not."""

    mark: str
    count: int
    ticks: int
    length: Length
    width: Length
    thick: Length
    grain: str
    where: tuple[Where, ...]
    similar: tuple[str, ...]
    loose: bool
    banded: tuple[Banded, ...]


@dataclass(frozen=True)
class Rounded:
    """A printed size that is not the true one. `side` "length", "width" or "thick"; `error` as in Length."""

    mark: str
    side: str
    text: str
    error: str


@dataclass(frozen=True)
class Table:
    title: str
    thick: Length
    kind: str
    boards: int
    rows: tuple[Row, ...]
    rounded: tuple[Rounded, ...]
    held: bool


@dataclass(frozen=True)
class Pieces:
    tables: tuple[Table, ...]


def build(facts: Facts) -> Pieces:
    return Pieces(tuple(_table(facts, stock, pieces) for stock, pieces in by_stock(facts.plan.pieces.pieces)))


def _table(facts: Facts, stock: Stock, pieces: tuple[Piece, ...]) -> Table:
    rows = tuple(_row(facts, piece) for piece in pieces)
    thick = length(stock.thick, facts.style)
    return Table(
        title=stock.title,
        thick=thick,
        kind=stock.kind,
        boards=sum(piece.count for piece in pieces),
        rows=rows,
        rounded=_thickness(thick) + tuple(r for row in rows for r in _rounded(row)),
        held=any(row.length.held or row.width.held for row in rows),
    )


def _row(facts: Facts, piece: Piece) -> Row:
    return Row(
        mark=piece.mark,
        count=piece.count,
        ticks=ticks(piece.count),
        length=size(piece.length, facts.style),
        width=size(piece.width, facts.style),
        thick=length(piece.thick, facts.style),
        grain=piece.grain or "none",
        where=facts.where(piece),
        similar=piece.similar,
        loose=piece.loose is not None,
        banded=_banded(piece),
    )


def _banded(piece: Piece) -> tuple[Banded, ...]:
    count = Counter((band.edging.title or band.edging.name, band.added, band.along) for band in piece.bands)
    kinds = dict.fromkeys((title, added) for title, added, _ in count)
    return tuple(Banded(t, count[t, added, "length"], count[t, added, "width"], added) for t, added in kinds)


def _rounded(row: Row) -> tuple[Rounded, ...]:
    sides = (("length", row.length), ("width", row.width))
    return tuple(Rounded(row.mark, side, s.text, s.error) for side, s in sides if s.rounded and not s.held)


def _thickness(thick: Length) -> tuple[Rounded, ...]:
    """Said once for the whole stock, with no mark."""
    return (Rounded("", "thick", thick.text, thick.error),) if thick.rounded else ()
