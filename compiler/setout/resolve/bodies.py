"""Bodies: the parts, placings, openings and joints of an assembly or of the job."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from setout.geometry import Axis
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.clauses import length, span_def, spans_bound
from setout.resolve.context import Context, Use
from setout.resolve.expressions import bound
from setout.resolve.filling import bank_def, door_def, item_def, shelves_def
from setout.resolve.joints import accepted, fit_def, joint_def, rests_def
from setout.resolve.model import (
    Body,
    BoundExpr,
    FaceRef,
    JointDef,
    Lit,
    Op,
    OpeningDef,
    RestsDef,
    SizeRef,
    SpanDef,
    StockRef,
)
from setout.resolve.parts import part_def
from setout.resolve.paths import axis_of, uses_along
from setout.resolve.places import place_def
from setout.resolve.scopes import World
from setout.source import Span

When = tuple[BoundExpr, ...]

_KINDS = ("part", "place", "opening", "joint", "rests", "fit", "bank", "door", "shelves", "item")
"""What a body holds, in the order of the fields of Body."""


@dataclass(frozen=True)
class Item:
    """One definition and what it hangs on; `made` None when it is spoiled, `name` "" for what isn't called anything.

    `lost`: a joint, for when it or what it hangs on is spoiled.
    """

    kind: str
    name: str
    made: Any
    uses: tuple[Use, ...]
    lost: JointDef | None = None


@dataclass
class Draft:
    """A body before what hangs on mistakes is dropped from it. `uses`: what its size and defaults hang on."""

    owner: str
    size: dict[Axis, BoundExpr] = field(default_factory=dict)
    size_span: Span | None = None
    said: dict[Axis, Span] = field(default_factory=dict)
    defaults: dict[Axis, SpanDef] = field(default_factory=dict)
    items: list[Item] = field(default_factory=list)
    uses: list[Use] = field(default_factory=list)
    spoiled: bool = False

    def body(self, broken: set[Use], world: World) -> Body:
        """The body with what neither is broken nor hangs on it."""
        found: dict[str, list[Any]] = {kind: [] for kind in _KINDS}
        for item in self.items:
            if item.made is not None and not any(use in broken for use in item.uses):
                found[item.kind].append(item.made)
            elif item.lost is not None:
                found["rests"] += [rest for rest in accepted(item.lost) if self._stands(rest, broken, world)]
        return Body(self.size, self.size_span, self.defaults, *map(tuple, found.values()))

    def _stands(self, rest: RestsDef, broken: set[Use], world: World) -> bool:
        uses = [use for path in (rest.upper, rest.lower) for use in uses_along(path, self.owner, world)]
        return not any(use in broken for use in uses)


def draft_of(statements: Iterable[r.Statement], ctx: Context) -> Draft:
    """Everything in a body bound; `ctx` is its scope's."""
    draft = Draft(ctx.scope.owner)
    for statement in statements:
        _add(statement, (), [], False, draft, ctx)
    return draft


def _add(statement: r.Statement, when: When, uses: list[Use], spoiled: bool, draft: Draft, ctx: Context) -> None:
    """`when`: the conditions it stands under, `uses` and `spoiled` theirs."""
    ctx.begin()
    if isinstance(statement, r.WhenStatement):
        condition = bound(statement.condition, ctx)
        if condition is not None and _is_amount(condition):
            ctx.say(problems.condition_wanted(statement.condition.span))
        inner, hung, lost = (*when, condition) if condition else when, [*uses, *ctx.uses], spoiled or ctx.spoiled
        for each in statement.body:
            _add(each, inner, hung, lost, draft, ctx)
    elif isinstance(statement, r.SizeStatement):
        _size(statement, draft, ctx)
    elif isinstance(statement, r.DefaultStatement):
        _default(statement, draft, ctx)
    elif type(statement) in _MAKERS:
        kind, make = _MAKERS[type(statement)]
        made = make(statement, when, ctx)
        lost = spoiled or ctx.spoiled
        name = _name(statement)
        if name and ctx.scope.things.get(name) is not None and ctx.scope.things[name].statement is not statement:
            return  # its name was given before: reported, and the first of them counts
        built_from = ((statement.assembly.text, ""),) if isinstance(statement, r.PlaceStatement) else ()
        joint = made if isinstance(made, JointDef) and not spoiled else None
        draft.items.append(Item(kind, name, None if lost else made, (*uses, *ctx.uses, *built_from), joint))


def _is_amount(condition: BoundExpr) -> bool:
    """Whether it can be seen that it is no condition."""
    if isinstance(condition, Op):
        return condition.op in ("+", "-", "*", "/", "neg", "min", "max", "floor", "ceil", "round")
    return isinstance(condition, (Lit, FaceRef, SizeRef, StockRef))


def _name(statement: r.Statement) -> str:
    if isinstance(statement, r.PlaceStatement):
        return statement.name.text if statement.name is not None else statement.assembly.text
    return statement.name.text if isinstance(statement, (r.PartStatement, r.OpeningStatement)) else ""


def _size(statement: r.SizeStatement, draft: Draft, ctx: Context) -> None:
    draft.size_span = draft.size_span or statement.span
    for name, expr in statement.sizes:
        axis = axis_of(name.text)
        if axis is None:
            continue
        if axis in draft.said:
            if draft.said[axis].start < statement.span.start or draft.said[axis].file != name.span.file:
                ctx.say(problems.said_twice(f"size {name.text}", name.span, draft.said[axis]))
            continue  # twice in one `size`: `read` has reported it
        draft.said[axis] = name.span
        size = length(expr, ctx)
        if size is not None:
            draft.size[axis] = size
    _note(draft, ctx)


def _default(statement: r.DefaultStatement, draft: Draft, ctx: Context) -> None:
    made = span_def(statement.clause, ctx)
    if made is not None and made.axis in draft.defaults:
        ctx.say(problems.said_twice(f"default {made.axis.word}", made.span, draft.defaults[made.axis].span))
    elif made is not None:
        draft.defaults[made.axis] = made
    _note(draft, ctx)


def _note(draft: Draft, ctx: Context) -> None:
    draft.uses.extend(ctx.uses)
    draft.spoiled = draft.spoiled or ctx.spoiled


def _opening(opening: r.OpeningStatement, when: When, ctx: Context) -> OpeningDef:
    return OpeningDef(opening.name.text, spans_bound(opening.spans, ctx), when, opening.span)


_MAKERS: dict[type, tuple[str, Callable[[Any, When, Context], Any]]] = {
    r.PartStatement: ("part", part_def),
    r.PlaceStatement: ("place", place_def),
    r.OpeningStatement: ("opening", _opening),
    r.JointStatement: ("joint", joint_def),
    r.RestsStatement: ("rests", rests_def),
    r.FitStatement: ("fit", fit_def),
    r.DrawersStatement: ("bank", bank_def),
    r.DoorStatement: ("door", door_def),
    r.ShelvesStatement: ("shelves", shelves_def),
    r.ItemStatement: ("item", item_def),
}
