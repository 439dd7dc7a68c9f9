"""Rules: assemblies opened where they are placed, how they are turned, and where they end up in the job."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import IDENTITY, Axis, Motion, Vec
from setout.place import problems
from setout.place.engine import Poisoned, Work, need
from setout.place.express import number
from setout.place.found import end
from setout.place.site import Scope, Site, Turn
from setout.resolve.model import PlaceDef

DEEPEST = 40
"""Assemblies within assemblies: more is a slip of the pen."""

_WIDE, _HIGH, _DEEP = Axis
_QUARTERS = {  # clockwise seen from above: the right side comes to the front, the back to the right
    0: Turn(),
    90: Turn((_DEEP, _HIGH, _WIDE), (-1, 1, 1)),
    180: Turn(sign=(-1, 1, -1)),
    270: Turn((_DEEP, _HIGH, _WIDE), (1, 1, -1)),
}


def scope(site: Site, parent: Scope, name: str, member: int) -> Work:
    """The Scope of a placed assembly."""
    place = parent.things.get(name)
    definition = site.assembly(place.assembly) if isinstance(place, PlaceDef) else None
    if definition is None or not isinstance(place, PlaceDef):
        raise Poisoned
    _watch_nesting(site, parent, place)
    turn = yield from _turn(site, parent, place)
    return Scope(
        path=parent.path_of(name, member),
        definition=definition.name,
        title=definition.title,
        body=definition.body,
        parameters=definition.parameters,
        parent=parent,
        place=place,
        member=member,
        turn=turn,
        depth=parent.depth + 1,
        span=place.span,
    )


def motion(site: Site, at: Scope) -> Work:
    """The Motion from an assembly's own coordinates to the job's."""
    if at.parent is None or at.place is None:
        return IDENTITY
    outer = yield from need("motion", at.parent, span=at.place.head)
    shift = [Fraction(0)] * 3
    for axis in Axis:
        to = at.turn.to[axis]
        value = yield from end(at.parent, at.place.name, at.member, to, -at.turn.sign[axis], at.place.head)
        shift[to] = value.amount
    return outer.after(Motion(at.turn.to, at.turn.sign, _vec(shift)))


def inside(at: Scope | None, around: Scope) -> bool:
    """Whether the assembly is `around` or stands somewhere in it."""
    while at is not None:
        if at is around:
            return True
        at = at.parent
    return False


# --- helpers ----------------------------------------------------------------------------------------------


def _vec(values: list[Fraction]) -> Vec:
    return values[0], values[1], values[2]


def _watch_nesting(site: Site, parent: Scope, place: PlaceDef) -> None:
    at: Scope | None = parent
    while at is not None:
        if at.parent is not None and at.definition == place.assembly:
            raise Poisoned  # it would hold itself, which was reported when names were bound
        at = at.parent
    if parent.depth >= DEEPEST:
        site.report(problems.nested_too_deep(DEEPEST, place))
        raise Poisoned


def _turn(site: Site, parent: Scope, place: PlaceDef) -> Work:
    quarter = _QUARTERS[0]
    if place.turned is not None:
        degrees = yield from number(site, parent, place.turned)
        found = _QUARTERS.get(int(degrees.amount % 360)) if degrees.amount.denominator == 1 else None
        if found is None or degrees.held:
            site.report(problems.not_a_quarter(degrees, place.turned.span))
            raise Poisoned
        quarter = found
    if not place.mirrored:
        return quarter
    wide, high, deep = quarter.sign  # it is reflected across its own wide before it is turned
    return Turn(quarter.to, (-wide, high, deep))
