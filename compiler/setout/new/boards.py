"""Rows of a table made into boards, and the stock they are of."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from setout.new.amounts import DOUBT, UNITS, amount, count, doubtful
from setout.new.model import Amount, Board, Boards, Column, Granted, Header, LeftOut, Row, Table
from setout.new.names import cleaned, named
from setout.new.stocks import MOST_LONG, MOST_THICK, MOST_WIDE, Pile, Piles, inches
from setout.new.units import WORDS, Unit, body, cell, unit_cell, unit_of, unit_said

_MOST = 1000  # of one board
_ANY = {"any", "none", "no", "n", "-", "0", "either", "free"}
_ACROSS = {"across", "width", "wide", "w", "short", "cross", "widthwise", "along width", "crosswise"}
_ALONG = {"", "along", "length", "long", "l", "lengthwise", "lengthways", "along length", "with", "yes", "y", "1"}
_OF_COUNTS = {"", "each", "ea", "pc", "pcs", "piece", "pieces", "off", "no", "-"}  # units, but of no length


def boards_of(table: Table, head: Header) -> Boards:
    """What can be made out of the rows below the heads."""
    making = _Making(head, unit_of(table, head))
    for row in body(table, head):
        making.take(row)
    return making.done()


class _Refused(Exception):
    """Why a row makes no board."""


@dataclass
class _Making:
    head: Header
    unit: Unit
    piles: Piles = field(default_factory=Piles)
    boards: list[tuple[Board, Pile]] = field(default_factory=list)
    left_out: list[LeftOut] = field(default_factory=list)
    names: set[str] = field(default_factory=set)
    granted: dict[str, list[tuple[int, str]]] = field(default_factory=dict)

    def take(self, row: Row) -> None:
        part = cleaned(self.text(row, "name"))
        try:
            board, pile = self.board(row)
        except _Refused as why:
            self.left_out.append(LeftOut(row.number, str(why), part))
            return
        self.boards.append((board, pile))
        for what in self.taken_for_granted(row):
            self.granted.setdefault(what, []).append((row.number, part))

    def taken_for_granted(self, row: Row) -> Iterator[str]:
        if self.head.column("count") and not self.text(row, "count"):
            yield "no number is said, 1 was written"
        grain = self.text(row, "grain").casefold()
        if grain not in _ALONG | _ACROSS | _ANY:
            yield f"grain {cleaned(grain)[:24]!r} is not understood, it runs along the longer side"

    def done(self) -> Boards:
        stocks = {id(pile): stock for pile, stock in self.piles.stocks(self.unit.spec, self.names)}
        return Boards(
            tuple(replace(board, stock=stocks[id(pile)].name) for board, pile in self.boards),
            tuple(stocks.values()),
            tuple(self.left_out),
            self.unit.spec,
            f"{WORDS[self.unit.bare]} ({self.unit.why})" if self.unit.bare else "",
            tuple(Granted(what, tuple(rows)) for what, rows in self.granted.items()),
        )

    def board(self, row: Row) -> tuple[Board, Pile]:
        if self.text(row, "unit") and not self.unit_known(row):
            raise _Refused(f"its unit {cleaned(self.text(row, 'unit'))[:24]!r} is not known")
        length, width = self.length(row, "length"), self.length(row, "width")
        many = self.count(row)
        thick = self.length(row, "thickness") if self.text(row, "thickness") else None
        long, wide = inches(length), inches(width)
        if max(long, wide) > MOST_LONG or min(long, wide) > MOST_WIDE:
            raise _Refused("it is larger than any board")
        if thick and inches(thick) > MOST_THICK:
            raise _Refused("it is thicker than any board")
        grain = self.text(row, "grain").casefold()
        free = grain in _ANY
        # The grain of a loose part runs along its first number; where the table doesn't say, along the longer side.
        if grain in _ACROSS or (grain not in _ALONG - {""} and wide > long):
            length, width = width, length
        title = cleaned(self.text(row, "name"))
        name = named(title, "board", self.names)
        pile = self.piles.pile(self.text(row, "material"), thick)
        pile.put(length, width, not free)
        self.names.add(name)
        return Board(name, title, "", length, width, many, free), pile

    def text(self, row: Row, means: str) -> str:
        column = self.head.column(means)
        return cell(row.cells, column.at) if column else ""

    def unit_known(self, row: Row) -> bool:
        said = unit_cell(row, self.head)
        return said in UNITS or said in _OF_COUNTS

    def length(self, row: Row, means: str) -> Amount:
        column = self.head.column(means)
        assert isinstance(column, Column)
        written = cell(row.cells, column.at)
        found = amount(written)
        shown = f" {cleaned(written)[:24]!r}" if written else ""
        if isinstance(found, str):
            raise _Refused(f"its {means}{shown} {found}")
        if not found.value:
            raise _Refused(f"its {means}{shown} is nothing")
        unit = unit_said(found, column, row, self.head) or self.unit.bare
        if doubtful(written, unit):
            raise _Refused(f"its {means}{shown} {DOUBT}")
        return Amount(found.value, unit, found.text)

    def count(self, row: Row) -> int:
        written = self.text(row, "count")
        many = count(written) if written else 1
        if many is None or not 1 <= many <= _MOST:
            raise _Refused(f"its number {cleaned(written)[:24]!r} is not a count from 1 to {_MOST:,}")
        return many
