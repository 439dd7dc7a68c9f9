"""Expressions of the language put together in code, all at one place of the spec."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.read import model as r
from setout.source import Span


@dataclass(frozen=True)
class Ex:
    """An expression that adds up as it reads: `pen.path("bay", "wide") - 2 * gap`."""

    expr: r.Expr
    span: Span

    def _with(self, op: str, left: Ex | int, right: Ex | int) -> Ex:
        a, b = (self._ex(x) for x in (left, right))
        return Ex(r.Binary(op, a.expr, b.expr, self.span), self.span)

    def _ex(self, x: Ex | int) -> Ex:
        return x if isinstance(x, Ex) else Ex(r.Number(Fraction(x), "", str(x), self.span), self.span)

    def __add__(self, other: Ex | int) -> Ex:
        return self._with("+", self, other)

    def __sub__(self, other: Ex | int) -> Ex:
        return self._with("-", self, other)

    def __mul__(self, other: Ex | int) -> Ex:
        return self._with("*", self, other)

    def __rmul__(self, other: Ex | int) -> Ex:
        return self._with("*", other, self)

    def __truediv__(self, other: Ex | int) -> Ex:
        return self._with("/", self, other)


@dataclass(frozen=True)
class Pen:
    """Writes at one place of the spec."""

    span: Span

    def ex(self, expr: r.Expr) -> Ex:
        return Ex(expr, self.span)

    def path(self, *parts: str) -> Ex:
        return self.ex(r.Path(parts, self.span))

    def inches(self, amount: Fraction) -> Ex:
        return self.ex(r.Number(amount, "in", f"{amount} in", self.span))

    def plain(self, amount: int) -> Ex:
        return self.ex(r.Number(Fraction(amount), "", str(amount), self.span))

    def call(self, name: str, *args: Ex) -> Ex:
        return self.ex(r.Call(name, tuple(a.expr for a in args), self.span))

    def name(self, text: str) -> r.Name:
        return r.Name(text, self.span)

    def at(self, axis: str, low: Ex) -> r.SpanClause:
        """`wide from X`, of a placing."""
        return r.SpanClause(self.name(axis), "from", None, low.expr, None, self.span)

    def sized(self, axis: str, size: Ex, low: Ex) -> r.SpanClause:
        """`wide E from X`"""
        return r.SpanClause(self.name(axis), "size_from", size.expr, low.expr, None, self.span)

    def spread(self, axis: str, low: Ex, high: Ex) -> r.SpanClause:
        """`wide from X to Y`"""
        return r.SpanClause(self.name(axis), "from_to", low.expr, high.expr, None, self.span)
