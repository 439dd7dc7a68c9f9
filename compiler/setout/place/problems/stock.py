"""Boards and the stock they come from."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, warning
from setout.geometry import Axis
from setout.place.problems.words import amount, listed
from setout.resolve.model import PartDef, Stock
from setout.source import Span
from setout.units import Style


def laid_unlike_stock(part: PartDef, stock: Stock) -> Diagnostic:
    if stock.kind == "sheet":
        says, how = "a sheet", "`upright`, `level` or `facing`"
    else:
        says, how = "a stick", "its run and its broad face, as in `across level` or `up facing`"
    return error(
        "rod274",
        f"`{part.name}` doesn't lie as its stock does",
        part.head,
        f"here this is {stock.name}, {says}",
        Label(stock.span, f"`{stock.name}`"),
        help=f"for {says} say {how}",
    )


def rip_too_wide(style: Style, name: str, width: Fraction, stock: Stock, at: Span) -> Diagnostic:
    return error(
        "rod275",
        f"`{name}` is wider than the stick it comes from",
        at,
        f"{amount(style, width)} from {amount(style, stock.short)}",
        Label(stock.span, f"`{stock.name}`"),
        help="choose a wider stock",
    )


def grain_unsettled(path: str, thick: Axis, measures: Sequence[str], at: Span) -> Diagnostic:
    return error(
        "rod276",
        f"Which side of `{path}` is the longer one hangs on {listed(measures)}",
        at,
        "so its grain isn't settled",
        help="say it: " + " or ".join(f"`grain {axis.word}`" for axis in Axis if axis != thick),
    )


def larger_than_sheet(
    style: Style, path: str, long: Fraction, wide: Fraction, stock: Stock, at: Span, turned: bool
) -> Diagnostic:
    sheet = f"{amount(style, stock.long or Fraction(0))} x {amount(style, stock.short)}"
    way = f" ({stock.grain} with the grain)" if turned else ""
    return warning(
        "rod277",
        f"No sheet is large enough for `{path}`",
        at,
        f"it is {amount(style, long)} x {amount(style, wide)}",
        Label(stock.span, f"a sheet is {sheet}{way}"),
        help="let the grain run the other way, make it of two boards, or find a larger sheet",
    )


def longer_than_sticks(style: Style, path: str, long: Fraction, stock: Stock, at: Span) -> Diagnostic:
    return warning(
        "rod278",
        f"No stick is long enough for `{path}`",
        at,
        f"it is {amount(style, long)} long",
        Label(stock.span, f"the longest is {amount(style, max(stock.lengths))}"),
        help="make it of two lengths, or add a longer one to the stock",
    )
