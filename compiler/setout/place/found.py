"""Paths followed from where they are written to the things they name, and those things' faces seen from there."""

from __future__ import annotations

from dataclasses import dataclass

from setout.geometry import Axis, Face
from setout.place import amounts, problems
from setout.place.engine import Key, Poisoned, Work, need
from setout.place.shapes import repeat_axis, repeated
from setout.place.site import Scope, Site
from setout.resolve.model import ThingPath
from setout.source import Span
from setout.values import Value


@dataclass(frozen=True)
class Found:
    """A thing a path names. `scope` holds it; `inner` are the assemblies gone through to get there, outermost first.

    `name` is "" for the assembly `scope` itself and "room" for the room. `member` is 0 where nothing is repeated.
    """

    scope: Scope
    name: str
    member: int
    inner: tuple[Scope, ...]

    @property
    def path(self) -> str:
        if self.name == "room":
            return "room"
        return self.scope.path_of(self.name, self.member) if self.name else self.scope.path

    def path_from(self, scope: Scope) -> str:
        """The path as one would write it in `scope`."""
        return self.path.removeprefix(f"{scope.path}.") or scope.definition

    @property
    def thing(self) -> object:
        return self.scope.things.get(self.name)


def find_one(site: Site, scope: Scope, path: ThingPath, span: Span) -> Work:
    """The one thing of that name, as Found. Several, or one left out, is reported."""
    things = yield from _follow(site, scope, path, span, False)
    if not things:
        raise Poisoned
    return things[0]


def find_all(site: Site, scope: Scope, path: ThingPath, span: Span) -> Work:
    """All things of that name, as a tuple of Found: every member of a repeat, none for what its `when` leaves out."""
    return (yield from _follow(site, scope, path, span, True))


def face_of(site: Site, found: Found, face: Face, span: Span) -> Work:
    """Where the thing's face is, as a Value. Coordinates and `face` are those of the scope it was found from."""
    if found.name == "room":
        return _room_face(site, face)
    for inner in found.inner:
        face = inner.turn.inner(face)
    value = amounts.trimmed((yield from _own_end(site, found, face.axis, face.sign, span)))
    for inner in reversed(found.inner):
        value, face = yield from _outwards(inner, value, face, span)
    return value


def size_of(site: Site, found: Found, axis: Axis, span: Span) -> Work:
    """How long the thing is along an axis of the scope it was found from, as a Value."""
    if found.name == "room":
        return (yield from assembly_size(site, site.job, axis, span))
    for inner in found.inner:
        axis = inner.turn.inner_axis(axis)
    return amounts.trimmed((yield from _own_end(site, found, axis, 0, span)))


def assembly_size(site: Site, scope: Scope, axis: Axis, span: Span) -> Work:
    """How big an assembly is along one of its own axes. A job without a size is reported where one is wanted."""
    if scope.parent is None and axis not in site.job_sizes:
        site.report(problems.no_size(axis, span))
        raise Poisoned
    return (yield from need("size", scope, axis, span=span))


def end(scope: Scope, name: str, member: int, axis: Axis, sign: int, span: Span) -> Work:
    """The thing's low end (-1), high end (1) or length (0) in its own assembly, as a Value."""
    return need(*end_key(scope, name, member, axis, sign), span=span)


def end_key(scope: Scope, name: str, member: int, axis: Axis, sign: int) -> Key:
    """The question for `end`: members of a repeat share all axes but the one they are spread along."""
    if member and repeat_axis(scope, name) != axis:
        member = 0
    return "end", scope, name, member, axis, sign


# --- following a path ---------------------------------------------------------------------------------


def _follow(site: Site, scope: Scope, path: ThingPath, span: Span, several: bool) -> Work:
    if not path:
        return (Found(scope, "", 0, ()),)
    if path[0] == "room":
        return (Found(site.job, "room", 0, ()),)
    heads: list[tuple[Scope, tuple[Scope, ...]]] = [(scope, ())]
    i = 0
    while True:
        name, number = path[i], path[i + 1] if i + 1 < len(path) and path[i + 1].isdecimal() else ""
        i += 2 if number else 1
        met = []
        for at, inner in heads:
            members = yield from _members(site, at, name, number, span, several)
            met += [Found(at, name, member, inner) for member in members]
        if i >= len(path):
            return tuple(met)
        heads = []
        for found in met:
            child = yield from need("scope", found.scope, found.name, found.member, span=span)
            heads.append((child, (*found.inner, child)))


def _members(site: Site, scope: Scope, name: str, number: str, span: Span, several: bool) -> Work:
    """The member numbers meant: (0,) for what is not repeated, () for what is left out and may be."""
    if name not in scope.things:
        raise Poisoned
    if not (yield from need("there", scope, name, span=span)):
        if several:
            return ()
        site.report(problems.left_out(scope.path_of(name), span, scope.things[name]))
        raise Poisoned
    many = (yield from need("count", scope, name, span=span)) if repeated(scope, name) else 0
    if number and not (len(number) < 9 and 1 <= int(number) <= many):
        site.report(problems.no_such_member(name, number, many, span, scope.things[name]))
        raise Poisoned
    if not number and many and several:
        return tuple(range(1, many + 1))
    if not number and repeated(scope, name):
        return ()
    return (int(number or 0),)


# --- from one assembly's coordinates to another's ---------------------------------------------------------


def _own_end(site: Site, found: Found, axis: Axis, sign: int, span: Span) -> Work:
    if found.name:
        return (yield from end(found.scope, found.name, found.member, axis, sign, span))
    if sign < 0:
        return amounts.zero(Face(axis, -1).word, span)
    return (yield from assembly_size(site, found.scope, axis, span))


def _outwards(inner: Scope, value: Value, face: Face, span: Span) -> Work:
    """A place on an axis of `inner`, and the face it belongs to, as the assembly around it sees them."""
    assert inner.parent is not None and inner.place is not None
    outer = inner.turn.outer(face)
    ahead = inner.turn.sign[face.axis] > 0
    begin = yield from end(inner.parent, inner.place.name, inner.member, outer.axis, -1 if ahead else 1, span)
    return (amounts.plus if ahead else amounts.minus)(begin, value, span), outer


def _room_face(site: Site, face: Face) -> Value:
    """A wall of the room, which only the job itself may measure from."""
    room = site.project.room
    if room is None:
        raise Poisoned
    if face.sign < 0:
        return amounts.zero(f"room.{face.word}", room.span)
    return amounts.rule(f"{face.axis.word} of the room", room.sizes[face.axis], room.span)
