"""Arithmetic on lengths that keeps the chain of reasons. A sum with nothing leaves the other side as it is."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from setout.resolve.evaluate import Unworkable
from setout.source import Span
from setout.values import Mismatch, Trace, Value, apply

LONGEST_REASON = 300
AND_SO_ON = "and so on"


def rule(text: str, amount: Fraction, span: Span | None) -> Value:
    """A length that comes from a rule of setout's own or from a stock."""
    return Value(amount, 1, None, Trace("rule", text, amount, 1, (), span))


def zero(text: str, span: Span | None = None) -> Value:
    """The place where an assembly's own axis begins, under the name of that face."""
    return Value(Fraction(0), 1, None, Trace("name", text, Fraction(0), 1, (), span))


def number(n: int) -> Value:
    return Value(Fraction(n), 0, None, Trace("literal", str(n), Fraction(n), 0))


def plus(a: Value, b: Value, span: Span) -> Value:
    if _nothing(a):
        return b
    return a if _nothing(b) else _apply("+", a, b, span)


def minus(a: Value, b: Value, span: Span) -> Value:
    return a if _nothing(b) else _apply("-", a, b, span)


def times(n: int, a: Value, span: Span) -> Value:
    return a if n == 1 else _apply("*", number(n), a, span)


def shared(a: Value, n: int, span: Span) -> Value:
    """One of `n` equal shares of `a`."""
    return a if n == 1 else _apply("/", a, number(n), span)


def middle(a: Value, b: Value, span: Span) -> Value:
    return shared(plus(a, b, span), 2, span)


def under_rule(text: str, value: Value, span: Span) -> Value:
    """The value with the name of the rule that led to it."""
    return replace(value, trace=Trace("rule", text, value.amount, value.dim, (value.trace,), span))


def trimmed(value: Value) -> Value:
    """The value, without its reasons where they have grown past what anyone would read (and `why` could print)."""
    waiting, met = [value.trace], 0
    while waiting and met <= LONGEST_REASON:
        waiting.extend(waiting.pop().parts)
        met += 1
    if not waiting:
        return value
    rest = Trace("rule", AND_SO_ON, value.amount, value.dim)
    return replace(value, trace=replace(value.trace, parts=(rest,)))


def _nothing(value: Value) -> bool:
    return not value.amount and not value.held


def _apply(op: str, a: Value, b: Value, span: Span) -> Value:
    made = apply(op, (a, b), span)
    if isinstance(made, Mismatch):
        raise Unworkable(made)
    return made
