"""Joints, what merely rests on something, and hardware."""

from __future__ import annotations

from itertools import islice, product

from setout.geometry import Axis, Face
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.clauses import length
from setout.resolve.context import Context
from setout.resolve.model import BoundExpr, FitDef, JointDef, MethodDef, RestsDef, ThingPath
from setout.resolve.paths import axis_of, face_of, is_loose, room_face, single, thing_at
from setout.source import Span

_AT_ODDS = (("pockets", "screws"), ("dado", "rabbet"), ("dado", "groove"), ("rabbet", "groove"))
"""Two methods that can't hold one contact: both drive screws through it, or both house it."""

_MOST_PAIRS = 2000

Named = tuple[ThingPath, Span]


def joint_def(joint: r.JointStatement, when: tuple[BoundExpr, ...], ctx: Context) -> JointDef:
    """A joint bound."""
    entering = _side(joint.entering, ctx, walls=False)
    receiving = _side(joint.receiving, ctx, walls=True)
    _check_sides(entering, receiving, ctx)
    both = [path for path, _ in (*entering, *receiving)]
    written = [m for m in joint.methods if m.kind != "only"]
    methods = tuple(m for method in written if (m := _method(method, both, ctx)) is not None)
    if not written:
        ctx.say(problems.methods_wanted(joint))
    _check_methods(written, ctx)
    return JointDef(entering, receiving, methods, _only(joint, ctx), when, joint.span)


def accepted(joint: JointDef) -> list[RestsDef]:
    """A joint with a mistake: its contacts are taken as they are, so that nobody is told that they are not joined."""
    pairs = islice(product(joint.entering, joint.receiving), _MOST_PAIRS)
    return [RestsDef(a, b, joint.when, joint.span) for (a, _), (b, _) in pairs if a != b]


def rests_def(rests: r.RestsStatement, when: tuple[BoundExpr, ...], ctx: Context) -> RestsDef | None:
    upper, lower = _contact(rests.upper, ctx, walls=False), _contact(rests.lower, ctx, walls=True)
    if upper is None or lower is None:
        return None
    if upper == lower:
        ctx.say(problems.joined_to_itself(upper, rests.upper.span, rests.lower.span))
    return RestsDef(upper, lower, when, rests.span)


def fit_def(fit: r.FitStatement, when: tuple[BoundExpr, ...], ctx: Context) -> FitDef | None:
    """Hardware bound to one face of one board."""
    hardware = hardware_named(fit.hardware, ctx)
    count = length(fit.count, ctx)
    held = _held_face(fit, ctx)
    along = axis_of(fit.along.text) if fit.along is not None else None
    if held is not None and along is not None and along == held[1].axis:
        ctx.say(problems.row_out_of_face(fit.along, held[1], [a for a in Axis if a != along]))  # type: ignore[arg-type]
    if fit.inset is not None and fit.layout not in ("corners", "row"):
        ctx.say(problems.inset_of_nothing(fit.inset.span))
    inset = _length(fit.inset, ctx)
    if hardware is None or count is None or held is None:
        return None
    return FitDef(hardware, count, held[0], held[1], fit.layout, along, inset, when, fit.span)


def _side(paths: tuple[r.Path, ...], ctx: Context, walls: bool) -> tuple[Named, ...]:
    return tuple((thing, path.span) for path in paths if (thing := _contact(path, ctx, walls)) is not None)


def _contact(path: r.Path, ctx: Context, walls: bool) -> ThingPath | None:
    """What can be joined: a part, several alike, a placed assembly, or (`walls`) a wall of the room."""
    if path.parts[0] == "room":
        return _wall(path, ctx, walls)
    if len(path.parts) > 1 and face_of(path.parts[-1]) is not None:
        thing = thing_at(path, ctx, path.parts[:-1])
        if thing is not None:
            ctx.say(problems.face_in_joint(path))
        return thing.path if thing is not None and thing.named is not None else None
    thing = thing_at(path, ctx)
    if thing is None or thing.named is None:
        return None
    if is_loose(thing.named):
        ctx.say(problems.loose_referred(path, path.text))
    elif thing.kind == "opening":
        ctx.say(problems.no_board(path, thing.kind))
    else:
        return thing.path
    return None


