"""Whether an expression is a position along an axis, or a length: `top` is a height, `top - bottom` a length.

Positions are counted: a sum holds one position more than it takes away, (left + right) / 2 is one again.
"""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis
from setout.resolve import problems
from setout.resolve.context import Context
from setout.resolve.model import BoundExpr, FaceRef, Lit, Op

Bearing = dict[Axis, Fraction]  # how many positions of each axis it holds; none that are 0


def check_length(expr: BoundExpr, ctx: Context) -> None:
    """Say so when `expr` is a position where a length is wanted."""
    bearing = _bearing(expr)
    if bearing:
        ctx.say(problems.length_wanted(_witness(expr, next(iter(bearing))), expr.span))


def _bearing(expr: BoundExpr) -> Bearing | None:
    """None: it can't be told."""
    if isinstance(expr, FaceRef):
        return {expr.face.axis: Fraction(1)}
    if not isinstance(expr, Op):
        return {}
    parts = [_bearing(arg) for arg in expr.args]
    if any(p is None for p in parts):
        return None
    if expr.op in ("+", "-"):
        return _sum(parts[0], parts[1], 1 if expr.op == "+" else -1)  # type: ignore[arg-type]
    if expr.op == "neg":
        return _sum({}, parts[0], -1)  # type: ignore[arg-type]
    if expr.op in ("*", "/"):
        return _scaled(expr, parts)  # type: ignore[arg-type]
    if expr.op in ("min", "max"):
        return parts[0] if all(p == parts[0] for p in parts) else None
    return parts[0] if expr.op in ("floor", "ceil", "round") else {}


def _sum(a: Bearing, b: Bearing, sign: int) -> Bearing:
    total = {axis: a.get(axis, Fraction(0)) + sign * b.get(axis, Fraction(0)) for axis in Axis}
    return {axis: count for axis, count in total.items() if count}


def _scaled(expr: Op, parts: list[Bearing]) -> Bearing | None:
    if not any(parts):
        return {}
    factor = _literal(expr.args[1])
    held = parts[0]
    if factor is None and expr.op == "*":
        factor, held = _literal(expr.args[0]), parts[1]
    if not factor:
        return None
    return {axis: count * factor if expr.op == "*" else count / factor for axis, count in held.items()}


def _literal(expr: BoundExpr) -> Fraction | None:
    return expr.amount if isinstance(expr, Lit) and expr.dim == 0 else None


def _witness(expr: BoundExpr, axis: Axis) -> FaceRef:
    """The first position of that axis in the expression."""
    waiting = [expr]
    while waiting:
        node = waiting.pop()
        if isinstance(node, FaceRef) and node.face.axis == axis:
            return node
        if isinstance(node, Op):
            waiting.extend(reversed(node.args))
    raise AssertionError("no position of that axis")
