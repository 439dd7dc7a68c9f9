"""Assemblies built alike share a sheet."""

from __future__ import annotations

from dataclasses import dataclass

from setout.place.model import Instance
from setout.write.facts import Facts
from setout.write.facts.faces import own_sizes

BESIDE = 215.0  # points; width of a table of parts that stands beside the drawing
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
    height = facts.height - 150 - 25 * len(facts.joints_of.get(path, ()))
    if stands_beside(facts, group.first):
        return facts.width - BESIDE, min(330.0, max(260.0, height))
    return facts.width, min(330.0, max(240.0, height - 21 * _marks(facts, path)))


def stands_beside(facts: Facts, instance: Instance) -> bool:
    """Whether the table of parts stands beside the drawing: one about as high as wide leaves room for it."""
    box = instance.box if instance.path else facts.outline
    if box is None or _marks(facts, instance.path) > MOST_BESIDE:
        return False
    wide, high, deep = own_sizes(instance.motion, box.sizes)
    return 5 * (2 * high + deep) >= 4 * (2 * wide + deep)


def inside(facts: Facts, instance: Instance) -> tuple[Instance, ...]:
    """Assemblies standing in it."""
    return facts.instances_in.get(instance.path, ())


def within(instance: Instance, path: str) -> str:
    """A path as seen from inside the instance; itself is ""."""
    if path == instance.path:
        return ""
    return path.removeprefix(instance.path + ".") if instance.path else path


def _marks(facts: Facts, path: str) -> int:
    return len({facts.mark_of[board] for board in facts.boards_of.get(path, ())})


def _is_built(facts: Facts, instance: Instance) -> bool:
    """Not when it only holds other assemblies, apart from each other."""
    return any(instance.path in held for held in (facts.boards_of, facts.joints_of, facts.fittings_of))


def _likeness(facts: Facts, instance: Instance) -> tuple:
    sizes = None if instance.box is None else own_sizes(instance.motion, instance.box.sizes)
    boards = facts.boards_of.get(instance.path, ())
    marks = tuple((within(instance, path), facts.mark_of[path]) for path in boards)
    held = tuple((within(instance, i.path), i.definition) for i in inside(facts, instance))
    return instance.definition, sizes, marks, held


def _depth(instance: Instance) -> int:
    return 0 if not instance.path else instance.path.count(".") + 1
