"""Stocks and hardware."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error
from setout.read import model as r
from setout.resolve.problems.wording import amount
from setout.source import Span
from setout.units import Style

__all__ = [
    "absurd_size",
    "grain_along_neither",
    "grain_of_stick_stock",
    "no_one_length",
    "odd_pack",
    "odd_price",
    "price_each_sheet",
    "price_of_no_length",
    "sheet_or_stick",
    "thicker_than_wide",
]


def sheet_or_stick(stock: r.StockStatement, bodies: Sequence[Span]) -> Diagnostic:
    name = stock.name.text
    help = "a sheet: `sheet 96 x 48 x 23/32` (long x short x thick); a stick: `stick 1-1/2 x 3/4 long 96`"
    if bodies:
        return error(
            "rod194", f"Is `{name}` a sheet or a stick?", bodies[1], "and this too", Label(bodies[0], "this"), help=help
        )
    return error(
        "rod194", f"Is `{name}` a sheet or a stick?", stock.name.span, "nothing says how large it comes", help=help
    )


def absurd_size(name: str, what: str, size: Fraction, most: Fraction, span: Span, style: Style) -> Diagnostic:
    who = name if name == "the room" else f"`{name}`"
    if size <= 0:
        says, help = "nothing, or less", "write the size as the tape or the caliper gives it"
    else:
        says = f"more than {amount(most, 1, style)}"
        help = "look for a slipped digit or a missing unit; a bare number is in the file's own unit"
    return error("rod195", f"The {what} of {who} can't be {amount(size, 1, style)}", span, says, help=help)


def thicker_than_wide(stock: r.StockStatement, span: Span) -> Diagnostic:
    return error(
        "rod195",
        f"`{stock.name.text}` would be thicker than it is wide",
        span,
        help="a sheet is given as long x short x thick: `sheet 96 x 48 x 23/32`",
    )


def grain_along_neither(
    stock: r.StockStatement, clause: r.StockClause, along: Fraction, long: Fraction, short: Fraction, style: Style
) -> Diagnostic:
    return error(
        "rod196",
        f"The grain of `{stock.name.text}` runs along neither side",
        clause.span,
        f"no side is {amount(along, 1, style)}",
        help=f"its sides are {amount(long, 1, style)} and {amount(short, 1, style)}: name the one the grain follows",
    )


def grain_of_stick_stock(span: Span) -> Diagnostic:
    return error("rod196", "A stick's grain runs along it", span, "nothing to say", help="leave this out")


def price_each_sheet(span: Span, what: str) -> Diagnostic:
    return error(
        "rod197",
        f"The price of {what} is for one of it",
        span,
        "`each` is for sticks",
        help="leave `each` out: `price 68`",
    )


def price_of_no_length(stock: r.StockStatement, span: Span, on_sale: Sequence[Fraction], style: Style) -> Diagnostic:
    lengths = ", ".join(amount(length, 1, style) for length in on_sale[:6])
    return error(
        "rod197",
        f"`{stock.name.text}` isn't sold in this length",
        span,
        help=f"its lengths are {lengths}: name one of them, or add this one to `long`",
    )


def odd_price(span: Span) -> Diagnostic:
    return error("rod198", "This is no price", span, help="write what one costs, without a unit: `price 6.80`")


def odd_pack(span: Span) -> Diagnostic:
    return error(
        "rod198", "This is no number of pieces in a pack", span, help="write a whole number, 1 or more: `pack 4`"
    )


def no_one_length(span: Span, stock: str) -> Diagnostic:
    return error(
        "rod204",
        f"`{stock}` is a stick and has no one length",
        span,
        "it is sold in the lengths its stock lists",
        help=f"write the length that is meant; `{stock}.wide` and `{stock}.thick` are known",
    )
