"""Exact arithmetic on values, with their dimensions watched.

A bare number (`flex` set) is a plain number in products, quotients and counts, and becomes a length in its own file's
unit beside a length. The outcome of an operation is a Value with its trace, or the Mismatch that prevents it.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction

from setout.source import Span
from setout.values.mismatch import Mismatch
from setout.values.model import Trace, Value

LIMIT = 10**12
"""No amount may exceed it, nor its denominator: hostile arithmetic stays cheap."""

CONDITION = -1
"""The `dim` of a condition's value; its amount is then 0 (no) or 1 (yes)."""

COMPARISONS: dict[str, Callable[[Fraction, Fraction], bool]] = {
    "=": operator.eq,
    "!=": operator.ne,
    "<": operator.lt,
    "<=": operator.le,
    ">": operator.gt,
    ">=": operator.ge,
}

Made = tuple[Fraction, int, Fraction | None, Sequence[Value]]  # amount, dim, flex, the operands as they were used


def apply(op: str, args: Sequence[Value], span: Span) -> Value | Mismatch:
    """The operation `op` (as in resolve's Op) on its operands."""
    logical = op in ("and", "or", "not")
    if any((v.dim == CONDITION) != logical for v in args):
        return Mismatch("not_condition" if logical else "not_number", op, tuple(args), span)
    made = _TABLE[op](op, args)
    if isinstance(made, str):
        return Mismatch(made, op, tuple(args), span)
    amount, dim, flex, used = made
    if too_large(amount):
        return Mismatch("large", op, tuple(args), span)
    trace = Trace("operation", op, amount, dim, tuple(v.trace for v in used), span)
    return Value(amount, dim, flex, trace, frozenset().union(*(v.held for v in args)))


def too_large(amount: Fraction) -> bool:
    return abs(amount.numerator) > LIMIT * amount.denominator or amount.denominator > LIMIT


def literal(amount: Fraction, dim: int, flex: Fraction | None, text: str, span: Span) -> Value | Mismatch:
    """A number as it was written."""
    value = Value(amount, dim, flex, Trace("literal", text, amount, dim, (), span))
    return Mismatch("large", "", (value,), span) if too_large(amount) else value


def named(value: Value, text: str, span: Span) -> Value:
    """The value under a name: its trace says which name stood for it."""
    if value.trace.kind == "name" and value.trace.text == text:
        return value
    return replace(value, trace=Trace("name", text, value.amount, value.dim, (value.trace,), span))


def stretched(value: Value) -> Value:
    """A bare number as the length it is in its own unit; any other value as it is."""
    if value.dim != 0 or value.flex is None:
        return value
    amount = value.amount * value.flex
    return Value(amount, 1, None, replace(value.trace, amount=amount, dim=1), value.held)


def _alike(args: Sequence[Value]) -> Sequence[Value] | None:
    """The operands brought to one dimension, or None."""
    if any(v.dim == 1 for v in args):
        args = [stretched(v) for v in args]
    return args if len({v.dim for v in args}) == 1 else None


def _units(args: Sequence[Value]) -> set[Fraction | None]:
    """The units the bare operands are in. Nothing is nothing in any unit."""
    return {v.flex for v in args if v.amount} or {args[0].flex}


def _flex(args: Sequence[Value]) -> Fraction | None:
    units = _units(args)
    return units.pop() if len(units) == 1 else None


def _ambiguous(args: Sequence[Value], decide: Callable[[Sequence[Fraction]], object]) -> bool:
    """Whether bare numbers in different units decide otherwise when they are taken as lengths."""
    units = _units(args)
    if len(units) < 2 or None in units:
        return False
    return decide([v.amount for v in args]) != decide([stretched(v).amount for v in args])


def _add(op: str, args: Sequence[Value]) -> Made | str:
    used = _alike(args)
    if used is None:
        return "clash"
    a, b = used
    return (a.amount + b.amount if op == "+" else a.amount - b.amount), a.dim, _flex(used), used


def _multiply(op: str, args: Sequence[Value]) -> Made | str:
    a, b = args
    dim = a.dim + b.dim
    if dim > 3:
        return "product"
    return a.amount * b.amount, dim, None if dim else _flex(args), args


def _divide(op: str, args: Sequence[Value]) -> Made | str:
    a, b = args
    if b.dim == 1:
        a = stretched(a)
    if a.dim < b.dim:
        return "quotient"
    if not b.amount:
        return "zero"
    dim = a.dim - b.dim
    return a.amount / b.amount, dim, None if dim or b.dim else _flex((a, b)), (a, b)


def _negate(op: str, args: Sequence[Value]) -> Made | str:
    (a,) = args
    return -a.amount, a.dim, a.flex, args


def _compare(op: str, args: Sequence[Value]) -> Made | str:
    used = _alike(args)
    if used is None:
        return "clash"

    def holds(pair: Sequence[Fraction]) -> bool:
        return COMPARISONS[op](pair[0], pair[1])

    if _ambiguous(used, holds):
        return "mixed"
    return Fraction(holds([v.amount for v in used])), CONDITION, None, used


def _choose(op: str, args: Sequence[Value]) -> Made | str:
    used = _alike(args)
    if used is None:
        return "clash"

    def which(amounts: Sequence[Fraction]) -> int:
        return amounts.index(min(amounts) if op == "min" else max(amounts))

    if _ambiguous(used, which):
        return "mixed"
    chosen = used[which([v.amount for v in used])]
    return chosen.amount, chosen.dim, chosen.flex, used


def _round(op: str, args: Sequence[Value]) -> Made | str:
    """To a whole number, or to a multiple of a step; `round` takes a half upwards."""
    if len(args) == 1 and args[0].dim:
        return "step"
    used = _alike(args)
    if used is None or used[0].dim > 1:
        return "clash"
    step = used[1].amount if len(used) > 1 else Fraction(1)
    if step <= 0:
        return "bad_step"
    steps = used[0].amount / step
    whole = {"floor": steps.__floor__, "ceil": steps.__ceil__, "round": (steps + Fraction(1, 2)).__floor__}[op]()
    return whole * step, used[0].dim, _flex(used), used


def _combine(op: str, args: Sequence[Value]) -> Made | str:
    yes = [bool(v.amount) for v in args]
    outcome = {"and": all(yes), "or": any(yes), "not": not yes[0]}[op]
    return Fraction(outcome), CONDITION, None, args


_TABLE: dict[str, Callable[[str, Sequence[Value]], Made | str]] = {
    "+": _add,
    "-": _add,
    "*": _multiply,
    "/": _divide,
    "neg": _negate,
    **dict.fromkeys(COMPARISONS, _compare),
    **dict.fromkeys(("min", "max"), _choose),
    **dict.fromkeys(("floor", "ceil", "round"), _round),
    **dict.fromkeys(("and", "or", "not"), _combine),
}
OPERATIONS = frozenset(_TABLE)
