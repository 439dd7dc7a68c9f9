"""Rules: joints and rests with their paths turned into boards, their faces into the job's."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Face, Motion, face_named
from setout.place.engine import Ask, Poisoned, Work, need
from setout.place.express import above_zero, condition, length
from setout.place.found import Found, find_all
from setout.place.model import Joint, Method, Rest, Side
from setout.place.scopes import inside
from setout.place.site import Scope, Site
from setout.resolve.model import BoundExpr, MethodDef, PartDef, PlaceDef, ThingPath
from setout.source import Span


def joint(site: Site, scope: Scope, index: int) -> Work:
    """The Joint, or () where a `when` leaves nothing to join."""
    written = scope.body.joints[index]
    if not (yield from _wanted(site, scope, written.when)):
        return ()
    entering = yield from _sides(site, scope, written.entering)
    receiving = yield from _sides(site, scope, written.receiving)
    to = yield from need("motion", scope, span=written.span)
    methods = []
    for i in range(len(written.methods)):
        methods.append((yield Ask(("method", scope, index, i), written.span)))  # all, so that every mistake is told
    if None in methods:
        raise Poisoned
    if not entering or not receiving:
        return ()
    ident = f"{scope.path}#{index + 1}"
    entering, receiving = _walls(entering, to), _walls(receiving, to)
    return Joint(ident, scope.path, entering, receiving, tuple(methods), written.only, written.span)


def method(site: Site, scope: Scope, joint: int, index: int) -> Work:
    """One Method of a joint."""
    written: MethodDef = scope.body.joints[joint].methods[index]
    to = yield from need("motion", scope, span=written.span)
    through: tuple[str, ...] = ()
    if written.through is not None:
        through = (yield from _side(site, scope, written.through, written.span)).boards
    stopped = []
    for face, distance in written.stopped:
        stopped.append((to.face(face), (yield from length(site, scope, distance)).amount))
    return Method(
        kind=written.kind,
        face=to.face(written.face) if written.face else None,
        through=frozenset(through),
        studs=written.studs,
        every=(yield from _maybe(site, scope, written.every, f"the spacing of {written.kind}")),
        depth=(yield from _maybe(site, scope, written.depth, f"the depth of a {written.kind}")),
        gap=(yield from length(site, scope, written.gap)).amount if written.gap is not None else None,
        stopped=tuple(stopped),
        span=written.span,
    )


def rest(site: Site, scope: Scope, index: int) -> Work:
    """The Rest, or () where a `when` leaves nothing that rests. A wall or floor is no board: `lower` is then empty."""
    written = scope.body.rests[index]
    if not (yield from _wanted(site, scope, written.when)):
        return ()
    upper = yield from _side(site, scope, written.upper, written.span)
    lower = yield from _side(site, scope, written.lower, written.span)
    if not upper.boards or not (lower.boards or lower.wall):
        return ()
    return Rest(upper.boards, lower.boards, written.span)


def named(site: Site, scope: Scope, path: ThingPath) -> Work:
    """The boards that a path stands for, and whether it names parts outright."""
    things: tuple[Found, ...] = yield from find_all(site, scope, path, scope.span)
    boards: list[str] = []
    single = True
    for found in things:
        if isinstance(found.thing, PartDef):
            boards += [found.path] if found.path in site.homes else []
        else:
            single = False
            around = found.scope
            if isinstance(found.thing, PlaceDef):
                around = yield from need("scope", found.scope, found.name, found.member, span=scope.span)
            boards += _within(site, around)
    return tuple(boards), single


# --- helpers ---------------------------------------------------------------------------------------------


def _wanted(site: Site, scope: Scope, when: tuple[BoundExpr, ...]) -> Work:
    for expr in when:
        if not (yield from condition(site, scope, expr)):
            return False
    return True


def _maybe(site: Site, scope: Scope, expr: BoundExpr | None, what: str) -> Work:
    if expr is None:
        return None
    value: object = (yield from above_zero(site, scope, expr, what)).amount
    assert isinstance(value, Fraction)
    return value


def _sides(site: Site, scope: Scope, paths: tuple[tuple[ThingPath, Span], ...]) -> Work:
    sides = []
    for path, span in paths:
        side = yield from _side(site, scope, path, span)
        if side.boards or side.wall is not None:
            sides.append(side)
    return tuple(sides)


def _side(site: Site, scope: Scope, path: ThingPath, span: Span) -> Work:
    text = ".".join(path)
    if path and path[0] == "room":
        return Side(text, (), face_named(path[-1]), True, span)
    boards, single = yield from need("named", scope, path, span=span)
    return Side(text, boards, None, single, span)


def _within(site: Site, around: Scope) -> tuple[str, ...]:
    """The paths of all boards in an assembly."""
    if "boards" not in around.cache:
        around.cache["boards"] = tuple(board for board, home in site.homes.items() if inside(home, around))
    return around.cache["boards"]


def _walls(sides: tuple[Side, ...], to: Motion) -> tuple[Side, ...]:
    """Walls named in the assembly's directions, as the job has them."""

    def turned(side: Side) -> Side:
        wall: Face | None = to.face(side.wall) if side.wall is not None else None
        return Side(side.text, side.boards, wall, side.single, side.span)

    return tuple(turned(side) for side in sides)
