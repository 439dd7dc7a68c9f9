"""An assembly's parameters: which hold a stock, and what each is worth unsaid."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from setout.read import model as r
from setout.resolve import problems
from setout.resolve.context import Context
from setout.resolve.expressions import bound, mentions
from setout.resolve.model import BoundExpr, Op, ParamRef
from setout.resolve.parts import stock_name
from setout.resolve.scopes import STOCK_FIELDS, World, statements_within

Key = tuple[str, str]


def find_stock_parameters(world: World) -> None:
    """Which parameters hold a stock: by their default, by their use, or by where they are passed on to."""
    passed: dict[Key, list[Key]] = {}  # inner parameter -> outer ones given to it
    for named in list(world.top.definitions.values()):
        if named.kind != "assembly":
            continue
        assembly: r.AssemblyStatement = named.statement
        world.stock_parameters.update((named.name, n) for n in _by_default(assembly, world))
        names = {p.name.text for p in assembly.parameters if p.default is None}
        for statement in statements_within(assembly.body):
            _by_use(named.name, names, statement, world)
            _passed_on(named.name, statement, passed)
    _spread(passed, world)


def parameters_bound(assembly: r.AssemblyStatement, ctx: Context) -> dict[str, BoundExpr | str | None]:
    """Defaults by name. Each may hang on the parameters before it."""
    made: dict[str, BoundExpr | str | None] = {}
    for parameter in assembly.parameters:
        name = parameter.name.text
        if name in made:
            continue
        default = parameter.default
        if default is None:
            made[name] = None
        elif ctx.world.holds_stock(ctx.scope.owner, name) and isinstance(default, r.Path):
            made[name] = stock_name(default, ctx)
        else:
            made[name] = _default(parameter, list(made), ctx)
    return made


def _default(parameter: r.Parameter, earlier: list[str], ctx: Context) -> BoundExpr | None:
    assert parameter.default is not None
    for path in mentions(parameter.default):
        own = ctx.scope.own(path.parts[0])
        if (own is not None and own.kind != "parameter") or path.parts[0] == parameter.name.text:
            ctx.say(problems.default_inside(path, parameter.name.text))
            return None
    ctx.constant = True
    made = bound(parameter.default, ctx)
    ctx.constant = False
    late = _later(made, earlier) if made is not None else None
    if late is not None:
        ctx.say(problems.default_inside(r.Path((late.name,), late.span), parameter.name.text))
    return made


def _later(expr: BoundExpr, earlier: list[str]) -> ParamRef | None:
    """A parameter in it that isn't given before."""
    waiting = [expr]
    while waiting:
        node = waiting.pop()
        if isinstance(node, ParamRef) and node.name not in earlier:
            return node
        if isinstance(node, Op):
            waiting.extend(reversed(node.args))
    return None


def _by_default(assembly: r.AssemblyStatement, world: World) -> Iterator[str]:
    stocks: set[str] = set()
    for parameter in assembly.parameters:
        default = parameter.default
        if isinstance(default, r.Path):
            named = world.top.definitions.get(default.text)
            if (named is not None and named.kind == "stock") or default.text in stocks:
                stocks.add(parameter.name.text)
                yield parameter.name.text


def _by_use(owner: str, names: set[str], statement: r.Statement, world: World) -> None:
    """`of body`, `body.thick`."""
    if isinstance(statement, r.PartStatement) and statement.of is not None:
        name = statement.of.text
        if name in names:
            world.stock_parameters.add((owner, name))
    for path in _paths(statement):
        if len(path.parts) == 2 and path.parts[0] in names and path.parts[1] in STOCK_FIELDS:
            world.stock_parameters.add((owner, path.parts[0]))


def _paths(statement: object) -> Iterator[r.Path]:
    """Every path in a statement, however deep."""
    waiting = [statement]
    while waiting:
        node = waiting.pop()
        if isinstance(node, r.Path):
            yield node
        elif isinstance(node, tuple):
            waiting.extend(node)
        elif dataclasses.is_dataclass(node):
            waiting.extend(getattr(node, f.name) for f in dataclasses.fields(node) if f.name not in ("span", "head"))


def _passed_on(owner: str, statement: r.Statement, passed: dict[Key, list[Key]]) -> None:
    if isinstance(statement, r.PlaceStatement):
        for name, expr in statement.args:
            if isinstance(expr, r.Path):
                passed.setdefault((statement.assembly.text, name.text), []).append((owner, expr.text))


def _spread(passed: dict[Key, list[Key]], world: World) -> None:
    """What is given to a parameter that holds a stock holds one itself."""
    without_default = {
        (n.name, p.name.text)
        for n in world.top.definitions.values()
        if n.kind == "assembly"
        for p in n.statement.parameters
        if p.default is None
    }
    waiting = sorted(world.stock_parameters)
    while waiting:
        inner = waiting.pop()
        for outer in passed.get(inner, ()):
            if outer in without_default and outer not in world.stock_parameters:
                world.stock_parameters.add(outer)
                waiting.append(outer)
