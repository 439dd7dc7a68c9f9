"""The rack: offcuts on hand, from all the files that list some."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction

from setout.read import model as r
from setout.resolve import problems
from setout.resolve.constants import Amounts
from setout.resolve.holding import MOST
from setout.resolve.model import RackBoard, Stock
from setout.resolve.parts import stock_name

_LONGEST = Fraction(800)  # inches; the longest stick sold
_OVER = Fraction(1)  # inches that sheets and sticks come larger than they are sold for: common practice, no source


@dataclass
class _Filling:
    """The rack as it fills. `own` is the spec's own file."""

    amounts: Amounts
    own: str
    boards: list[RackBoard] = field(default_factory=list)
    counts: Counter[str] = field(default_factory=Counter)
    told: set[tuple[str, str]] = field(default_factory=set)


def rack_made(racks: Iterable[r.RackStatement], own: str, amounts: Amounts) -> tuple[RackBoard, ...]:
    """All offcuts in the order written, without those whose mistake has been reported. `own`: the spec's own file."""
    filling = _Filling(amounts, own)
    for rack in racks:
        if not rack.lines:
            amounts.ctx.say(problems.empty_rack(rack))
        for line in rack.lines:
            amounts.ctx.begin()
            _fill(line, filling)
    return tuple(filling.boards)


def _fill(line: r.RackLine, filling: _Filling) -> None:
    ctx = filling.amounts.ctx
    if line.span.file != filling.own and ctx.scope.definition(line.stock.text) is None:
        _of_another_job(line, filling)
        return
    stock = ctx.stocks.get(stock_name(line.stock, ctx) or "")
    for offcut in line.offcuts if stock is not None else ():
        ctx.begin()
        board = _board(offcut, stock, filling.amounts)  # type: ignore[arg-type]
        if board is not None and not ctx.spoiled:
            _put(board, filling)


def _of_another_job(line: r.RackLine, filling: _Filling) -> None:
    """One rack serves several jobs, and each uses only some of its stocks."""
    ctx, told = filling.amounts.ctx, (line.span.file, line.stock.text)
    if told not in filling.told and not ctx.world.incomplete:
        filling.told.add(told)
        ctx.say(problems.rack_of_no_stock(line.stock, ctx.named("stock")))


def _put(board: RackBoard, filling: _Filling) -> None:
    before = filling.counts[board.stock]
    filling.counts[board.stock] += board.count
    if filling.counts[board.stock] <= MOST:
        filling.boards.append(board)
    elif before <= MOST:
        filling.amounts.ctx.say(problems.too_much_on_rack(board.stock, MOST, board.span))


def _board(offcut: r.Offcut, stock: Stock, amounts: Amounts) -> RackBoard | None:
    """An offcut with its sizes worked out. None once the reason has been reported."""
    if len(offcut.size) != (2 if stock.kind == "sheet" else 1):
        amounts.ctx.say(problems.offcut_unlike_stock(offcut, stock))
        return None
    sizes = [_size(expr, what, stock, amounts) for expr, what in zip(offcut.size, ("length", "width"))]
    count = _count(offcut, amounts)
    if count is None or any(size is None for size in sizes):
        return None
    first, second = (*sizes, None)[:2]
    assert first is not None
    grain = _grain(offcut, first, second, stock, amounts)
    long, short = (first, None) if second is None else (max(first, second), min(first, second))
    if _too_large(long, short, stock):
        amounts.ctx.say(problems.offcut_over_stock(offcut.size, stock, amounts.ctx.world.style))
    return RackBoard(stock.name, long, short, grain, count, offcut.span)


def _size(expr: r.Expr, what: str, stock: Stock, amounts: Amounts) -> Fraction | None:
    size = amounts.length(expr, f"an offcut of {stock.name}")
    if size is None or 0 < size <= _LONGEST:
        return size
    what = f"{what} of an offcut"
    amounts.ctx.say(problems.absurd_size(stock.name, what, size, _LONGEST, expr.span, amounts.ctx.world.style))
    return None


def _count(offcut: r.Offcut, amounts: Amounts) -> int | None:
    if offcut.count is None:
        return 1
    count = amounts.count(offcut.count, "how many there are")
    if count is None or 1 <= count <= MOST:
        return count
    amounts.ctx.say(problems.odd_number(count, 1, MOST, offcut.count.span))
    return None


def _grain(offcut: r.Offcut, first: Fraction, second: Fraction | None, stock: Stock, amounts: Amounts) -> str | None:
    """ "length" or "width", of the board with its longer side as its length."""
    ctx = amounts.ctx
    if second is None:
        if offcut.along is not None:
            ctx.say(problems.grain_of_stick_stock(offcut.along.span))
        return "length"
    if stock.grain is None:
        if offcut.along is not None:
            ctx.say(problems.offcut_without_grain(offcut.along.span, stock))
        return None
    along = amounts.length(offcut.along, f"an offcut of {stock.name}") if offcut.along is not None else first
    if along is not None and along not in (first, second):
        ctx.say(problems.offcut_grain_along_neither(offcut, along, first, second, ctx.world.style))
    return "length" if along == max(first, second) else "width"


def _too_large(long: Fraction, short: Fraction | None, stock: Stock) -> bool:
    if short is None:
        return long > max(stock.lengths) + _OVER
    assert stock.long is not None
    return long > stock.long + _OVER or short > stock.short + _OVER
