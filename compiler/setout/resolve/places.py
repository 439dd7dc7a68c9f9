"""Placed assemblies: what they are given, how they are turned, where they stand."""

from __future__ import annotations

from setout.geometry import Axis
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.clauses import check_agreement, positions_bound, repeat_def, spans_bound
from setout.resolve.context import Context
from setout.resolve.expressions import bound
from setout.resolve.model import BoundExpr, PlaceDef
from setout.resolve.parts import stock_name
from setout.resolve.scopes import Named


def place_def(place: r.PlaceStatement, when: tuple[BoundExpr, ...], ctx: Context) -> PlaceDef | None:
    """A placing bound. None once the reason has been reported."""
    assembly = _assembly(place, ctx)
    args = _arguments(place, assembly.statement, ctx) if assembly is not None else {}
    spans = spans_bound(place.spans, ctx)
    repeat = repeat_def(place.repeat, None, ctx) if place.repeat is not None else None
    positions = positions_bound(place.positions, spans, tuple(Axis), repeat.axis if repeat else None, ctx)
    check_agreement(spans, positions, repeat, ctx)
    turned = bound(place.turned, ctx) if place.turned is not None else None
    if assembly is None:
        return None
    name = place.name.text if place.name is not None else assembly.name
    return PlaceDef(
        name, assembly.name, args, turned, place.mirrored, spans, positions, repeat, when, place.span, place.head
    )


def _assembly(place: r.PlaceStatement, ctx: Context) -> Named | None:
    path = place.assembly
    named = ctx.world.top.definitions.get(path.text)
    if named is not None and named.kind == "assembly":
        return named
    other = ctx.scope.definition(path.parts[0])
    if (other is None and len(path.parts) > 1) or (place.name is not None and other is None):
        other = ctx.scope.things.get(path.parts[0])
    if ctx.scope.is_spoiled(path.parts[0]):
        ctx.spoil()
    else:
        ctx.say_unknown(problems.unknown_assembly(path, other.kind if other is not None else "", ctx.named("assembly")))
    return None


def _arguments(place: r.PlaceStatement, assembly: r.AssemblyStatement, ctx: Context) -> dict[str, BoundExpr | str]:
    parameters = {p.name.text: p for p in assembly.parameters}
    args: dict[str, BoundExpr | str] = {}
    seen: set[str] = set()
    for name, expr in place.args:
        if name.text in seen:
            continue  # `read` has reported it
        seen.add(name.text)
        if name.text not in parameters:
            ctx.say(problems.unknown_parameter(name, assembly, ctx.found.offered(lambda: parameters)))
            continue
        value = _argument(name, expr, assembly, ctx)
        if value is not None:
            args[name.text] = value
    missing = [n for n, p in parameters.items() if p.default is None and n not in seen]
    if missing:
        ctx.say(problems.argument_missing(place, assembly, missing))
    return args


def _argument(name: r.Name, expr: r.Expr, assembly: r.AssemblyStatement, ctx: Context) -> BoundExpr | str | None:
    if not ctx.world.holds_stock(assembly.name.text, name.text):
        if isinstance(expr, r.Path) and _is_stock(expr, ctx):
            ctx.say(problems.argument_kind(name, assembly, expr, stock=False))
            return None
        return bound(expr, ctx)
    if not isinstance(expr, r.Path):
        ctx.say(problems.argument_kind(name, assembly, expr, stock=True))
        return None
    return stock_name(expr, ctx)


def _is_stock(path: r.Path, ctx: Context) -> bool:
    named = ctx.scope.definition(path.text)
    return named is not None and (
        named.kind == "stock" or (named.kind == "parameter" and ctx.world.holds_stock(ctx.scope.owner, named.name))
    )
