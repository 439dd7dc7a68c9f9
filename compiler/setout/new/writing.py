"""A list of boards as the text of a spec."""

from __future__ import annotations

from collections.abc import Iterator

from setout.new.laying import laid_out
from setout.new.model import Amount, Board, Boards, Stock
from setout.new.names import cleaned, quoted


def written(found: Boards, title: str, table: str) -> str:
    return laid_out("\n".join(_lines(found, title, table)) + "\n")


def _lines(found: Boards, title: str, table: str) -> Iterator[str]:
    settings = "units inch; mark to 1/32; paper letter" if found.unit == "in" else "units mm; mark to 1; paper a4"
    name = cleaned(table.rpartition("/")[2])
    yield f"# The boards of {name}. Measure the stock with a caliper, and put in the sheets and sticks that you buy."
    yield ""
    yield f"project {quoted(title)} {{ {settings} }}"
    yield ""
    for stock in found.stocks:
        yield from _stock(stock, found.unit)
    yield ""
    yield "# The first number lies along the grain."
    for board in found.boards:
        yield _board(board, found.unit)


def _stock(stock: Stock, unit: str) -> Iterator[str]:
    yield f"stock {stock.name} {quoted(stock.title)} {{"
    if stock.stick:
        size = f"{_spelled(stock.stick, unit)} x {_spelled(stock.thick, unit)} long {stock.long}"
        remark = "width x thickness, the length a guess" if not stock.guessed else "thickness and length are guesses"
        yield f"stick {size}  # {remark}"
        yield "}"
        return
    remark = "all of it a guess" if stock.guessed else "long x short a guess, x thickness"
    yield f"sheet {stock.long} x {stock.wide} x {_spelled(stock.thick, unit)}  # {remark}"
    yield f"grain along {stock.along}" if stock.along else "grain none"
    yield "}"


def _board(board: Board, unit: str) -> str:
    size = f"size {_spelled(board.length, unit)} x {_spelled(board.width, unit)}; count {board.count}"
    grain = "; grain any" if board.any_grain else ""
    same = board.name == board.title.casefold().replace(" ", "_")
    remark = "" if same or not board.title else f"  # {board.title}"
    return f"part {board.name} of {board.stock} {{ {size}{grain} }}{remark}"


def _spelled(found: Amount, unit: str) -> str:
    return found.text if found.unit == unit else f"{found.text}{found.unit}"
