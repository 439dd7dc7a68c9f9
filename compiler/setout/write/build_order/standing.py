"""Where a thing is set or hung: how high, how far along, beside what stands already."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Box, Face
from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import Length, over_scenes
from setout.write.installing import place


@dataclass(frozen=True)
class Beside:
    """What stands already at the "left" or "right", and how far off; None where they touch."""

    side: str
    name: str
    clear: Length | None


@dataclass(frozen=True)
class Standing:
    """Its lower edge above the floor (None: on it), its left side from the left wall and its back from the back wall
    (None: at it). Not `in_room`: from the job's own lowest, left and back ends."""

    under: Length | None
    left: Length | None
    off_back: Length | None
    in_room: bool
    beside: tuple[Beside, ...]


def standings(facts: Facts) -> Mapping[int, Standing]:
    """For all that is set and hung one by one, unless it is one thing alone in no room; by the step's number."""
    boxes = {unit.path: unit.outline for unit in facts.carried}
    made: dict[int, Standing] = {}
    if not boxes or (len(boxes) < 2 and facts.scene.room is None):
        return {}
    placed: dict[str, Box] = {}
    for step in facts.plan.order.steps:
        path = step.id.target
        if step.id.verb in ("set", "hang") and path in boxes and not step.things:
            made[step.number] = _standing(facts, path, placed)
            placed[path] = boxes[path]
    return made


def _standing(facts: Facts, path: str, placed: Mapping[str, Box]) -> Standing:
    return Standing(
        under=_unless_at(place(facts, path, Face(Axis.HIGH, -1))),
        left=_unless_at(place(facts, path, Face(Axis.WIDE, -1))),
        off_back=_unless_at(place(facts, path, Face(Axis.DEEP, 1), 1)),
        in_room=facts.scene.room is not None,
        beside=_beside(facts, path, placed),
    )


def _unless_at(by: Length) -> Length | None:
    """None at it, whatever a measure comes to."""
    return None if by.text == "0" and not (by.rounded or by.waits) else by


def _beside(facts: Facts, path: str, placed: Mapping[str, Box]) -> tuple[Beside, ...]:
    """The nearest at the left, else at the right, of those that stand before it and reach as high and as deep."""
    box = facts.in_scenes[-1].outlines[path]
    for side, gap in (("left", _gap_left), ("right", _gap_right)):
        gaps = [(gap(box, other), name) for name, other in placed.items() if _abreast(box, other)]
        clear, name = min((one for one in gaps if one[0] >= 0), default=(None, ""))
        if clear is not None:
            clears = (gap(scene.outlines[path], scene.outlines[name]) for scene in facts.in_scenes)
            return (Beside(side, spoken(name), _unless_at(over_scenes(clears, facts.style))),)
    return ()


def _gap_left(box: Box, other: Box) -> Fraction:
    return box.lo[Axis.WIDE] - other.hi[Axis.WIDE]


def _gap_right(box: Box, other: Box) -> Fraction:
    return other.lo[Axis.WIDE] - box.hi[Axis.WIDE]


def _abreast(box: Box, other: Box) -> bool:
    return all(box.lo[axis] < other.hi[axis] and other.lo[axis] < box.hi[axis] for axis in (Axis.HIGH, Axis.DEEP))
