"""Rows of a table made into boards, and the stock they are of."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from setout.new.amounts import DOUBT, amount, count, doubtful
from setout.new.model import Amount, Board, Boards, Column, Header, LeftOut, Row, Table
from setout.new.names import cleaned, named
from setout.new.stocks import MOST_LONG, MOST_THICK, MOST_WIDE, Pile, Piles
from setout.new.units import WORDS, Unit, body, cell, unit_of, unit_said
from setout.units import inches_per

_MOST = 1000  # of one board
_ANY = {"any", "none", "no", "n", "-", "0", "either", "free"}
_ACROSS = {"across", "width", "wide", "w", "short", "cross"}


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

    def take(self, row: Row) -> None:
        try:
            self.boards.append(self.board(row))
        except _Refused as why:
            self.left_out.append(LeftOut(row.number, str(why)))

    def done(self) -> Boards:
        stocks = {id(pile): stock for pile, stock in self.piles.stocks(self.unit.spec, self.names)}
        return Boards(
            tuple(Board(b.name, b.title, stocks[id(pile)].name, *_rest(b)) for b, pile in self.boards),
            tuple(stocks.values()),
            tuple(self.left_out),
            self.unit.spec,
            f"{WORDS[self.unit.bare]} ({self.unit.why})" if self.unit.bare else "",
            self.head.column("grain") is not None,
        )

    def board(self, row: Row) -> tuple[Board, Pile]:
        length, width = self.length(row, "length"), self.length(row, "width")
        many = self.count(row)
        thick = self.length(row, "thickness") if self.text(row, "thickness") else None
        long, wide = _inches(length), _inches(width)
        if max(long, wide) > MOST_LONG or min(long, wide) > MOST_WIDE:
            raise _Refused("it is larger than any board")
        if thick and _inches(thick) > MOST_THICK:
            raise _Refused("it is thicker than any board")
        grain = self.text(row, "grain").casefold()
        if grain in _ACROSS:
            length, width = width, length
        title = cleaned(self.text(row, "name"))
        name = named(title, "board", self.names)
        pile = self.piles.pile(self.text(row, "material"), thick)
        pile.put(_inches(length), _inches(width), grain not in _ANY)
        self.names.add(name)
        return Board(name, title, "", length, width, many, grain in _ANY), pile

    def text(self, row: Row, means: str) -> str:
        column = self.head.column(means)
        return cell(row.cells, column.at) if column else ""

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


def _rest(board: Board) -> tuple[Amount, Amount, int, bool]:
    return board.length, board.width, board.count, board.any_grain


def _inches(found: Amount) -> Fraction:
    return found.value * inches_per(found.unit)
