"""Where a thing is set or hung: how high, how far along, beside what stands already."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Box
from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import Length, length
from setout.write.installing import datum, waits


@dataclass(frozen=True)
class Beside:
    """What stands already at the "left" or "right", and how far off; None where they touch."""

    side: str
    name: str
    clear: Length | None


@dataclass(frozen=True)
class Standing:
    """Its lower edge above the floor (None: on it), its left side from the left wall and its back from the back wall
    (None: at it). Not `in_room`: from the job's own lowest, left and back ends. `waits`: hangs on a measure."""

    under: Length | None
    left: Length | None
    off_back: Length | None
    in_room: bool
    beside: tuple[Beside, ...]
    waits: bool


def standings(facts: Facts) -> Mapping[int, Standing]:
    """For all that is set and hung one by one, unless it is one thing alone in no room; by the step's number."""
    boxes = {unit.path: unit.outline for unit in facts.carried}
    room = datum(facts)
    made: dict[int, Standing] = {}
    if room is None or (len(boxes) < 2 and facts.scene.room is None):
        return {}
    placed: dict[str, Box] = {}
    for step in facts.plan.order.steps:
        path = step.id.target
        if step.id.verb in ("set", "hang") and path in boxes and not step.things:
            made[step.number] = _standing(facts, room, path, boxes[path], placed)
            placed[path] = boxes[path]
    return made


def _standing(facts: Facts, room: Box, path: str, box: Box, placed: Mapping[str, Box]) -> Standing:
    return Standing(
        under=_off(facts, box.lo[Axis.HIGH] - room.lo[Axis.HIGH]),
        left=_off(facts, box.lo[Axis.WIDE] - room.lo[Axis.WIDE]),
        off_back=_off(facts, room.hi[Axis.DEEP] - box.hi[Axis.DEEP]),
        in_room=facts.scene.room is not None,
        beside=_beside(facts, box, placed),
        waits=waits(facts, path),
    )


def _off(facts: Facts, by: Fraction) -> Length | None:
    return None if by == 0 else length(by, facts.style)


def _beside(facts: Facts, box: Box, placed: Mapping[str, Box]) -> tuple[Beside, ...]:
    """The nearest at the left, else at the right, of those that stand before it and reach as high and as deep."""
    for side, gap in (("left", _gap_left), ("right", _gap_right)):
        gaps = [(gap(box, other), name) for name, other in placed.items() if _abreast(box, other)]
        clear, name = min((one for one in gaps if one[0] >= 0), default=(None, ""))
        if clear is not None:
            return (Beside(side, spoken(name), _off(facts, clear)),)
    return ()


def _gap_left(box: Box, other: Box) -> Fraction:
    return box.lo[Axis.WIDE] - other.hi[Axis.WIDE]


def _gap_right(box: Box, other: Box) -> Fraction:
    return other.lo[Axis.WIDE] - box.hi[Axis.WIDE]


def _abreast(box: Box, other: Box) -> bool:
    return all(box.lo[axis] < other.hi[axis] and other.lo[axis] < box.hi[axis] for axis in (Axis.HIGH, Axis.DEEP))