def _wall(path: r.Path, ctx: Context, walls: bool) -> ThingPath | None:
    face = room_face(path.parts[1]) if len(path.parts) == 2 else None
    if face is None:
        ctx.say(problems.room_word(path))
    elif not walls:
        ctx.say(problems.wall_enters(path))
    elif not ctx.world.has_room:
        ctx.say(problems.no_room(path))
    else:
        return ("room", face.word)
    return None


def _check_sides(entering: tuple[Named, ...], receiving: tuple[Named, ...], ctx: Context) -> None:
    seen: dict[ThingPath, Span] = {}
    for path, span in (*entering, *receiving):
        if path in seen:
            ctx.say(problems.joined_to_itself(path, seen[path], span))
        seen.setdefault(path, span)


def _method(method: r.Method, both: list[ThingPath], ctx: Context) -> MethodDef | None:
    through = thing_at(method.through, ctx) if method.through is not None else None
    if through is not None and not any(_reaches(through.path, path) for path in both):
        ctx.say(problems.through_stranger(method.through, [".".join(p) for p in both if p[0] != "room"]))  # type: ignore[arg-type]
    stopped = []
    for name, expr in method.stopped:
        face, distance = face_of(name.text), length(expr, ctx)
        if face is not None and distance is not None:
            stopped.append((face, distance))
    return MethodDef(
        kind=method.kind,
        face=face_of(method.face.text) if method.face is not None else None,
        through=through.path if through is not None else None,
        studs=method.into is not None,
        every=_length(method.every, ctx),
        depth=_length(method.depth, ctx),
        gap=_length(method.gap, ctx),
        stopped=tuple(stopped),
        span=method.span,
    )


def _length(expr: r.Expr | None, ctx: Context) -> BoundExpr | None:
    return length(expr, ctx) if expr is not None else None


def _reaches(a: ThingPath, b: ThingPath) -> bool:
    """Whether one is the other, or within it."""
    n = min(len(a), len(b))
    return a[:n] == b[:n]


def _check_methods(methods: list[r.Method], ctx: Context) -> None:
    seen: dict[str, r.Method] = {}
    for method in methods:
        if method.kind in seen:
            ctx.say(problems.said_twice(method.kind, method.span, seen[method.kind].span))
        seen.setdefault(method.kind, method)
    for a, b in _AT_ODDS:
        if a in seen and b in seen:
            first, second = sorted((seen[a], seen[b]), key=lambda m: m.span.start)
            ctx.say(problems.methods_at_odds(first, second))


def _only(joint: r.JointStatement, ctx: Context) -> str | None:
    only = [m for m in joint.methods if m.kind == "only"]
    if len(only) > 1:
        ctx.say(problems.said_twice("only", only[1].span, only[0].span))
    return only[0].word.text if only and only[0].word is not None else None


def hardware_named(path: r.Path, ctx: Context) -> str | None:
    named = ctx.scope.definition(path.text)
    if named is not None and named.kind == "hardware":
        if named.name in ctx.world.broken_hardware:
            ctx.spoil()
        return named.name
    other = ctx.scope.own(path.parts[0]) or named
    if ctx.scope.is_spoiled(path.parts[0]):
        ctx.spoil()
    else:
        ctx.say_unknown(problems.unknown_hardware(path, other.kind if other is not None else "", ctx.named("hardware")))
    return None


def _held_face(fit: r.FitStatement, ctx: Context) -> tuple[ThingPath, Face] | None:
    path: r.Path = fit.where.target  # type: ignore[assignment]
    face = face_of(path.parts[-1]) if len(path.parts) > 1 else None
    thing = single(path, ctx, path.parts[:-1] if face is not None else path.parts)
    if thing is None:
        return None
    if thing.kind != "part" or thing.named is None or is_loose(thing.named):
        ctx.say(problems.no_board(path, "loose part" if thing.kind == "part" else thing.kind))
        return None
    if face is None:
        face = Face(Axis.HIGH, -1 if fit.where.kind == "under" else 1)
    return thing.path, face
