"""Arithmetic that can't be done, and values that aren't what their place wants. `place` reports these too."""

from __future__ import annotations

from setout.diagnostics import Diagnostic, error
from setout.resolve.model import FaceRef
from setout.resolve.problems.wording import amount, listed
from setout.source import Span
from setout.units import Style
from setout.values import CONDITION, LIMIT, Mismatch, Value

__all__ = ["condition_wanted", "constant_held", "length_wanted", "too_deep", "unworkable", "wrong_arguments"]

_KINDS = {CONDITION: "a condition", 0: "a plain number", 1: "a length", 2: "an area", 3: "a volume"}
_DOING = {"+": "added", "-": "subtracted", "*": "multiplied", "/": "divided", "min": "compared", "max": "compared"}


def unworkable(mismatch: Mismatch, style: Style) -> Diagnostic:
    """Why an expression has no worth, or not the one that is wanted; amounts are shown in `style`."""
    return _BY_KIND[mismatch.kind](mismatch, style)


def _kind(value: Value, style: Style) -> str:
    shown = f", {amount(value.amount, value.dim, style)}" if value.dim in (0, 1) else ""
    return _KINDS[value.dim] + shown


def _kinds(mismatch: Mismatch, style: Style) -> str:
    return " and ".join(_KINDS[value.dim] for value in mismatch.args[:2])


def _clash(m: Mismatch, style: Style) -> Diagnostic:
    lengths = {v.dim for v in m.args} == {0, 1}
    how = "give the plain number a unit (`2in`, `40mm`)" if lengths else "only like can be put with like"
    why = "; a number that comes of dividing lengths stays a plain number" if lengths else ""
    doing = _DOING.get(m.op, "rounded to a step" if m.op in ("floor", "ceil", "round") else "compared")
    return error("rod150", f"These can't be {doing}", m.span, f"{_kinds(m, style)} with `{m.op}`", help=how + why)


def _product(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod151",
        "Too many lengths are multiplied",
        m.span,
        f"{_kinds(m, style)} make more than a volume",
        help="look for a `*` too many: a span is a length, and a length times a plain number",
    )


def _quotient(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod151",
        f"{_KINDS[m.args[0].dim].capitalize()} can't be divided by {_KINDS[m.args[1].dim]}",
        m.span,
        "what comes out is no size of anything",
        help="divide a length by a length for a plain number, or by a plain number for a length",
    )


def _zero(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod152",
        "Division by nothing",
        m.span,
        "what it is divided by comes to 0",
        help="look at what is divided by here; `max(1, …)` keeps a count from being 0",
    )


def _large(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod153",
        "This number is beyond any workshop",
        m.span,
        f"over {LIMIT:,} in, or split finer than that",
        help="look for a slipped digit",
    )


def _mixed(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod154",
        "Bare numbers from files with different units",
        m.span,
        "it isn't clear whether these are lengths or counts",
        help="give the lengths their units (`600mm`, `24in`); for counts compare their difference: `n - 2 > 0`",
    )


def _step(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod155",
        f"`{m.op}` of a length needs a step",
        m.span,
        f"this is {_kind(m.args[0], style)}",
        help=f"say to what it is rounded: `{m.op}(…, 1/16)`",
    )


def _bad_step(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod155",
        f"`{m.op}` needs a step above 0",
        m.span,
        f"the step comes to {amount(m.args[1].amount, m.args[1].dim, style)}",
        help=f"write a step such as `{m.op}(…, 1/16)`",
    )


def _not_length(m: Mismatch, style: Style) -> Diagnostic:
    value = m.args[0]
    how = {
        0: "give it a unit (`2in`, `40mm`): dividing one length by another leaves a plain number",
        CONDITION: "a comparison is yes or no; use `when` to choose",
    }.get(value.dim, "look for a `*` too many: length times length is an area")
    return error("rod156", "A length is wanted here", m.span, f"this is {_kind(value, style)}", help=how)


def _not_count(m: Mismatch, style: Style) -> Diagnostic:
    value = m.args[0]
    how = (
        "round it: `floor(…)`, `ceil(…)`"
        if value.dim == 0 and value.amount > 0
        else "a count is a whole number without a unit"
    )
    return error("rod157", "A whole number is wanted here", m.span, f"this is {_kind(value, style)}", help=how)


def _not_plain(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod158",
        "A plain number is wanted here",
        m.span,
        f"this is {_kind(m.args[0], style)}",
        help="leave its unit out, or divide by a length",
    )


def _not_number(m: Mismatch, style: Style) -> Diagnostic:
    return error(
        "rod159",
        "A number is wanted here, not a condition",
        m.span,
        f"`{m.op}` can't work with yes and no",
        help="comparisons stand in `when`, joined by `and`, `or` and `not`",
    )


def _not_condition(m: Mismatch, style: Style) -> Diagnostic:
    return condition_wanted(m.span)


def condition_wanted(span: Span) -> Diagnostic:
    return error(
        "rod159",
        "A condition is wanted here, not a number",
        span,
        "this is neither yes nor no",
        help="compare it: `shelves > 0`, `w >= 36`",
    )


def _held(m: Mismatch, style: Style) -> Diagnostic:
    names = listed(sorted(m.args[0].held))
    what = "How many there are" if m.op == "count" else "What is built"
    return error(
        "rod160",
        f"{what} can't hang on a measure",
        m.span,
        f"this hangs on {names}, which is not taken yet",
        help=f"decide it now with a `let`; only sizes and places may wait for {names}",
    )


def constant_held(what: str, measures: list[str], span: Span) -> Diagnostic:
    return error(
        "rod160",
        f"This can't wait for a measure: {what}",
        span,
        f"it hangs on {listed(measures)}, which is not taken yet",
        help="write what it is; sizes and places of parts may wait for a measure, what is bought may not",
    )


def length_wanted(witness: FaceRef, span: Span) -> Diagnostic:
    face, axis = witness.face, witness.face.axis
    return error(
        "rod161",
        "A length is wanted here, not a position",
        span,
        f"`{'.'.join((*witness.thing, face.word)).removeprefix('self.')}` is a place along {axis.word}",
        help=f"from one position to another is `{axis.word} from … to …`; the length between two is their difference",
    )


def too_deep(span: Span) -> Diagnostic:
    return error(
        "rod162", "This expression is too long", span, help="take a part of it out into a `let` at the top level"
    )


def wrong_arguments(name: str, given: int, least: int, most: int, span: Span) -> Diagnostic:
    wants = f"{least} or {most} values" if most == least + 1 else f"{least} to {most} values"
    example = f"{name}(a, b)" if name in ("min", "max") else f"{name}(x)` or `{name}(x, step)"
    return error("rod163", f"`{name}` takes {wants}", span, f"here it has {given}", help=f"write `{example}`")


_BY_KIND = {
    "clash": _clash,
    "product": _product,
    "quotient": _quotient,
    "zero": _zero,
    "large": _large,
    "mixed": _mixed,
    "step": _step,
    "bad_step": _bad_step,
    "not_length": _not_length,
    "not_count": _not_count,
    "not_plain": _not_plain,
    "not_number": _not_number,
    "not_condition": _not_condition,
    "held": _held,
}
