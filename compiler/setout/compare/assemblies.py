"""What became of each placed assembly."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from setout.compare.known import extent, stand
from setout.compare.model import AssemblyChange, Extent, Sized
from setout.geometry import AXIS_WORDS, Motion
from setout.place.model import Instance
from setout.plan.model import Plan

Place = tuple[tuple[Extent, Extent, Extent], tuple[Extent, Extent, Extent]]


def changes(old: Plan, new: Plan, owners: Mapping[str, str]) -> tuple[AssemblyChange, ...]:
    """In the order of the new plan; what is gone comes last."""
    before, after = (plan.pieces.joined.drawn.scene.instances for plan in (old, new))
    to_old = {b: a for a, b in owners.items()}
    many = _boards(old), _boards(new)
    found = []
    for path, instance in after.items():
        if not path:
            continue
        if path not in to_old:
            found.append(AssemblyChange(("added",), None, path, instance.title, many[1][path]))
            continue
        one = before[to_old[path]]
        change = _change(old, new, one, instance, owners, many[1][path])
        found.extend([change] if change.how else [])
    gone = (i for path, i in before.items() if path not in owners)
    found.extend(AssemblyChange(("gone",), i.path, None, i.title, many[0][i.path]) for i in gone)
    return tuple(found)


def _change(
    old: Plan, new: Plan, a: Instance, b: Instance, owners: Mapping[str, str], boards: int
) -> AssemblyChange:
    (low_a, size_a), (low_b, size_b) = _place(old, a.path), _place(new, b.path)
    sized = tuple(Sized(AXIS_WORDS[k], x, y) for k, (x, y) in enumerate(zip(size_a, size_b)) if x != y)
    turns = _relative(old, a), _relative(new, b)
    how = {
        "renamed": a.name != b.name or owners[a.parent or ""] != (b.parent or ""),
        "resized": bool(sized),
        "mirrored": turns[0].reflects != turns[1].reflects,
        "turned": turns[0].reflects == turns[1].reflects and _way(turns[0]) != _way(turns[1]),
        "moved": low_a != low_b,
    }
    moved = tuple(y.low - x.low for x, y in zip(low_a, low_b)) if how["moved"] else None
    words = tuple(word for word, is_so in how.items() if is_so)
    return AssemblyChange(words, a.path, b.path, b.title, boards, sized, moved)  # type: ignore[arg-type]


def _boards(plan: Plan) -> Counter[str]:
    """How many boards stand in each assembly, in what stands in it too."""
    count: Counter[str] = Counter()
    scene = plan.pieces.joined.drawn.scene
    things = [(board.owner, 1) for board in scene.boards.values()] + [(b.owner, b.count) for b in scene.loose]
    for owner, many in things:
        while owner:
            count[owner] += many
            owner = scene.instances[owner].parent or ""
    return count


def _place(plan: Plan, path: str) -> Place:
    """Low corner in the assembly that holds it, and sizes, in that one's directions; over all scenes."""
    boxes = [stand(joined.scene.instances, path) for joined in plan.pieces.joined.scenes]
    lows, sizes = zip(*((box.lo, box.sizes) for box in boxes if box))  # only the job itself may be without one
    return tuple(map(extent, zip(*lows))), tuple(map(extent, zip(*sizes)))  # type: ignore


def _relative(plan: Plan, instance: Instance) -> Motion:
    """Its own motion within the assembly that holds it."""
    holds = plan.pieces.joined.drawn.scene.instances[instance.parent or ""].motion
    return holds.inverse.after(instance.motion)


def _way(motion: Motion) -> tuple:
    return motion.to, motion.sign
