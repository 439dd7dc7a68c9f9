"""Values given from outside (`--set NAME=TEXT`): they stand instead of a let's, or are a measure taken."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.diagnostics import Severity
from setout.read import model as r
from setout.read import read
from setout.resolve import problems
from setout.resolve.context import Context
from setout.resolve.evaluate import Unworkable, evaluate
from setout.resolve.expressions import bound, mentions
from setout.resolve.model import BoundExpr
from setout.source import Source, Span
from setout.values import Value

_LONGEST = 200


@dataclass(frozen=True)
class Given:
    """`expr` holds literals alone, and `value` is its worth."""

    expr: BoundExpr
    value: Value
    span: Span
    source: Source


def settings_given(settings: Mapping[str, str], unit: Fraction, ctx: Context) -> dict[str, Given]:
    """The settings that make sense, by name; the others are reported. `unit`: inches that a bare number makes."""
    found = {}
    for name in sorted(settings):
        given = _given(name, settings[name], unit, ctx)
        if given is not None:
            found[name] = given
    return found


def _given(name: str, text: str, unit: Fraction, ctx: Context) -> Given | None:
    named = ctx.world.top.definitions.get(name)
    if named is None or named.kind not in ("let", "measure"):
        known = [n.name for n in ctx.world.top.definitions.values() if n.kind in ("let", "measure")]
        ctx.say(problems.unknown_setting(name, named.kind if named else "", known))
        return None
    expr = _read(name, text, ctx)
    if expr is None:
        return None
    made = bound(expr, _alone(ctx, expr.span, unit))
    if made is None:
        return None
    try:
        return Given(made, evaluate(made, _nothing), expr.span, Source(_source_name(name), f"let {name} = {text}"))
    except Unworkable as stuck:
        ctx.say(problems.unworkable(stuck.mismatch, ctx.world.style))
        return None


def _source_name(name: str) -> str:
    return f"--set {name}"


def _read(name: str, text: str, ctx: Context) -> r.Expr | None:
    """The expression in `text`, which must be nothing but one of literals."""
    if len(text) > _LONGEST or any(c in text for c in "\n\r;#"):
        ctx.say(problems.setting_no_value(name, text[:_LONGEST]))
        return None
    checked = read(Source(_source_name(name), f"let {name} = {text}"))
    statements = checked.value.statements if checked.value is not None else ()
    if any(d.severity is Severity.ERROR for d in checked.diagnostics) or len(statements) != 1:
        ctx.say(problems.setting_no_value(name, text))
        return None
    let = statements[0]
    if not isinstance(let, r.LetStatement) or mentions(let.value):
        ctx.say(problems.setting_no_value(name, text))
        return None
    return let.value


def _alone(ctx: Context, span: Span, unit: Fraction) -> Context:
    """A context for literals of the command line, in the unit of the outermost file."""
    world = type(ctx.world)(ctx.world.scopes, {**ctx.world.flex, span.file: unit}, ctx.world.style)
    return Context(world, ctx.scope, ctx.found, constant=True)


def _nothing(leaf: BoundExpr) -> Value:
    raise AssertionError(f"no names in a setting: {leaf}")
