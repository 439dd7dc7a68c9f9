"""Expressions with their names bound."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Face
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.context import Context
from setout.resolve.model import (
    BoundExpr,
    FaceRef,
    LetRef,
    Lit,
    MeasureRef,
    Op,
    ParamRef,
    SizeRef,
    StockRef,
    ThingPath,
)
from setout.resolve.paths import axis_of, face_of, is_loose, room_face, single
from setout.resolve.scopes import STOCK_FIELDS, Named
from setout.units import inches_per

DEEPEST = 60
_ARITY = {"min": (1, 50), "max": (1, 50), "floor": (1, 2), "ceil": (1, 2), "round": (1, 2)}


def bound(expr: r.Expr, ctx: Context) -> BoundExpr | None:
    """The expression bound, or None once the reason has been reported."""
    if ctx.depth >= DEEPEST:
        if not ctx.cut_off:
            ctx.say(problems.too_deep(expr.span))
        ctx.cut_off = True
        return None
    ctx.cut_off = ctx.cut_off and ctx.depth > 0
    ctx.depth += 1
    made = _bound(expr, ctx)
    ctx.depth -= 1
    return made


def _bound(expr: r.Expr, ctx: Context) -> BoundExpr | None:
    if isinstance(expr, r.Number):
        return _number(expr, ctx)
    if isinstance(expr, r.Path):
        return _path(expr, ctx)
    op, args = _operation(expr)
    if isinstance(expr, r.Call) and not _ARITY[op][0] <= len(args) <= _ARITY[op][1]:
        ctx.say(problems.wrong_arguments(expr.name, len(args), *_ARITY[op], expr.span))
        return None
    made = [bound(arg, ctx) for arg in args]
    return None if any(m is None for m in made) else Op(op, tuple(made), expr.span)  # type: ignore[arg-type]


def number(expr: r.Number, flex: Fraction) -> Lit:
    """A literal; `flex` is what a bare number's unit makes in inches."""
    if not expr.unit:
        return Lit(expr.value, 0, flex, expr.text, expr.span)
    return Lit(expr.value * inches_per(expr.unit), 1, None, expr.text, expr.span)


def mentions(expr: r.Expr) -> list[r.Path]:
    """The paths in an expression, in the order written."""
    found: list[r.Path] = []
    waiting = [expr]
    while waiting:
        node = waiting.pop()
        if isinstance(node, r.Path):
            found.append(node)
        elif not isinstance(node, r.Number):
            waiting.extend(reversed(_operation(node)[1]))
    return found


def _operation(expr: r.Unary | r.Binary | r.Call) -> tuple[str, tuple[r.Expr, ...]]:
    if isinstance(expr, r.Unary):
        return ("neg" if expr.op == "-" else expr.op), (expr.arg,)
    if isinstance(expr, r.Binary):
        return expr.op, (expr.left, expr.right)
    return expr.name, expr.args


def _number(expr: r.Number, ctx: Context) -> Lit:
    return number(expr, ctx.world.flex.get(expr.span.file, Fraction(1)))


def _path(path: r.Path, ctx: Context) -> BoundExpr | None:
    first = path.parts[0]
    if first == "room":
        return _of_room(path, ctx)
    if ctx.scope.is_spoiled(first):
        ctx.spoil()
        return None
    here: ThingPath = ("self",) if ctx.own else ()
    if len(path.parts) == 1 and (face := face_of(first)) is not None:
        return _placed(FaceRef(here, face, path.span), path, ctx)
    if len(path.parts) == 1 and (axis := axis_of(first)) is not None:
        return _placed(SizeRef(here, axis, path.span), path, ctx)
    if first in ctx.scope.things:
        return _of_thing(path, ctx)
    named = ctx.scope.definition(first)
    if named is None:
        _unknown(path, ctx)
        return None
    return _of_definition(path, named, ctx)


def _placed(ref: FaceRef | SizeRef, path: r.Path, ctx: Context) -> BoundExpr | None:
    """A reference to what has a place; constants may not hold one."""
    if not ctx.constant:
        return ref
    ctx.say(problems.constant_placed(path))
    return None


