"""What a dotted path means: it is followed through placed assemblies, name by name."""

from __future__ import annotations

from dataclasses import dataclass

from setout.geometry import AXIS_WORDS, FACE_WORDS, Axis, Face, face_named
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.context import Context
from setout.resolve.model import ThingPath
from setout.resolve.scopes import Named, Scope, World

ROOM_WORDS = {"floor": "bottom", "ceiling": "top"}
_MOST_MIRRORS = 50


@dataclass(frozen=True)
class Thing:
    """A part, place, opening or the room (kind "room") and its path. `many`: a repeat without a member's number."""

    path: ThingPath
    kind: str
    named: Named | None
    scope: str  # the assembly whose body holds it
    many: bool = False


ROOM = Thing(("room",), "room", None, "")


def face_of(word: str) -> Face | None:
    return face_named(word) if word in FACE_WORDS else None


def axis_of(word: str) -> Axis | None:
    return Axis(AXIS_WORDS.index(word)) if word in AXIS_WORDS else None


def room_face(word: str) -> Face | None:
    return face_of(ROOM_WORDS.get(word, word))


def thing_at(path: r.Path, ctx: Context, parts: tuple[str, ...] | None = None) -> Thing | None:
    """The thing a path (or its first `parts`) leads to. None once the reason has been reported."""
    parts = path.parts if parts is None else parts
    if parts == ("room",):
        return ROOM
    parts = _merged(parts, 0, ctx.scope)
    first = ctx.scope.things.get(parts[0])
    if first is None:
        _no_such_thing(path, parts[0], ctx)
        return None
    ctx.uses.append((ctx.scope.owner, parts[0]))
    return _follow(path, parts, ctx)


def single(path: r.Path, ctx: Context, parts: tuple[str, ...] | None = None) -> Thing | None:
    """The one thing a path leads to: several alike need a member's number."""
    thing = thing_at(path, ctx, parts)
    if thing is not None and thing.many:
        ctx.say(problems.member_wanted(path, ".".join(thing.path)))
        return None
    return thing


def repeated(named: Named, scope: Scope) -> bool:
    """Whether the name stands for several alike; a mirror is repeated as what it mirrors is."""
    for _ in range(_MOST_MIRRORS):
        statement = named.statement
        if getattr(statement, "repeat", None) is not None:
            return True
        mirrors = getattr(statement, "mirrors", None)
        after = scope.things.get(mirrors.text) if mirrors is not None else None
        if after is None:
            return False
        named = after
    return False


def is_number(word: str) -> bool:
    """Whether a step of a path is a member's number. Only the plain digits count: `²` has no worth as a number."""
    return word.isascii() and word.isdecimal()


def is_loose(named: Named) -> bool:
    return named.kind == "part" and bool(named.statement.loose_size)


def uses_along(path: ThingPath, owner: str, world: World) -> list[tuple[str, str]]:
    """The things a bound path leads through, each with the scope that holds it."""
    scope: Scope | None = world.scopes[owner]
    found = []
    for word in (w for w in path if not is_number(w)):
        named = scope.things.get(word) if scope is not None else None
        if scope is None or named is None:
            break
        found.append((scope.owner, word))
        scope = _inside(named, world)
    return found


def _follow(path: r.Path, parts: tuple[str, ...], ctx: Context) -> Thing | None:
    scope, i = ctx.scope, 0
    while True:
        named = scope.things[parts[i]]
        i += 1
        many = repeated(named, scope)
        if i < len(parts) and is_number(parts[i]):
            if not many or int(parts[i]) < 1:
                ctx.say(problems.no_such_member(path, ".".join(parts[:i]), parts[i], many))
                return None
            many, i = False, i + 1
        if i == len(parts):
            return Thing(parts, named.kind, named, scope.owner, many)
        if many:
            ctx.say(problems.member_wanted(path, ".".join(parts[:i])))
            return None
        inner = _inside(named, ctx.world)
        if inner is None:
            _nothing_inside(path, parts, i, named, scope, ctx)
            return None
        parts = _merged(parts, i, inner)
        if parts[i] not in inner.things:
            _not_inside(path, parts, i, inner, ctx)
            return None
        ctx.uses.append((inner.owner, parts[i]))
        scope = inner


def _merged(parts: tuple[str, ...], i: int, scope: Scope) -> tuple[str, ...]:
    """What fills an opening is one name in its scope, though it reads as a path: `bay.drawer.1`."""
    for end in (i + 3, i + 2):
        name = ".".join(parts[i:end])
        if end <= len(parts) and name in scope.things:
            return (*parts[:i], name, *parts[end:])
    return parts


def _inside(named: Named, world: World) -> Scope | None:
    return world.scopes.get(named.statement.assembly.text) if named.kind == "place" else None


def _nothing_inside(path: r.Path, parts: tuple[str, ...], i: int, named: Named, scope: Scope, ctx: Context) -> None:
    if named.kind == "place":
        ctx.spoil()  # its assembly is unknown: the place says so
    else:
        ctx.say(problems.nothing_inside(path, ".".join(parts[:i]), named.kind, parts[i]))


def _not_inside(path: r.Path, parts: tuple[str, ...], i: int, inner: Scope, ctx: Context) -> None:
    if parts[i] in inner.spoiled:
        ctx.spoil()
        return
    hidden = inner.own(parts[i])
    if hidden is not None:
        ctx.say(problems.not_reached_into(path, parts[i], hidden.kind, inner.owner))
    else:
        known = ctx.found.offered(lambda: inner.things)
        ctx.say_unknown(problems.unknown_inside(path, parts[i], ".".join(parts[:i]), inner.owner, known))


def _no_such_thing(path: r.Path, word: str, ctx: Context) -> None:
    """`word` heads a path to a thing, and no thing here is called so."""
    if ctx.scope.is_spoiled(word):
        ctx.spoil()
        return
    outside = ctx.world.top.things.get(word)
    named = ctx.scope.definition(word)
    if named is not None and named.kind == "assembly":
        placed = [n.name for n in ctx.scope.things.values() if n.kind == "place" and n.statement.assembly.text == word]
        ctx.say(problems.assembly_not_placed(path, word, placed))
    elif named is not None:
        ctx.say(problems.not_a_thing(path, word, named.kind))
    elif word in FACE_WORDS or word in AXIS_WORDS:
        ctx.say(problems.not_a_thing(path, word, "face" if word in FACE_WORDS else "axis"))
    elif outside is not None:
        ctx.say(problems.outside_assembly(path, word, ctx.scope.owner))
    else:
        ctx.say_unknown(problems.unknown_name(path, word, ctx.found.offered(ctx.scope.names)))
