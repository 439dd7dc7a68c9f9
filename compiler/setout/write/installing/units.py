"""What stands or hangs in the room, one by one."""

from __future__ import annotations

from fractions import Fraction

from setout.drawing import Drawing, InRoom, Standing, in_room
from setout.geometry import Axis, Box
from setout.inspect.model import CarriedUnit
from setout.join.model import Contact
from setout.write.facts import Facts
from setout.write.facts.paths import spoken

AIR = Fraction(18)  # inches of empty floor drawn before the job
HIGH = {"front": 285.0, "top": 235.0}  # points; both on one page


def units(facts: Facts) -> tuple[CarriedUnit, ...]:
    """Assemblies placed in the job with the boards that go between them, else boards fixed to the room; in the order of
    the build."""
    found = facts.plan.inspected
    if found is None:
        return ()
    assemblies = any(facts.scene.instances)
    turn = _turns(facts)
    wanted = [unit for unit in found.carried if assemblies or _to_room(facts, unit.path)]
    return tuple(sorted(wanted, key=lambda unit: turn.get(unit.path, len(turn))))


def to_room(facts: Facts, unit: str) -> tuple[Contact, ...]:
    """Its contacts with walls and floor."""
    return tuple(c for c in facts.joined.contacts if c.b is None and outermost(facts, c.a) == unit)


def outermost(facts: Facts, board: str) -> str:
    """The outermost assembly a board belongs to, or the board itself."""
    owner = facts.scene.boards[board].owner
    if not owner:
        return board
    while outer := facts.scene.instances[owner].parent:
        owner = outer
    return owner


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
    things = [Standing(str(n), unit.outline) for n, unit in enumerate(units(facts), 1)]
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
    boxes = [unit.outline for unit in units(facts)] + [one.box for one in facts.project.room.boxes]
    front = min((box.lo[Axis.DEEP] for box in boxes), default=room.lo[Axis.DEEP]) - AIR
    if side != "top" or front <= room.lo[Axis.DEEP]:
        return room
    return room.with_span(Axis.DEEP, front, room.hi[Axis.DEEP])


def waits(facts: Facts, unit: str) -> bool:
    """Whether any of its boards stands elsewhere in another scene."""
    scenes = [scene.scene for scene in facts.plan.pieces.joined.scenes]
    own = [path for path in facts.scene.boards if outermost(facts, path) == unit]
    return any(len({(s.boards[path].box.lo, s.boards[path].box.hi) for s in scenes}) > 1 for path in own)


def datum(facts: Facts) -> Box | None:
    """What positions are measured from: the room, else the job's own outline."""
    return facts.scene.room or facts.outline


def _name(kind: str, title: str) -> str:
    return f"{kind}: {spoken(title)}" if title else kind


def _turns(facts: Facts) -> dict[str, int]:
    """When each is set or hung."""
    steps = [step.id.target for step in facts.plan.order.steps if step.id.verb in ("set", "hang")]
    return {target: n for n, target in enumerate(steps)}


def _to_room(facts: Facts, board: str) -> bool:
    return any(c.b is None for c in facts.joined.contacts if c.a == board)
