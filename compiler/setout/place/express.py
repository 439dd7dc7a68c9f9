"""Expressions in the scope where they are written: what they refer to is asked for first, then they are evaluated."""

from __future__ import annotations

from fractions import Fraction
from typing import Protocol

from setout.geometry import Axis
from setout.place import amounts, problems
from setout.place.engine import Poisoned, Work, need
from setout.place.found import face_of, find_one, size_of
from setout.place.shapes import stock_named
from setout.place.site import Scope, Site
from setout.resolve.evaluate import as_condition, as_count, as_length, as_plain, evaluate
from setout.resolve.model import (
    BoundExpr,
    FaceRef,
    LetRef,
    MeasureRef,
    Op,
    ParamRef,
    SizeRef,
    Stock,
    StockRef,
)
from setout.source import Span
from setout.values import Trace, Value


class Own(Protocol):
    """Where a part's own faces are, for the features that are set out from them."""

    def __call__(self, axis: Axis, sign: int, span: Span) -> Work: ...


class _Wanted(Exception):
    def __init__(self, leaf: BoundExpr) -> None:
        self.leaf = leaf


def worth(site: Site, scope: Scope, expr: BoundExpr, own: Own | None = None) -> Work:
    """The expression's Value."""
    known: dict[BoundExpr, Value] = {}

    def lookup(leaf: BoundExpr) -> Value:
        if leaf not in known:
            raise _Wanted(leaf)
        return known[leaf]

    for leaf in _leaves(site, expr):
        known[leaf] = yield from _leaf(site, scope, leaf, own)
    while True:
        try:
            return evaluate(expr, lookup)
        except _Wanted as more:
            wanted = more.leaf
        known[wanted] = yield from _leaf(site, scope, wanted, own)


def length(site: Site, scope: Scope, expr: BoundExpr, own: Own | None = None) -> Work:
    return as_length((yield from worth(site, scope, expr, own)), expr.span)


def above_zero(site: Site, scope: Scope, expr: BoundExpr, what: str, own: Own | None = None) -> Work:
    """The length; one that is nothing or less is reported as `what`."""
    value = yield from length(site, scope, expr, own)
    if value.amount <= 0:
        site.report(problems.not_above_zero(site.style, what, value.amount, expr.span))
        raise Poisoned
    return value


def count(site: Site, scope: Scope, expr: BoundExpr) -> Work:
    return as_count((yield from worth(site, scope, expr)), expr.span)


def number(site: Site, scope: Scope, expr: BoundExpr) -> Work:
    return as_plain((yield from worth(site, scope, expr)), expr.span)


def condition(site: Site, scope: Scope, expr: BoundExpr) -> Work:
    return as_condition((yield from worth(site, scope, expr)), expr.span)


# --- rules -------------------------------------------------------------------------------------------


def let(site: Site, name: str) -> Work:
    if name in site.project.settings:
        return site.project.settings[name]
    if name not in site.project.lets:
        raise Poisoned
    return (yield from worth(site, site.job, site.project.lets[name]))


def parameter(site: Site, scope: Scope, name: str) -> Work:
    given, where = scope.parameters.get(name), scope
    if scope.place is not None and scope.parent is not None and name in scope.place.args:
        given, where = scope.place.args[name], scope.parent
    if given is None or isinstance(given, str):
        raise Poisoned
    return (yield from worth(site, where, given))


# --- leaves -------------------------------------------------------------------------------------------


def _leaves(site: Site, expr: BoundExpr) -> tuple[BoundExpr, ...]:
    """What the expression refers to whatever the case: not the right side of an `and` or `or`."""
    kept = site.leaves.get(id(expr))
    if kept is None:
        kept = site.leaves[id(expr)] = tuple(_walk(expr))
    return kept


def _walk(expr: BoundExpr) -> dict[BoundExpr, None]:
    met: dict[BoundExpr, None] = {}
    waiting = [expr]
    while waiting:
        at = waiting.pop()
        if isinstance(at, Op):
            waiting.extend(at.args[:1] if at.op in ("and", "or") else reversed(at.args))
        elif isinstance(at, LetRef | ParamRef | MeasureRef | FaceRef | SizeRef | StockRef):
            met[at] = None
    return met


def _leaf(site: Site, scope: Scope, leaf: BoundExpr, own: Own | None) -> Work:
    if isinstance(leaf, FaceRef):
        if leaf.thing == ("self",) and own is not None:
            return (yield from own(leaf.face.axis, leaf.face.sign, leaf.span))
        return (yield from _face(site, scope, leaf))
    if isinstance(leaf, SizeRef):
        if leaf.thing == ("self",) and own is not None:
            return (yield from own(leaf.axis, 0, leaf.span))
        found = yield from find_one(site, scope, leaf.thing, leaf.span)
        return (yield from size_of(site, found, leaf.axis, leaf.span))
    if isinstance(leaf, ParamRef):
        return amounts.trimmed((yield from need("parameter", scope, leaf.name, span=leaf.span)))
    if isinstance(leaf, LetRef):
        return amounts.trimmed((yield from need("let", leaf.name, span=leaf.span)))
    if isinstance(leaf, MeasureRef):
        return _measure(site, leaf.name)
    assert isinstance(leaf, StockRef)
    return _stock_size(site, scope, leaf)


def _face(site: Site, scope: Scope, ref: FaceRef) -> Work:
    found = yield from find_one(site, scope, ref.thing, ref.span)
    return (yield from face_of(site, found, ref.face, ref.span))


def _measure(site: Site, name: str) -> Value:
    if name not in site.taken:
        raise Poisoned
    amount = site.taken[name]
    held = frozenset((name,)) if name in site.open else frozenset()
    return Value(amount, 1, None, Trace("name", name, amount, 1, (), site.project.measures[name].span), held)


def _stock_size(site: Site, scope: Scope, ref: StockRef) -> Value:
    stock = stock_named(site, scope, ref.stock)
    amount = _dimension(stock, ref.field) if stock else None
    if stock is None or amount is None:
        raise Poisoned
    return amounts.rule(f"{ref.field} of {stock.name}", amount, stock.span)


def _dimension(stock: Stock, field: str) -> Fraction | None:
    if field == "thick":
        return stock.thick
    if field == "wide":
        return stock.short
    return stock.long if stock.long is not None else max(stock.lengths, default=None)
