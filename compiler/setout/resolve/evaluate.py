"""What a bound expression is worth, given what its names are worth. `place` uses it too.

The lookup answers for the leaves LetRef, ParamRef, MeasureRef, FaceRef, SizeRef and StockRef; literals and operations
are worked out here. What can't be worked out raises Unworkable, which a stage catches where it reports:

    try:
        size = as_length(evaluate(expr, lookup), expr.span)
    except Unworkable as stuck:
        found.append(unworkable(stuck.mismatch))        # from setout.resolve.problems
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from setout.resolve.model import BoundExpr, FaceRef, Lit, Op, SizeRef, StockRef
from setout.source import Span
from setout.values import Mismatch, Value, apply, condition, count, length, literal, named, plain

T = TypeVar("T")
Lookup = Callable[[BoundExpr], Value]


class Unworkable(Exception):
    """The expression has no worth, for the reason in `mismatch`. It never leaves a stage."""

    def __init__(self, mismatch: Mismatch) -> None:
        super().__init__(mismatch.kind)
        self.mismatch = mismatch


def evaluate(expr: BoundExpr, lookup: Lookup) -> Value:
    """The expression's value. `lookup` may raise what it likes; what it returns gets the leaf's name in its trace."""
    if isinstance(expr, Lit):
        return _checked(literal(expr.amount, expr.dim, expr.flex, expr.text, expr.span))
    if not isinstance(expr, Op):
        return named(lookup(expr), leaf_text(expr), expr.span)
    if expr.op in ("and", "or"):
        return _in_turn(expr, lookup)
    return _checked(apply(expr.op, [evaluate(arg, lookup) for arg in expr.args], expr.span))


def as_length(value: Value, span: Span) -> Value:
    """The value as a length in inches; a bare number is one in its own file's unit."""
    return _checked(length(value, span))


def as_plain(value: Value, span: Span) -> Value:
    """The value as a plain number (degrees, money)."""
    return _checked(plain(value, span))


def as_count(value: Value, span: Span) -> int:
    """The value as a whole number, nothing or more; one that hangs on a measure is refused."""
    return int(_checked(count(value, span)).amount)


def as_condition(value: Value, span: Span) -> bool:
    """The value as yes or no; one that hangs on a measure is refused."""
    return bool(_checked(condition(value, span)).amount)


def leaf_text(leaf: BoundExpr) -> str:
    """The leaf as it would be written: `toe`, `left_side.top`, `bay.wide`, `ply.thick`."""
    if isinstance(leaf, FaceRef):
        return ".".join((*leaf.thing, leaf.face.word)).removeprefix("self.")
    if isinstance(leaf, SizeRef):
        return ".".join((*leaf.thing, leaf.axis.word))
    if isinstance(leaf, StockRef):
        return f"{leaf.stock}.{leaf.field}"
    return leaf.name  # type: ignore[union-attr]


def _in_turn(expr: Op, lookup: Lookup) -> Value:
    """`and`, `or`: the right side is looked at only where the left doesn't settle it, and so may rely on the left."""
    first = evaluate(expr.args[0], lookup)
    settled = _checked(apply(expr.op, (first,), expr.span))
    if bool(settled.amount) == (expr.op == "or"):
        return settled
    return _checked(apply(expr.op, (first, evaluate(expr.args[1], lookup)), expr.span))


def _checked(made: Value | Mismatch) -> Value:
    if isinstance(made, Mismatch):
        raise Unworkable(made)
    return made