def _of_room(path: r.Path, ctx: Context) -> BoundExpr | None:
    word = path.parts[1] if len(path.parts) == 2 else ""
    if room_face(word) is None and axis_of(word) is None:
        ctx.say(problems.room_word(path))
        return None
    if not ctx.world.has_room:
        ctx.say(problems.no_room(path))
        return None
    axis, face = axis_of(word), room_face(word)
    if axis is not None:
        return _room_size(SizeRef(("room",), axis, path.span), path, ctx)
    if ctx.scope.owner:
        ctx.say(problems.room_in_assembly(path, ctx.scope.owner))
        return None
    return _placed(FaceRef(("room",), face, path.span), path, ctx)  # type: ignore[arg-type]


def _room_size(ref: SizeRef, path: r.Path, ctx: Context) -> BoundExpr | None:
    """A size of the room is a constant: known as soon as the room is."""
    if not ctx.known:
        return ref
    if ctx.room is None:
        ctx.spoil()
        return None
    return Lit(ctx.room.sizes[ref.axis], 1, None, path.text, path.span)


def _of_thing(path: r.Path, ctx: Context) -> BoundExpr | None:
    *inner, last = path.parts
    face: Face | None = face_of(last)
    axis = axis_of(last)
    if face is None and axis is None:
        if single(path, ctx) is not None:
            ctx.say(problems.face_wanted(path))
        return None
    thing = single(path, ctx, tuple(inner))
    if thing is None:
        return None
    if thing.named is not None and is_loose(thing.named):
        ctx.say(problems.loose_referred(path, ".".join(inner)))
        return None
    if face is not None:
        return _placed(FaceRef(thing.path, face, path.span), path, ctx)
    return _placed(SizeRef(thing.path, axis, path.span), path, ctx)  # type: ignore[arg-type]


def _of_definition(path: r.Path, named: Named, ctx: Context) -> BoundExpr | None:
    if named.kind == "stock" or (named.kind == "parameter" and len(path.parts) > 1):
        return _of_stock(path, named, ctx)
    if len(path.parts) > 1 or named.kind not in ("let", "measure", "parameter"):
        ctx.say(problems.not_a_value(path, named.kind))
        return None
    if named.kind == "parameter":
        return _parameter(path, ctx)
    if named.kind == "measure":
        return MeasureRef(named.name, path.span)
    if named.name in ctx.world.broken_lets:
        ctx.spoil()
        return None
    return LetRef(named.name, path.span)


def _parameter(path: r.Path, ctx: Context) -> BoundExpr | None:
    if ctx.world.holds_stock(ctx.scope.owner, path.text):
        ctx.say(problems.not_a_value(path, "stock"))
        return None
    return ParamRef(path.text, path.span)


def _of_stock(path: r.Path, named: Named, ctx: Context) -> BoundExpr | None:
    if named.kind == "parameter" and not ctx.world.holds_stock(ctx.scope.owner, named.name):
        ctx.say(problems.not_a_value(path, "parameter"))
        return None
    if len(path.parts) != 2 or path.parts[1] not in STOCK_FIELDS:
        ctx.say(problems.stock_field(path, named.name))
        return None
    if named.kind == "stock" and ctx.known and not _is_sized(path, ctx):
        return None
    return StockRef(named.name, path.parts[1], path.span)


def _is_sized(path: r.Path, ctx: Context) -> bool:
    """Whether the stock has that one size."""
    stock = ctx.stocks.get(path.parts[0])
    if stock is None:
        ctx.spoil()
    elif stock.kind == "stick" and path.parts[1] == "long":
        ctx.say(problems.no_one_length(path.span, stock.name))
    else:
        return True
    return False


def _unknown(path: r.Path, ctx: Context) -> None:
    word = path.parts[0]
    if ctx.scope.owner and word in ctx.world.top.things:
        ctx.say(problems.outside_assembly(path, word, ctx.scope.owner))
    else:
        ctx.say_unknown(problems.unknown_name(path, word, ctx.found.offered(ctx.scope.names)))
