"""Setting and hanging: positions from the walls and the floor, levels, distances to check, hands, wall screws."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.drawing import Drawing
from setout.geometry import Axis, Box, face_named
from setout.inspect import CAUTION, CarriedUnit, Hung, Lifted
from setout.write.facts import Facts
from setout.write.facts.measures import heavy
from setout.write.facts.paths import spoken
from setout.write.facts.scenes import InScene
from setout.write.facts.sizes import Length, bought, length, rounded_up
from setout.write.installing.fixing import Fixing, fixings
from setout.write.installing.units import bracketed, neighbours, place, shown, studs

MOST_LEVELS = 12
LEFT, RIGHT, UNDER, OVER, BACK = map(face_named, ("left", "right", "bottom", "top", "back"))


@dataclass(frozen=True)
class Unit:
    """`number` as on the drawings. Edges: from the left wall, from the floor, and how far off the back wall. `walls`
    what it is fixed to; `others` the numbers of what it is joined to or rests on. `people` to lift it (None: its weight
    isn't known). `way`: how it comes in, "upright", "stood-up", "tilted", "no" or "" where nothing is said of it."""

    number: int
    name: str
    title: str
    left: Length
    right: Length
    under: Length
    over: Length
    off_back: Length
    walls: tuple[str, ...]
    on_floor: bool
    others: tuple[int, ...]
    fixings: tuple[Fixing, ...]
    weight: str
    people: int | None
    way: str

    @property
    def waits(self) -> bool:
        return any(one.waits for one in (self.left, self.right, self.under, self.over, self.off_back))


@dataclass(frozen=True)
class Level:
    """A level line on the wall: `names` have their lower (`edge` "under") or upper edge there."""

    height: Length
    edge: str
    names: tuple[str, ...]


@dataclass(frozen=True)
class Distance:
    """Clear between two neighbours; `along` "wide" or "high"."""

    first: str
    second: str
    along: str
    clear: Length


@dataclass(frozen=True)
class Estimate:
    """What hangs by screws alone, and what is counted with it because these screws carry it too, `twice` if it has
    screws of its own; every amount a weight as text, "" where it isn't known. `used` a share in percent."""

    names: tuple[str, ...]
    carried: tuple[str, ...]
    twice: bool
    screws: int
    gauge: int
    length: Length
    weight: str
    contents: str
    down: str
    down_allowed: str
    out: str
    out_allowed: str
    used: str
    too_much: bool


@dataclass(frozen=True)
class Installing:
    """`cropped`: the plan leaves out the front of the room. `bracketed`: the views with edges that may still move."""

    room: str
    room_sizes: tuple[Length, ...]
    studs: tuple[Length, ...]
    elevation: Drawing | None
    plan: Drawing | None
    units: tuple[Unit, ...]
    unknown: tuple[str, ...]
    limit: str
    levels: tuple[Level, ...]
    distances: tuple[Distance, ...]
    estimates: tuple[Estimate, ...]
    caution: str
    comes_in: bool
    filled: bool
    cropped: bool
    bracketed: tuple[str, ...]
    keep_clear: bool
    obstacles: bool


def build(facts: Facts, drawings: Mapping[str, Drawing]) -> Installing | None:
    """`drawings` "front" and "top". None for a job that is one thing, and is told of no room."""
    found, placed = facts.plan.inspected, facts.carried
    if found is None or not placed or (facts.scene.room is None and len(placed) < 2 and not _fixed(facts, placed)):
        return None
    room = facts.project.room
    lifts = {one.path: one for one in found.lifts if one.kind != "sheet"}
    beside, number = neighbours(facts), {unit.path: n for n, unit in enumerate(placed, 1)}
    listed = tuple(
        _unit(facts, unit, lifts.get(unit.path), number, beside.get(unit.path, frozenset())) for unit in placed
    )
    return Installing(
        room="" if room is None else room.title,
        room_sizes=() if room is None else tuple(length(room.sizes[axis], facts.style) for axis in Axis),
        studs=tuple(length(stud, facts.style) for stud in studs(facts)),
        elevation=drawings.get("front"),
        plan=drawings.get("top"),
        units=listed,
        unknown=tuple(unit.name for unit in listed if unit.people is None),
        limit=heavy(facts.project.practice.value("lift_alone"), facts.style),
        levels=_levels(facts, placed),
        distances=_distances(facts, placed),
        estimates=tuple(_estimate(facts, hung, found.hung) for hung in found.hung),
        caution=CAUTION,
        comes_in=any(unit.way for unit in listed),
        filled=bool(facts.scene.banks or facts.scene.doors or facts.scene.shelves),
        keep_clear=room is not None and any(one.kind != "obstacle" for one in room.boxes),
        obstacles=room is not None and any(one.kind == "obstacle" for one in room.boxes),
        bracketed=bracketed(facts),
        cropped=facts.scene.room is not None and shown(facts, "top") != facts.scene.room,
    )


def _fixed(facts: Facts, placed: tuple[CarriedUnit, ...]) -> bool:
    return any(unit.path in facts.room_contacts_of for unit in placed)


def _unit(
    facts: Facts, unit: CarriedUnit, lift: Lifted | None, number: Mapping[str, int], beside: Iterable[str]
) -> Unit:
    box, style, room = unit.outline, facts.style, facts.in_scenes[-1].datum
    instance = facts.scene.instances.get(unit.path)
    walls = tuple(dict.fromkeys(c.face_a.word for c in facts.room_contacts_of.get(unit.path, ())))
    return Unit(
        number=number[unit.path],
        name=facts.mark_of[unit.path] + " " + spoken(unit.path) if instance is None else spoken(unit.path),
        title="" if instance is None else instance.title,
        left=place(facts, unit.path, LEFT),
        right=place(facts, unit.path, RIGHT),
        under=place(facts, unit.path, UNDER),
        over=place(facts, unit.path, OVER),
        off_back=place(facts, unit.path, BACK, 1),
        walls=tuple(wall for wall in walls if wall != "bottom"),
        on_floor=box.lo[1] <= room.lo[1],
        others=tuple(sorted(number[other] for other in beside if other in number)),
        fixings=fixings(facts, unit.path),
        weight="" if lift is None or lift.weight is None else heavy(lift.weight, style),
        people=None if lift is None else lift.people,
        way=_way(unit),
    )


def _way(unit: CarriedUnit) -> str:
    way = unit.carried
    if way is None:
        return ""
    if not way.possible:
        return "no"
    if way.upright:
        return "upright"
    return "tilted" if all(one.tilted for one in way.ways) else "stood-up"


def _levels(facts: Facts, placed: tuple[CarriedUnit, ...]) -> tuple[Level, ...]:
    """Lines to strike on the wall: the undersides of what is fixed to it off the floor, the tops of what stands."""
    room = facts.in_scenes[-1].datum
    found: dict[tuple[Fraction, str, bool], list[str]] = {}
    lengths: dict[tuple[Fraction, str, bool], Length] = {}
    for unit in placed:
        stands = unit.outline.lo[1] <= room.lo[1]
        on_wall = any(c.face_a.axis != Axis.HIGH for c in facts.room_contacts_of.get(unit.path, ()))
        if unit.path in facts.scene.instances if stands else on_wall:
            face = OVER if stands else UNDER
            height = place(facts, unit.path, face)
            key = unit.outline.face(face), "over" if stands else "under", height.waits
            found.setdefault(key, []).append(spoken(unit.path))
            lengths[key] = height
    return tuple(Level(lengths[key], key[1], tuple(found[key])) for key in sorted(found)[:MOST_LEVELS])


def _distances(facts: Facts, placed: tuple[CarriedUnit, ...]) -> tuple[Distance, ...]:
    """From each thing to the next one at its right and to the next above, where there is air between."""
    found = []
    for axis in (Axis.WIDE, Axis.HIGH):
        for one in placed:
            beyond = [other for other in placed if _faces(one.outline, other.outline, axis)]
            if not beyond:
                continue
            near = min(beyond, key=lambda other: other.outline.lo[axis])
            if near.outline.lo[axis] > one.outline.hi[axis]:
                clear = facts.varying(_between(one.path, near.path, axis))
                found.append(Distance(spoken(one.path), spoken(near.path), axis.word, clear))
    return tuple(found)


def _between(one: str, beyond: str, axis: Axis) -> Callable[[InScene], Fraction]:
    return lambda scene: scene.outlines[beyond].lo[axis] - scene.outlines[one].hi[axis]


def _faces(one: Box, other: Box, axis: Axis) -> bool:
    """Whether `other` lies beyond `one` along the axis, and the two overlap both ways across it."""
    across = [a for a in Axis if a != axis]
    return other.lo[axis] >= one.hi[axis] and all(one.lo[a] < other.hi[a] and other.lo[a] < one.hi[a] for a in across)


def _estimate(facts: Facts, hung: Hung, all_hung: tuple[Hung, ...]) -> Estimate:
    style, found = facts.style, hung.estimate
    said = ("",) * 4
    if found is not None:
        said = tuple(heavy(v, style) for v in (found.down, found.down_allowed, found.out, found.out_allowed))
    used = None if found is None else found.used
    screwed = {unit for one in all_hung for unit in one.units}
    return Estimate(
        tuple(spoken(unit) for unit in hung.units),
        tuple(spoken(unit) for unit in hung.carried),
        not screwed.isdisjoint(hung.carried),
        hung.screws,
        hung.gauge,
        bought(hung.length, style),
        "" if hung.weight is None else heavy(hung.weight, style),
        heavy(hung.contents, style),
        *said,
        used="" if used is None else f"{rounded_up(Fraction(used) * 100)} %",
        too_much=found is not None and (used is None or used > 1),
    )
