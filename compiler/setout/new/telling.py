"""What is said of a table, for the person who has to look it over."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setout.new.model import Amount, Boards, Header, Stock, Table
from setout.new.names import cleaned, row_said
from setout.new.units import WORDS
from setout.units import counted

_MOST = 20  # rows, columns and stocks told of one by one
_MOST_ROWS = 6  # of which one thing was taken for granted


def told(table: Table, head: Header, found: Boards) -> Iterator[str]:
    """What was understood, taken for granted and left out, a line each."""
    yield f"{counted(len(found.boards), 'part')} of {counted(len(found.stocks), 'stock')}"
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
    if not head.column("grain"):
        yield "nothing is said of the grain: it runs along the longer side"
    for one in found.granted[:_MOST]:
        yield f"{one.what}: {_rows(one.rows)}"
    yield from _sheets(found)
    said = [line for stock in found.stocks for line in _of_stock(stock, found.unit)]
    yield from said[:_MOST]
    if len(said) > _MOST:
        yield f"the like of {counted(len(said) - _MOST, 'more stock')}"


def _sheets(found: Boards) -> Iterator[str]:
    sheets = [stock for stock in found.stocks if not stock.stick and not stock.larger]
    if sheets:
        size = f"{sheets[0].long} x {sheets[0].wide} {found.unit}"
        yield f"nothing is said of the sheets: {size} was written, put in the size that you buy"


def _of_stock(stock: Stock, unit: str) -> Iterator[str]:
    if stock.stick:
        size = f"{_length(stock.stick)} x {_length(stock.thick)}"
        yield f"{stock.name}: taken for sticks, {size}; {stock.long} {unit} long is a guess, put in what you buy"
    if stock.doubt:
        yield f"{stock.name}: {stock.doubt}: a sheet was written; a stick is `stick WIDTH x THICKNESS long LENGTH`"
    if stock.guessed:
        yield f"{stock.name}: no thickness is said, {_length(stock.thick)} was written"
    if stock.larger and not stock.stick:
        size = f"{stock.long} x {stock.wide} {unit}"
        yield f"{stock.name}: the usual sheet, trimmed, doesn't hold its boards, {size} was written"


def _left_out(table: Table, found: Boards) -> Iterator[str]:
    for one in found.left_out[:_MOST]:
        yield f"left out {row_said(one.row, one.part)}: {one.why}"
    if len(found.left_out) > _MOST:
        yield f"left out {counted(len(found.left_out) - _MOST, 'more row')} for the like"
    if table.passed_over:
        yield f"left out the last {counted(table.passed_over, 'row')}: the table is too long"


def _rows(rows: Sequence[tuple[int, str]]) -> str:
    more = f" and {counted(len(rows) - _MOST_ROWS, 'more row')}" if len(rows) > _MOST_ROWS else ""
    return ", ".join(row_said(*row) for row in rows[:_MOST_ROWS]) + more


def _length(found: Amount) -> str:
    return f"{found.text} {found.unit}"


def _in(unit: str) -> str:
    return f" ({WORDS[unit]})" if unit else ""
