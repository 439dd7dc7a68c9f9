"""A table of boards on its way to a spec."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Row:
    """`number` counts the rows of the table from 1, empty ones too."""

    number: int
    cells: tuple[str, ...]


@dataclass(frozen=True)
class Table:
    """`fault`: why nothing can be read of it, else empty. `passed_over`: rows beyond the most that are read."""

    rows: tuple[Row, ...]
    fault: str = ""
    encoding: str = "UTF-8"
    passed_over: int = 0


@dataclass(frozen=True)
class Column:
    """`means`: name, length, width, count, material, thickness, grain or unit. `unit` as said in its head, or empty."""

    at: int
    head: str
    means: str
    unit: str


@dataclass(frozen=True)
class Header:
    """`unused`: heads of columns that mean nothing here."""

    row: Row
    columns: tuple[Column, ...]
    unused: tuple[str, ...]

    def column(self, means: str) -> Column | None:
        return next((column for column in self.columns if column.means == means), None)


@dataclass(frozen=True)
class Amount:
    """A length as a spec spells it: `text` and, unless it is empty, `unit`. `value` is in that unit."""

    value: Fraction
    unit: str
    text: str


@dataclass(frozen=True)
class Stock:
    """A kind of board. `long` and `wide` of a sheet that holds all that is cut of it, in the spec's unit; the grain is
    `along` one of them. Of a stick `long` alone, and its width is `stick`.

    `guessed`: nobody said how thick it is. `doubt`: why it may be no sheet, or empty.
    """

    name: str
    title: str
    thick: Amount
    long: int
    wide: int
    along: int | None
    guessed: bool
    larger: bool  # than what is usually sold
    stick: Amount | None = None
    doubt: str = ""


@dataclass(frozen=True)
class Board:
    """`title` is what the table calls it. The grain runs along its length unless it is `any`."""

    name: str
    title: str
    stock: str
    length: Amount
    width: Amount
    count: int
    any_grain: bool


@dataclass(frozen=True)
class LeftOut:
    """`part` is what the table calls it, perhaps nothing."""

    row: int
    why: str
    part: str = ""


@dataclass(frozen=True)
class Granted:
    """What was taken for granted of some rows, each with its part's name."""

    what: str
    rows: tuple[tuple[int, str], ...]


@dataclass(frozen=True)
class Boards:
    """`unit`: in or mm, that of the spec. `assumed`: what a bare number was taken for, and why; or empty."""

    boards: tuple[Board, ...]
    stocks: tuple[Stock, ...]
    left_out: tuple[LeftOut, ...]
    unit: str
    assumed: str
    granted: tuple[Granted, ...] = ()


@dataclass(frozen=True)
class Listed:
    """The text of a spec, and what is to be said of the table that it was made of, a line each."""

    text: str
    told: tuple[str, ...]
