"""What stands or hangs in the room, one by one."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from setout.drawing import Drawing, InRoom, Standing, in_room
from setout.geometry import ALL_FACES, Axis, Box, Face
from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import Length

AIR = Fraction(18)  # inches of empty floor drawn before the job
HIGH = {"front": 285.0, "top": 235.0}  # points; both on one page


def studs(facts: Facts) -> tuple[Fraction, ...]:
    """Middles of the studs, from the left wall, in a room that says where they are."""
    room = facts.project.room
    if room is None or room.studs is None:
        return ()
    every, first = room.studs
    count = int((room.sizes[Axis.WIDE] - first) // every) + 1
    return tuple(first + every * n for n in range(max(count, 0)))


def room_views(facts: Facts) -> dict[str, Drawing]:
    """The back wall and the plan; none without a room."""
    room = facts.project.room
    things = [Standing(str(n), u.outline, _moves(facts, u.path)) for n, u in enumerate(facts.carried, 1)]
    if room is None or facts.scene.room is None or not things:
        return {}
    parts = [InRoom(_name(one.kind, one.title), one.box, one.kind == "obstacle") for one in room.boxes]
    sides = ("front", "top")
    return {
        side: in_room(things, parts, shown(facts, side), studs(facts), side, facts.width, HIGH[side], facts.style)
        for side in sides
    }


def shown(facts: Facts, side: str) -> Box:
    """The room as far as it is drawn: of a deep one the plan leaves out the empty part in front of the job."""
    room = facts.scene.room
    assert room is not None and facts.project.room is not None
    boxes = [unit.outline for unit in facts.carried] + [one.box for one in facts.project.room.boxes]
    front = min((box.lo[Axis.DEEP] for box in boxes), default=room.lo[Axis.DEEP]) - AIR
    if side != "top" or front <= room.lo[Axis.DEEP]:
        return room
    return room.with_span(Axis.DEEP, front, room.hi[Axis.DEEP])


def neighbours(facts: Facts) -> Mapping[str, frozenset[str]]:
    """By unit, those that it is joined to or rests on, or that rest on it."""
    rests = ((upper, lower) for rest in facts.scene.rests for upper in rest.upper for lower in rest.lower)
    joined = ((c.a, c.b) for c in facts.joined.contacts if c.b is not None)
    found: dict[str, set[str]] = {}
    for a, b in (*joined, *rests):
        one, other = facts.unit_of[a], facts.unit_of[b]
        if one != other:
            found.setdefault(one, set()).add(other)
            found.setdefault(other, set()).add(one)
    return {unit: frozenset(others) for unit, others in found.items()}


def place(facts: Facts, unit: str, face: Face, sign: int = -1) -> Length:
    """How far a unit's face is from the low end, or with `sign` 1 from the high end, of what positions count from."""
    end = Face(face.axis, sign)
    return facts.varying(lambda scene: sign * (scene.datum.face(end) - scene.outlines[unit].face(face)))


def bracketed(facts: Facts) -> tuple[str, ...]:
    """Views in which an edge may still move."""
    axes = {face.axis for unit in facts.carried for face in _moves(facts, unit.path)}
    return tuple(side for side, up in (("front", Axis.HIGH), ("top", Axis.DEEP)) if axes & {Axis.WIDE, up})


def _moves(facts: Facts, unit: str) -> frozenset[Face]:
    """Faces that stand elsewhere in another scene."""
    outlines = [scene.outlines[unit] for scene in facts.in_scenes]
    return frozenset(face for face in ALL_FACES if len({outline.face(face) for outline in outlines}) > 1)


def _name(kind: str, title: str) -> str:
    return f"{kind}: {spoken(title)}" if title else kind
