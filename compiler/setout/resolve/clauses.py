"""Spans, positions and repeats with their words bound, and whether they agree with one another."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from setout.geometry import Axis, Face
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.bearing import check_length
from setout.resolve.context import Context
from setout.resolve.expressions import bound, mentions
from setout.resolve.model import (
    BoundExpr,
    FaceRef,
    Lit,
    Op,
    PositionDef,
    RepeatDef,
    SpanDef,
    ThingPath,
)
from setout.resolve.paths import axis_of, face_of, is_loose, room_face, single
from setout.source import Span

FIXING = ("between", "over", "from_to", "size_from", "size_to", "size_on", "from", "to")
"""Kinds of span that say where the thing stands, not only how long it is."""

_POSITIONS = {"from_to": "ab", "size_from": "b", "size_to": "b", "from": "b", "to": "b"}
_LENGTHS = {"size": "a", "size_from": "a", "size_to": "a", "size_on": "a"}


def length(expr: r.Expr, ctx: Context) -> BoundExpr | None:
    """An expression where a length, and no position, is wanted."""
    made = bound(expr, ctx)
    if made is not None:
        check_length(made, ctx)
    return made


def neighbour(path: r.Path, ctx: Context) -> ThingPath | None:
    """One thing with a place, named in `between` or `over`."""
    if len(path.parts) > 1 and (path.parts[0] == "room" or not _names_thing(path)):
        ctx.say(problems.thing_wanted(path))
        return None
    thing = single(path, ctx)
    if thing is None:
        return None
    if thing.kind == "room":
        ctx.say(problems.thing_wanted(path))
        return None
    if thing.named is not None and is_loose(thing.named):
        ctx.say(problems.loose_referred(path, path.text))
        return None
    return thing.path


def spans_bound(clauses: Iterable[r.SpanClause], ctx: Context) -> tuple[SpanDef, ...]:
    """One span an axis: `read` has reported what is said again."""
    by_axis: dict[str, r.SpanClause] = {}
    for clause in clauses:
        by_axis.setdefault(clause.axis.text, clause)
    return tuple(made for clause in by_axis.values() if (made := span_def(clause, ctx)) is not None)


def span_def(clause: r.SpanClause, ctx: Context) -> SpanDef | None:
    """A span clause bound. None once the reason has been reported."""
    axis = axis_of(clause.axis.text)
    if axis is None:
        return None
    sides = {"a": clause.a, "b": clause.b}
    made: dict[str, BoundExpr | ThingPath | None] = {"a": None, "b": None}
    for side, given in sides.items():
        if given is None:
            continue
        if clause.kind in ("between", "over"):
            made[side] = neighbour(given, ctx)  # type: ignore[arg-type]
        elif side in _POSITIONS.get(clause.kind, ""):
            made[side] = bound(given, ctx)
        elif side in _LENGTHS.get(clause.kind, ""):
            made[side] = length(given, ctx)
        else:
            made[side] = middle(given, ctx)
    extra = length(clause.extra, ctx) if clause.extra is not None else None
    if any(given is not None and made[side] is None for side, given in sides.items()):
        return None
    return SpanDef(axis, clause.kind, made["a"], made["b"], extra, clause.span)


def middle(expr: r.Expr, ctx: Context) -> BoundExpr | ThingPath | None:
    """What something is centred on: a thing, or a position."""
    if isinstance(expr, r.Path) and expr.parts[0] in ctx.scope.things and _names_thing(expr):
        return neighbour(expr, ctx)
    return bound(expr, ctx)


def _names_thing(path: r.Path) -> bool:
    return face_of(path.parts[-1]) is None and axis_of(path.parts[-1]) is None


def position_def(clause: r.Position, free: Sequence[Axis], ctx: Context) -> PositionDef | None:
    """A position bound. `free`: the axes along which the thing is not set yet, for `centred` alone."""
    return _BY_KIND[clause.kind](clause, free, ctx)


def _at(clause: r.Position, free: Sequence[Axis], ctx: Context) -> PositionDef | None:
    assert clause.target is not None
    faces = [f for p in mentions(clause.target) if (f := _last_face(p)) is not None]
    if not faces:
        if bound(clause.target, ctx) is not None:
            ctx.say(problems.at_without_face(clause.span))
        return None
    return _placed(faces[0], bound(clause.target, ctx), clause.span)


def _last_face(path: r.Path) -> Face | None:
    return room_face(path.parts[-1]) if path.parts[0] == "room" else face_of(path.parts[-1])


def _face_at(clause: r.Position, free: Sequence[Axis], ctx: Context) -> PositionDef | None:
    assert clause.face is not None and clause.target is not None
    face = face_of(clause.face.text)
    return _placed(face, bound(clause.target, ctx), clause.span) if face is not None else None


def _on(clause: r.Position, free: Sequence[Axis], ctx: Context) -> PositionDef | None:
    """Its bottom at a thing's top; in the room, at the floor."""
    path: r.Path = clause.target  # type: ignore[assignment]
    if path.parts in (("room",), ("room", "floor")):
        return _against_path(r.Path(("room", "floor"), path.span), Face(Axis.HIGH, -1), clause, ctx)
    return _against_path(r.Path((*path.parts, "top"), path.span), Face(Axis.HIGH, -1), clause, ctx, path)


