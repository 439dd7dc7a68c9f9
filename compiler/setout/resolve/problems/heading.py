"""What `project`, `room`, `practice`, `measure` and values from outside may say."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, warning
from setout.practice import Row
from setout.read import model as r
from setout.resolve.problems.wording import a, amount, listed, perhaps
from setout.resolve.suggest import nearest
from setout.source import Span
from setout.units import Style

__all__ = [
    "odd_mark",
    "odd_studs",
    "out_of_range",
    "range_upside_down",
    "room_size_wanted",
    "row_not_to_be_set",
    "said_twice",
    "setting_no_value",
    "studs_from_elsewhere",
    "unknown_paper",
    "unknown_row",
    "unknown_setting",
    "unknown_unit",
]


def unknown_setting(name: str, kind: str, known: Sequence[str]) -> Diagnostic:
    shown = name[:60]
    says = f"`{shown}` is {a(kind)}" if kind else f"nothing at the top level is called `{shown}`"
    return error(
        "rod184",
        f"No `let` or `measure` to set: {says}",
        None,
        help=perhaps(name, known, "only a `let` or a `measure` can be set"),
    )


def setting_no_value(name: str, text: str) -> Diagnostic:
    return error(
        "rod185",
        f"`{name}` can't be set to `{text}`",
        None,
        help="write a length or a number, as in a spec but without names: `24`, `23-1/4`, `600mm`",
    )


def out_of_range(
    measure: r.MeasureStatement, taken: Fraction, low: Fraction, high: Fraction, span: Span, style: Style
) -> Diagnostic:
    return warning(
        "rod186",
        f"`{measure.name.text}` was expected from {amount(low, 1, style)} to {amount(high, 1, style)}",
        measure.low.span.to(measure.high.span),
        f"measured: {amount(taken, 1, style)}",
        help="measure once more; if it is right, widen what is expected",
    )


def unknown_unit(setting: r.Setting, word: str, known: Sequence[str]) -> Diagnostic:
    near = nearest(word, known, 1)
    offer = f"did you mean `{near[0]}`?" if near else f"write one of {listed(known)}"
    return error("rod190", f"No unit is called `{word}`", setting.value.span, help=offer)


def odd_mark(setting: r.Setting, metric: bool) -> Diagnostic:
    have = "1, 1/2 or 1/10 of a millimetre" if metric else "1/8, 1/16, 1/32 or 1/64 of an inch"
    example = "mark to 1mm" if metric else "mark to 1/32"
    return error(
        "rod191",
        "No tape has this division",
        setting.value.span,
        help=f"sizes are printed to a division of your tape, {have}: write `{example}`",
    )


def unknown_paper(setting: r.Setting, word: str, known: Sequence[str]) -> Diagnostic:
    return error(
        "rod192", f"No paper is called `{word}`", setting.value.span, help=f"the packet prints on {listed(known, 'or')}"
    )


def said_twice(what: str, span: Span, earlier: Span) -> Diagnostic:
    return error(
        "rod193",
        f"`{what}` is said twice",
        span,
        "and here again",
        Label(earlier, "said here"),
        help="keep one of the two",
    )


def range_upside_down(measure: r.MeasureStatement, low: Fraction, high: Fraction, style: Style) -> Diagnostic:
    what = "leaves nothing to measure" if low == high else "is the wrong way round"
    return error(
        "rod199",
        f"The range expected of `{measure.name.text}` {what}",
        measure.low.span.to(measure.high.span),
        f"from {amount(low, 1, style)} to {amount(high, 1, style)}",
        help="say the least first: `expect 2 to 5`; what is known already is a `let`",
    )


def unknown_row(name: r.Name, known: Sequence[str]) -> Diagnostic:
    return error(
        "rod200",
        f"No rule of thumb is called `{name.text}`",
        name.span,
        help=perhaps(name.text, known, "the rules and their names are listed in the practice table"),
    )


def row_not_to_be_set(name: r.Name, row: Row, span: Span) -> Diagnostic:
    if row.value is None:
        says, help = "it goes by size, in steps", "leave it as it is: one value can't stand for all its steps"
    elif row.above_zero:
        says, help = "not more than nothing", "write what your shop does, more than nothing"
    else:
        says, help = "less than nothing", "write what your shop does, nothing or more"
    return error(
        "rod201", f"`{name.text}` can't be set to this", span, says, help=f"{help} ({row.means})" if row.means else help
    )


def room_size_wanted(room: r.RoomStatement, missing: Sequence[str]) -> Diagnostic:
    return error(
        "rod202",
        f"How {' and '.join(missing)} is the room?",
        Span(room.span.file, room.span.start, min(room.span.end, room.span.start + len("room"))),
        help="say all three: `size wide 120, high 96, deep 130`",
    )


def odd_studs(span: Span) -> Diagnostic:
    return error(
        "rod203",
        "Studs stand some way apart, from the left wall on",
        span,
        "these don't",
        help="write `studs every 16 from left + 3`",
    )


def studs_from_elsewhere(span: Span) -> Diagnostic:
    return error(
        "rod203",
        "The first stud is measured from the left wall",
        span,
        "this is measured from something else",
        help="write `studs every 16 from left + 3`",
    )
