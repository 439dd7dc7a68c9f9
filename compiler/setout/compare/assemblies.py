"""What became of each placed assembly."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from setout.compare.known import extent, own_box
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
        "renamed": _local(a) != _local(b) or owners[a.parent or ""] != (b.parent or ""),
        "resized": bool(sized),
        "mirrored": turns[0].reflects != turns[1].reflects,
        "turned": turns[0].reflects == turns[1].reflects and _way(turns[0]) != _way(turns[1]),
        "moved": low_a != low_b,
    }
    moved = tuple(y.low - x.low for x, y in zip(low_a, low_b)) if how["moved"] else None
    words = tuple(word for word, is_so in how.items() if is_so)
    return AssemblyChange(words, a.path, b.path, b.title, boards, sized, moved)  # type: ignore[arg-type]


def _local(instance: Instance) -> str:
    return instance.path.removeprefix(f"{instance.parent}.") if instance.parent else instance.path


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
    lows, sizes = [], []
    for joined in plan.pieces.joined.scenes:
        instance = joined.scene.instances[path]
        holds = joined.scene.instances[instance.parent or ""].motion
        assert instance.box is not None, "only the job itself may be without a box"
        lo, hi = own_box(holds, instance.box.lo, instance.box.hi)
        lows.append(lo)
        sizes.append(tuple(b - a for a, b in zip(lo, hi)))
    return tuple(extent(some) for some in zip(*lows)), tuple(extent(some) for some in zip(*sizes))  # type: ignore


def _relative(plan: Plan, instance: Instance) -> Motion:
    """Its own motion within the assembly that holds it, its shift left out of account."""
    holds = plan.pieces.joined.drawn.scene.instances[instance.parent or ""].motion
    to = tuple(holds.to.index(t) for t in instance.motion.to)
    sign = tuple(s * holds.sign[k] for s, k in zip(instance.motion.sign, to))
    return Motion(to, sign, instance.motion.shift)  # type: ignore[arg-type]


def _way(motion: Motion) -> tuple:
    return motion.to, motion.sign
