"""Values taken as what the place they stand in wants: a length, a count, a plain number, a condition."""

from __future__ import annotations

from setout.source import Span
from setout.values.arithmetic import CONDITION, stretched
from setout.values.mismatch import Mismatch
from setout.values.model import Value


def length(value: Value, span: Span) -> Value | Mismatch:
    """The value as a length in inches (dim 1)."""
    taken = stretched(value)
    return taken if taken.dim == 1 else Mismatch("not_length", "", (value,), span)


def plain(value: Value, span: Span) -> Value | Mismatch:
    """The value as a plain number: money, degrees, hours."""
    return value if value.dim == 0 else Mismatch("not_plain", "", (value,), span)


def count(value: Value, span: Span) -> Value | Mismatch:
    """The value as a whole number, nothing or more, that no measure decides."""
    if value.dim != 0 or value.amount.denominator != 1 or value.amount < 0:
        return Mismatch("not_count", "", (value,), span)
    return Mismatch("held", "count", (value,), span) if value.held else value


def condition(value: Value, span: Span) -> Value | Mismatch:
    """The value as a condition that no measure decides."""
    if value.dim != CONDITION:
        return Mismatch("not_condition", "", (value,), span)
    return Mismatch("held", "when", (value,), span) if value.held else value
