"""The shop: what is on hand, and what cuts it."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, note, warning
from setout.read import model as r
from setout.resolve.model import Saw, Stock
from setout.resolve.problems.wording import amount, perhaps
from setout.source import Span
from setout.units import Style

__all__ = [
    "empty_rack",
    "kerf_wanted",
    "nothing_left",
    "number_of_no_length",
    "odd_number",
    "of_which_length",
    "offcut_grain_along_neither",
    "offcut_over_stock",
    "offcut_unlike_stock",
    "offcut_without_grain",
    "rack_of_no_stock",
    "saw_for_nothing",
    "sequence_alone",
    "sequence_of_sticks",
    "sheets_of_a_length",
    "too_much_on_rack",
    "trimmed_away",
]

# --- the rack --------------------------------------------------------------------------------------------


def rack_of_no_stock(path: r.Path, known: Sequence[str]) -> Diagnostic:
    return note(
        "rod238",
        f"This job has no stock `{path.text}`; its offcuts stay in the rack",
        path.span,
        help=perhaps(path.text, known, "nothing to do, unless the job is to use them: then define the stock"),
    )


def empty_rack(rack: r.RackStatement) -> Diagnostic:
    return note(
        "rod239",
        "There is nothing in this rack",
        rack.span,
        "no offcuts are listed",
        help="list what is there, by stock: `ply: 41 x 22-1/2, 2 of 60 x 11`",
    )


def offcut_unlike_stock(offcut: r.Offcut, stock: Stock) -> Diagnostic:
    span = offcut.size[0].span.to(offcut.size[-1].span)
    if stock.kind == "sheet":
        says, help = "only one size", f"write both its sizes: `{stock.name}: 41 x 22-1/2`"
        return error("rod242", f"An offcut of the sheet `{stock.name}` has a length and a width", span, says, help=help)
    help = f"write its length alone: `{stock.name}: 40, 2 of 61`"
    return error("rod242", f"An offcut of the stick `{stock.name}` has only a length", span, "two sizes", help=help)


def odd_number(number: int, least: int, most: int, span: Span) -> Diagnostic:
    says = f"more than {most:,}" if number > most else "none"
    help = "write how many there are" if number > most else "leave out what isn't there"
    return error("rod243", f"There can't be {number if number < 10**9 else 'so many'} of them", span, says, help=help)


def too_much_on_rack(stock: str, most: int, span: Span) -> Diagnostic:
    return error(
        "rod243",
        f"There are more than {most:,} offcuts of `{stock}`",
        span,
        "one too many",
        help="look for a number that is larger than meant; else leave out the smallest offcuts",
    )


def offcut_over_stock(size: Sequence[r.Expr], stock: Stock, style: Style) -> Diagnostic:
    largest = stock.lengths[-1:] if stock.long is None else (stock.long, stock.short)
    whole = " x ".join(amount(side, 1, style) for side in largest)
    kind = "stick" if stock.long is None else "sheet"
    return warning(
        "rod244",
        f"This offcut is larger than a whole {kind} of `{stock.name}`",
        size[0].span.to(size[-1].span),
        f"the largest {kind} is {whole}",
        help=f"look for a slipped digit; if it did come off a larger {kind}, all is well",
    )


def offcut_grain_along_neither(
    offcut: r.Offcut, along: Fraction, first: Fraction, second: Fraction, style: Style
) -> Diagnostic:
    assert offcut.along is not None
    return error(
        "rod196",
        "The grain of this offcut runs along neither side",
        offcut.along.span,
        f"no side is {amount(along, 1, style)}",
        help=f"its sides are {amount(first, 1, style)} and {amount(second, 1, style)}: name the one the grain follows",
    )


def offcut_without_grain(span: Span, stock: Stock) -> Diagnostic:
    return error(
        "rod196",
        f"`{stock.name}` has no grain",
        span,
        "nothing to say",
        help=f"leave this out; if its face does have a grain, say so in `stock {stock.name}`: `grain along …`",
    )


# --- whole ones on hand, and to be bought -------------------------------------------------------------------


def of_which_length(stock: str, clause: r.StockClause, on_sale: Sequence[Fraction], style: Style) -> Diagnostic:
    said, first = _said(clause), amount(on_sale[0], 1, style).replace(" ", "")
    return error(
        "rod249",
        f"Sticks of which length are {said}?",
        clause.span,
        f"`{stock}` comes in {_lengths(on_sale, style)}",
        help=f"say it: `{said} 3 of {first}`; for several lengths, one clause each",
    )


def number_of_no_length(
    stock: str, clause: r.StockClause, length: Fraction, on_sale: Sequence[Fraction], style: Style
) -> Diagnostic:
    rack = f"; odd lengths lie in the rack: `rack {{ {stock}: … }}`" if clause.key == "on_hand" else ""
    return error(
        "rod249",
        f"`{stock}` isn't sold in this length",
        clause.values[1].span,
        amount(length, 1, style),
        help=f"its lengths are {_lengths(on_sale, style)}{rack}",
    )


def sheets_of_a_length(stock: str, clause: r.StockClause) -> Diagnostic:
    rack = f"; smaller pieces lie in the rack: `rack {{ {stock}: … }}`" if clause.key == "on_hand" else ""
    return error(
        "rod249",
        f"Whole sheets of `{stock}` are all of one size",
        clause.values[1].span,
        "`of` is for sticks",
        help=f"leave `of` out: `{_said(clause)} 2`{rack}",
    )


def _said(clause: r.StockClause) -> str:
    return clause.key.replace("_", " ")


def _lengths(on_sale: Sequence[Fraction], style: Style) -> str:
    return ", ".join(amount(length, 1, style) for length in on_sale[:6])


# --- saws ------------------------------------------------------------------------------------------------


def kerf_wanted(saw: r.SawStatement) -> Diagnostic:
    return error(
        "rod246",
        f"How wide is the kerf of `{saw.name.text}`?",
        saw.name.span,
        help="saw into a scrap, measure the slot, and write it down: `kerf 1/8`",
    )


def saw_for_nothing(saw: r.SawStatement) -> Diagnostic:
    return error(
        "rod247",
        f"What is `{saw.name.text}` for?",
        saw.name.span,
        "nothing says what it cuts",
        help="say at least one: `rips up to 24`, `crosscuts up to 48`, `breaks down sheets`, `cuts sticks up to 12`",
    )


def nothing_left(stock: str, narrow: Fraction, saw: Saw, span: Span, style: Style) -> Diagnostic:
    named = [Label(saw.span, f"the finest kerf, {amount(saw.kerf, 1, style)}")] if saw.span.end else []
    return error(
        "rod245",
        f"One cut leaves nothing of this `{stock}`",
        span,
        f"{amount(narrow, 1, style)}, and the kerf takes {amount(saw.kerf, 1, style)}",
        *named,
        help="look for a slipped digit in the size or in the kerf; what is no wider than a kerf is waste",
    )


def trimmed_away(stock: str, narrow: Fraction, trim: Fraction, span: Span, style: Style) -> Diagnostic:
    return error(
        "rod245",
        f"Trimming the edges leaves nothing of `{stock}`",
        span,
        f"{amount(narrow, 1, style)}, less {amount(trim, 1, style)} at each edge",
        help="set the trim to what your sheets need: `practice { edge_trim 1/8 }`, or 0 for none",
    )


# --- in sequence -------------------------------------------------------------------------------------------


def sequence_alone(part: r.PartStatement) -> Diagnostic:
    assert part.sequence is not None
    return error(
        "rod248",
        f"`{part.name.text}` isn't repeated: there is no sequence to cut",
        part.sequence,
        "for several alike",
        help="say how many and where: `repeat 4 high between …`; else leave this out",
    )


def sequence_of_sticks(part: r.PartStatement) -> Diagnostic:
    assert part.sequence is not None
    return error(
        "rod248",
        f"`{part.name.text}` is a stick, and can't be cut side by side",
        part.sequence,
        "for boards out of a sheet",
        help="leave this out, or make the part of a sheet",
    )
