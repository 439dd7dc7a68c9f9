"""Assemblies built alike share a sheet."""

from __future__ import annotations

from dataclasses import dataclass

from setout.drawing import Drawing
from setout.place.model import Instance
from setout.write.assemblies.joints import joints
from setout.write.assemblies.model import Joint
from setout.write.assemblies.paths import within
from setout.write.facts import Facts

BESIDE = 215.0  # points; width of a table of parts that stands beside the drawing
LEAST = 150.0  # points; a lower drawing would show nothing
MOST = 330.0  # points; one that is higher shows no more
RUNS_OVER = 0.65  # of a page; how high it may be where the sheet takes two in any case
GAP = 14.0  # points; between that table and the drawing, as style.css.j2 has it
AROUND = 112.0  # points; heading and the box for the diagonals, less the air that a page's room for drawings keeps
A_LINE = 108  # letters in a line as wide as the page
MOST_BESIDE = 12  # parts; a longer table could not break over two pages there


@dataclass(frozen=True)
class Group:
    """Instances built alike, all parts of the same marks under the same names. The first stands for them."""

    first: Instance
    paths: tuple[str, ...]

    @property
    def key(self) -> str:
        return self.first.path


def groups(facts: Facts) -> tuple[Group, ...]:
    """Innermost first, as they are built; the job itself last, if it has boards or joints of its own."""
    alike: dict[tuple, list[Instance]] = {}
    for instance in facts.scene.instances.values():
        if _is_built(facts, instance):
            alike.setdefault(_likeness(facts, instance), []).append(instance)
    found = [Group(many[0], tuple(i.path for i in many)) for many in alike.values()]
    return tuple(sorted(found, key=lambda group: -_depth(group.first)))


def room_for_drawing(facts: Facts, group: Group) -> tuple[float, float]:
    """Width and height, in points, that keep the whole sheet on one page where that can be."""
    path = group.first.path
    hardware = {(fitting.hardware.name, fitting.hardware.hole) for fitting in facts.fittings_of.get(path, ())}
    height = facts.height - AROUND - _joints_high(facts, group.first) - (30 + 17 * len(hardware) if hardware else 0)
    if stands_beside(facts, group.first):
        return facts.width - BESIDE, max(_fit(facts, height), min(MOST, 20 + 27.0 * _marks(facts, path)))
    return facts.width, _fit(facts, height - 24 - 21 * _marks(facts, path))


def room_for_parts(facts: Facts, drawing: Drawing) -> int:
    """How wide, in points, the table of parts may be beside the drawing."""
    return int(max(BESIDE, facts.width - drawing.width) - GAP)


def _fit(facts: Facts, height: float) -> float:
    """What is left of the page, if that shows anything; a sheet that runs over in any case may have a good drawing."""
    return min(MOST, height) if height >= LEAST else RUNS_OVER * facts.height


def _joints_high(facts: Facts, instance: Instance) -> float:
    """About how much of the page the list of joints takes: each entry's letters tell its lines."""
    lines = [1 + _letters(joint) // A_LINE for joint in joints(facts, instance)]
    return 30 + sum(13.5 * n + 3 for n in lines) if lines else 0.0


def _letters(joint: Joint) -> int:
    sides = (joint.entering, joint.receiving)
    named = sum(len(", ".join((*place.owners, *place.names))) + 3 for side in sides for place in side.where)
    marked = sum(4 * len(side.marks) + 14 * len(side.walls) for side in sides)
    return named + marked + 26 + 28 * len(joint.housings) + 26 * len(joint.fasteners) + 6 * joint.glued


def stands_beside(facts: Facts, instance: Instance) -> bool:
    """Whether the table of parts stands beside the drawing: one about as high as wide leaves room for it."""
    box = instance.box if instance.path else facts.outline
    if box is None or _marks(facts, instance.path) > MOST_BESIDE:
        return False
    wide, high, deep = instance.motion.own_sizes(box.sizes)
    return 5 * (2 * high + deep) >= 4 * (2 * wide + deep)


def inside(facts: Facts, instance: Instance) -> tuple[Instance, ...]:
    """Assemblies standing in it."""
    return facts.instances_in.get(instance.path, ())


def _marks(facts: Facts, path: str) -> int:
    return len({facts.mark_of[board] for board in facts.boards_of.get(path, ())})


def _is_built(facts: Facts, instance: Instance) -> bool:
    """Not when it only holds other assemblies, apart from each other."""
    return any(instance.path in held for held in (facts.boards_of, facts.joints_of, facts.fittings_of))


def _likeness(facts: Facts, instance: Instance) -> tuple:
    sizes = None if instance.box is None else instance.motion.own_sizes(instance.box.sizes)
    boards = facts.boards_of.get(instance.path, ())
    marks = tuple((within(instance, path), facts.mark_of[path]) for path in boards)
    held = tuple((within(instance, i.path), i.definition) for i in inside(facts, instance))
    return instance.definition, sizes, marks, held


def _depth(instance: Instance) -> int:
    return 0 if not instance.path else instance.path.count(".") + 1