def _under(clause: r.Position, free: Sequence[Axis], ctx: Context) -> PositionDef | None:
    path: r.Path = clause.target  # type: ignore[assignment]
    return _against_path(r.Path((*path.parts, "bottom"), path.span), Face(Axis.HIGH, 1), clause, ctx, path)


def _against(clause: r.Position, free: Sequence[Axis], ctx: Context) -> PositionDef | None:
    """Its own opposite face at that face. The walls around it look inwards: there it is its own of that name."""
    path: r.Path = clause.target  # type: ignore[assignment]
    face = _last_face(path)
    if face is None:
        if single(path, ctx) is not None:
            ctx.say(problems.face_wanted(path))
        return None
    inwards = path.parts[0] == "room" or len(path.parts) == 1
    return _against_path(path, face if inwards else face.opposite, clause, ctx)


def _against_path(
    path: r.Path, face: Face, clause: r.Position, ctx: Context, written: r.Path | None = None
) -> PositionDef | None:
    if written is not None and not _names_thing(written):
        ctx.say(problems.thing_wanted(written))
        return None
    return _placed(face, bound(path, ctx), clause.span)


def _placed(face: Face, target: BoundExpr | None, span: Span) -> PositionDef | None:
    return None if target is None else PositionDef(face, face.axis, target, span)


def _centred(clause: r.Position, free: Sequence[Axis], ctx: Context) -> PositionDef | None:
    axis = axis_of(clause.face.text) if clause.face is not None else None
    if axis is None and clause.target is not None:
        axis = next((f.axis for p in mentions(clause.target) if (f := _last_face(p)) is not None), None)
    if axis is None and len(free) == 1:
        axis = free[0]
    if axis is None:
        ctx.say(problems.which_axis(clause.span, "centred", [a.word for a in free]))
        return None
    target = middle(clause.target, ctx) if clause.target is not None else None
    return None if target is None and clause.target is not None else PositionDef(None, axis, target, clause.span)


_BY_KIND = {"at": _at, "face_at": _face_at, "on": _on, "under": _under, "against": _against, "centred": _centred}


def positions_bound(
    clauses: Iterable[r.Position], spans: Sequence[SpanDef], among: Sequence[Axis], repeat: Axis | None, ctx: Context
) -> tuple[PositionDef, ...]:
    """All positions of a thing. `among`: the axes that stay open while no span or position sets them."""
    listed = list(clauses)
    plain = [p for c in listed if c.kind != "centred" and (p := position_def(c, (), ctx)) is not None]
    named = [axis_of(c.face.text) for c in listed if c.kind == "centred" and c.face is not None]
    fixed = {s.axis for s in spans if s.kind in FIXING} | {p.axis for p in plain} | {repeat, *named}
    free = [a for a in among if a not in fixed]
    centred = [p for c in listed if c.kind == "centred" and (p := position_def(c, free, ctx)) is not None]
    return tuple(sorted([*plain, *centred], key=lambda p: p.span.start))


def check_agreement(
    spans: Sequence[SpanDef], positions: Sequence[PositionDef], repeat: RepeatDef | None, ctx: Context
) -> None:
    """At most one position along an axis, and none where a span says it."""
    for axis in Axis:
        setting = [s.span for s in spans if s.axis == axis and s.kind in FIXING]
        setting += [p.span for p in positions if p.axis == axis]
        setting += [repeat.span] if repeat is not None and repeat.axis == axis else []
        if len(setting) > 1:
            ctx.say(problems.position_twice(axis, setting[0], setting[1]))


def repeat_def(clause: r.Repeat, axis: Axis | None, ctx: Context) -> RepeatDef | None:
    """`axis`: the one meant when none is written."""
    written = axis_of(clause.axis.text) if clause.axis is not None else axis
    if written is None:
        ctx.say(problems.which_axis(clause.span, "repeat", [a.word for a in Axis]))
        return None
    count = length(clause.count, ctx)
    between = None
    if clause.between is not None:
        ends = [neighbour(path, ctx) for path in clause.between]
        between = (ends[0], ends[1]) if None not in ends else None
    pitch = length(clause.pitch, ctx) if clause.pitch is not None else None
    start = bound(clause.start, ctx) if clause.start is not None else None
    if count is None or (between is None and (pitch is None or start is None)):
        return None
    return RepeatDef(count, written, between, pitch, start, clause.span)  # type: ignore[arg-type]


def middle_of_part(axis: Axis, span: Span) -> BoundExpr:
    """The middle of the part whose feature it is."""
    ends = tuple(FaceRef(("self",), Face(axis, sign), span) for sign in (-1, 1))
    return Op("/", (Op("+", ends, span), Lit(2, 0, None, "2", span)), span)  # type: ignore[arg-type]
