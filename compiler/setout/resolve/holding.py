"""How many whole sheets or sticks of a stock are on hand, and how many can be bought."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from setout.read import model as r
from setout.resolve import problems
from setout.source import Span

if TYPE_CHECKING:
    from setout.resolve.constants import Amounts

MOST = 1000
"""Boards of one stock on hand, and bought: more is a slip of the pen."""

Numbers = tuple[tuple["Fraction | None", int], ...]


def numbers_of(stock: r.StockStatement, key: str, on_sale: tuple[Fraction, ...], amounts: Amounts) -> Numbers:
    """The clauses `on hand` or `at most` (`key` with a _) as (length, how many); `on_sale` the lengths of a stick, ()
    for sheets, which have no length here."""
    numbers: dict[Fraction | None, int] = {}
    spans: dict[Fraction | None, Span] = {}
    for clause in (c for c in stock.clauses if c.key == key):
        number = _number(clause, amounts)
        length = _length(stock, clause, on_sale, amounts)
        if amounts.ctx.spoiled or number is None:
            continue
        if length in spans:
            amounts.ctx.say(problems.said_twice(key.replace("_", " "), clause.span, spans[length]))
        else:
            numbers[length], spans[length] = number, clause.span
    return tuple(numbers.items())


def _number(clause: r.StockClause, amounts: Amounts) -> int | None:
    number = amounts.count(clause.values[0], "how many there are")
    if number is not None and number > MOST:
        amounts.ctx.say(problems.odd_number(number, 0, MOST, clause.values[0].span))
        return None
    return number


def _length(
    stock: r.StockStatement, clause: r.StockClause, on_sale: tuple[Fraction, ...], amounts: Amounts
) -> Fraction | None:
    ctx = amounts.ctx
    if len(clause.values) == 1:
        if len(on_sale) > 1:
            ctx.say(problems.of_which_length(stock.name.text, clause, on_sale, ctx.world.style))
        return on_sale[0] if len(on_sale) == 1 else None
    length = amounts.length(clause.values[1], "how many there are")
    if not on_sale:
        ctx.say(problems.sheets_of_a_length(stock.name.text, clause))
    elif length is not None and length not in on_sale:
        ctx.say(problems.number_of_no_length(stock.name.text, clause, length, on_sale, ctx.world.style))
    return length
