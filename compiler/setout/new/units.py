"""Which unit a table is in."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from setout.new.amounts import UNITS, amount
from setout.new.model import Amount, Column, Header, Row, Table

_METRIC = ("mm", "cm", "m")
_SURE = 130  # a bare number from here on is no board in inches
WORDS = {"in": "inches", "mm": "millimetres", "cm": "centimetres", "m": "metres", "ft": "feet"}
SIZES = ("length", "width", "thickness")


@dataclass(frozen=True)
class Unit:
    """`spec`: in or mm, for the spec. `bare`: what a number without a unit is in, with the reason; empty when there is
    none such."""

    spec: str
    bare: str
    why: str


def unit_of(table: Table, head: Header) -> Unit:
    said: Counter[str] = Counter()
    bare: list[Amount] = []
    for found, unit in _amounts(table, head):
        if unit:
            said[unit] += 1
        else:
            bare.append(found)
    usual = max(said, key=lambda unit: said[unit], default="")
    unit, why = (usual, "as elsewhere in the table") if usual else _guessed(bare)
    said[unit] += len(bare)
    metric = sum(said[unit] for unit in _METRIC) * 2 > sum(said.values())
    return Unit("mm" if metric else "in", unit if bare else "", why if bare else "")


def _guessed(bare: list[Amount]) -> tuple[str, str]:
    if any("/" in found.text for found in bare):
        return "in", "there are fractions"
    largest = max((found.value for found in bare), default=0)
    if largest >= _SURE:
        return "mm", "the longest would be more than any board is in inches"
    return "in", "nothing speaks for another"


def unit_said(found: Amount, column: Column, row: Row, head: Header) -> str:
    """The unit of an amount: its own, else that of its column, else that of its row; empty when nothing says one."""
    own = head.column("unit")
    said = cell(row.cells, own.at).casefold().rstrip(".") if own else ""
    return found.unit or column.unit or UNITS.get(said, "")


def _amounts(table: Table, head: Header) -> Iterable[tuple[Amount, str]]:
    columns = [column for means in SIZES if (column := head.column(means))]
    for row in body(table, head):
        for column in columns:
            found = amount(cell(row.cells, column.at))
            if isinstance(found, Amount):
                yield found, unit_said(found, column, row, head)


def body(table: Table, head: Header) -> tuple[Row, ...]:
    """The rows below the heads."""
    return table.rows[table.rows.index(head.row) + 1 :]


def cell(cells: tuple[str, ...], at: int) -> str:
    return cells[at] if at < len(cells) else ""
