"""What is said of a table, for the person who has to look it over."""

from __future__ import annotations

from collections.abc import Iterator

from setout.new.model import Boards, Header, Stock, Table
from setout.new.names import cleaned
from setout.new.units import WORDS

_MOST = 20  # rows, columns and stocks told of one by one


def told(table: Table, head: Header, found: Boards) -> Iterator[str]:
    """What was understood, taken for granted and left out, a line each."""
    yield f"{_counted(len(found.boards), 'part')} of {_counted(len(found.stocks), 'stock')}"
    heads = ", ".join(f"{column.means} in {cleaned(column.head)!r}{_in(column.unit)}" for column in head.columns)
    yield f"row {head.row.number} names the columns: {heads}"
    if table.encoding != "UTF-8":
        yield f"the file is no UTF-8: it was read as {table.encoding}"
    if head.unused:
        yield f"not used: {', '.join(repr(cleaned(cell)) for cell in head.unused[:_MOST])}"
    if found.assumed:
        yield f"numbers without a unit were taken for {found.assumed}"
    yield from _for_granted(found, head)
    yield from _left_out(table, found)


def _for_granted(found: Boards, head: Header) -> Iterator[str]:
    if not head.column("count"):
        yield "nothing says how many: one of each"
    if not found.grain_said:
        yield "nothing is said of the grain: it runs along the length"
    said = [line for stock in found.stocks for line in _of_stock(stock, found.unit)]
    yield from said[:_MOST]
    if len(said) > _MOST:
        yield f"the like of {_counted(len(said) - _MOST, 'more stock')}"


def _of_stock(stock: Stock, unit: str) -> Iterator[str]:
    if stock.guessed:
        yield f"{stock.name}: no thickness is said, {stock.thick.text} {unit} was written"
    if stock.larger:
        yield f"{stock.name}: the usual sheet doesn't hold its boards, {stock.long} x {stock.wide} {unit} was written"


def _left_out(table: Table, found: Boards) -> Iterator[str]:
    for one in found.left_out[:_MOST]:
        yield f"left out row {one.row}: {one.why}"
    if len(found.left_out) > _MOST:
        yield f"left out {_counted(len(found.left_out) - _MOST, 'more row')} for the like"
    if table.passed_over:
        yield f"left out the last {_counted(table.passed_over, 'row')}: the table is too long"


def _in(unit: str) -> str:
    return f" ({WORDS[unit]})" if unit else ""


def _counted(count: int, what: str) -> str:
    return f"{count:,} {what}{'' if count == 1 else 's'}"
