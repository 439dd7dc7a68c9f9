"""Which board, which assembly of one plan is which of the other. The same both ways round.

Members of a repeat or a bank go with each other first, in their order. Of the rest first what is the same in every
respect; then the same at the same place under another name; then the same of that
name elsewhere; then what bears the same name; then the same under another name; then what stands at the same place.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from math import lcm
from typing import TypeVar

from setout.compare.aligning import Unlike, aligned
from setout.compare.known import Known, stand
from setout.geometry import Box
from setout.place.model import Instance
from setout.plan.model import Plan

T = TypeVar("T")
Key = Callable[[T], Hashable]


def paired(old: Sequence[T], new: Sequence[T], passes: Iterable[tuple[Key, Key]], path: Callable[[T], str]):
    """Pairs of what has the same key, by one pass after the other. Where several have, they are taken in the order of
    their paths. A key of None pairs with nothing."""
    left, right = sorted(old, key=lambda x: natural(path(x))), sorted(new, key=lambda x: natural(path(x)))
    found: list[tuple[T, T]] = []
    for old_key, new_key in passes:
        of: defaultdict[Hashable, list[T]] = defaultdict(list)
        for thing in reversed(right):
            of[new_key(thing)].append(thing)
        left_over, gone = [], set()
        for thing in left:
            key = old_key(thing)
            same = of.get(key) if key is not None else None
            if same:
                other = same.pop()
                gone.add(path(other))
                found.append((thing, other))
            else:
                left_over.append(thing)
        left, right = left_over, [thing for thing in right if path(thing) not in gone]
    return found


def natural(path: str) -> tuple:
    """Sorts shelf.2 before shelf.10."""
    return tuple((0, int(p), "") if p.isdecimal() else (1, 0, p) for p in re.split(r"[.]", path))


def boards(old: Sequence[Known], new: Sequence[Known], owners: Mapping[str, str]) -> list[tuple[Known, Known]]:
    """`owners`: paths of assemblies, old → new. Loose boards pair with loose ones alone."""

    def both(key: Callable[[Known, str], Hashable]) -> tuple[Key, Key]:
        return (
            lambda b: key(b, owners.get(b.side.owner, f"old:{b.side.owner}")),
            lambda b: key(b, b.side.owner),
        )

    passes = (
        both(lambda b, owner: (owner, b.side.name, b.key, b.low, b.thick, b.sizes)),
        both(lambda b, owner: None if b.low is None else (owner, b.key, b.low, b.thick, b.sizes)),
        both(lambda b, owner: (owner, b.side.name, b.low is None)),
        both(lambda b, owner: (owner, b.key, b.low is None)),
    )
    return paired(old, new, passes, lambda b: b.path)


def assemblies(old: Plan, new: Plan, old_boards: Sequence[Known], new_boards: Sequence[Known]) -> dict[str, str]:
    """Paths, old → new; the job itself is ""."""
    sides = _Side(old, old_boards), _Side(new, new_boards)
    found = {"": ""}
    for level in range(1, max(side.depth for side in sides) + 1):
        here = [[i for i in side.instances if side.levels[i.path] == level] for side in sides]
        for a, b in _at_one_level(*here, *sides, found):
            found[a.path] = b.path
    return found


def _at_one_level(
    old: Sequence[Instance], new: Sequence[Instance], before: _Side, after: _Side, found: Mapping[str, str]
) -> list[tuple[Instance, Instance]]:
    def both(key: Callable[[_Side, Instance], tuple]) -> tuple[Key, Key]:
        return (
            lambda i: (found.get(i.parent or "", f"old:{i.parent}"), *key(before, i)),
            lambda i: (i.parent or "", *key(after, i)),
        )

    name = both(lambda s, i: (i.name,))
    contents = both(lambda s, i: (s.named[i.path],))
    sizes = both(lambda s, i: (s.sized[i.path],))
    shapes = both(lambda s, i: (s.shapes[i.path],))
    same = (
        both(lambda s, i: (i.name, s.named[i.path], s.place(i))),
        both(lambda s, i: (s.shapes[i.path], s.place(i))),
        both(lambda s, i: (i.name, s.named[i.path])),
    )
    members = _members(old, new, before, after, found)
    pairs = members + paired(*_left(old, new, members), same, _path)
    pairs += _swapped(paired(*_left(old, new, pairs), [contents, sizes], _path), name)
    alike = (name, contents, shapes, both(lambda s, i: (s.place(i),)), both(lambda s, i: (i.definition,)))
    rest = paired(*_left(old, new, pairs), alike, _path)
    return pairs + [(a, b) for a, b in rest if not (before.stem(a) and after.stem(b)) or _is_like(before, a, after, b)]


def _members(
    old: Sequence[Instance], new: Sequence[Instance], before: _Side, after: _Side, found: Mapping[str, str]
) -> list[tuple[Instance, Instance]]:
    """Those of the repeats and banks that are called the same in both."""
    was = _by_stem(old, before, lambda holder: found.get(holder, f"old:{holder}"))
    now = _by_stem(new, after, lambda holder: holder)

    known = _whole([(0, before, i) for some in was.values() for i in some] + [
        (1, after, i) for some in now.values() for i in some
    ])  # fmt: skip

    def unlike(a: Instance, b: Instance) -> Unlike | None:
        return _unlike(known[0, a.path], known[1, b.path]) if _is_like(before, a, after, b) else None

    pairs: list[tuple[Instance, Instance]] = []
    for key, some in was.items():
        others = now.get(key, ())
        # whichever of two equally good ways is found, it must be found the other way round as well
        if [after.shapes[i.path] for i in others] < [before.shapes[i.path] for i in some]:
            pairs += ((a, b) for b, a in aligned(others, some, lambda b, a: unlike(a, b)))
        else:
            pairs += aligned(some, others, unlike)
    return pairs


def _by_stem(
    some: Sequence[Instance], side: _Side, called: Callable[[str], str]
) -> dict[tuple[str, str], list[Instance]]:
    """`called`: what the path of a holder is now."""
    of: defaultdict[tuple[str, str], list[Instance]] = defaultdict(list)
    for instance in sorted(some, key=lambda i: natural(i.path)):
        if side.stem(instance):
            of[called(instance.parent or ""), side.stem(instance)].append(instance)
    return of


def _is_like(before: _Side, a: Instance, after: _Side, b: Instance) -> bool:
    """A front that is nailed on is no drawer."""
    if a.definition.rpartition(".")[2] == b.definition.rpartition(".")[2]:
        return True
    one, other = ({name for name, _ in side.named[i.path]} for side, i in ((before, a), (after, b)))
    return 2 * len(one & other) > max(len(one), len(other))


def _whole(some: Sequence[tuple[int, _Side, Instance]]) -> dict[tuple[int, str], _Member]:
    """By the side that they are on and their path; all lengths in one small unit."""
    boxes = [side.place(instance) for _, side, instance in some]
    corners = [(*box.lo, *box.hi) if box else () for box in boxes]
    unit = lcm(*(x.denominator for both in corners for x in both))
    return {
        (which, i.path): (tuple(int(x * unit) for x in both), frozenset(side.named[i.path]))
        for (which, side, i), both in zip(some, corners)
    }


_Member = tuple[tuple[int, ...], frozenset[tuple[str, str]]]
"""Its low and its high corner in what holds it, and its boards."""


def _unlike(one: _Member, other: _Member) -> Unlike:
    """By how much their sizes differ, then in how many boards, then how far apart they stand."""
    by = [b - a for a, b in zip(one[0], other[0])]
    low, high = by[:3], by[3:]
    return sum(abs(b - a) for a, b in zip(low, high)), len(one[1] ^ other[1]), sum(map(abs, by))


def _path(instance: Instance) -> str:
    return instance.path


def _left(old: Sequence[T], new: Sequence[T], pairs: Sequence[tuple[T, T]]) -> tuple[list[T], list[T]]:
    gone, come = {id(a) for a, _ in pairs}, {id(b) for _, b in pairs}
    return [x for x in old if id(x) not in gone], [x for x in new if id(x) not in come]


def _swapped(pairs: list[tuple[T, T]], name: tuple[Key, Key]) -> list[tuple[T, T]]:
    """Those that changed names among themselves, as left and right do in a mirror."""
    while True:
        before, after = {name[0](a) for a, _ in pairs}, {name[1](b) for _, b in pairs}
        kept = [(a, b) for a, b in pairs if name[0](a) in after and name[1](b) in before]
        if len(kept) == len(pairs):
            return kept
        pairs = kept


def _header(key: str) -> str:
    """The shape without the work done to it."""
    return key.split("; ")[0]


class _Side:
    def __init__(self, plan: Plan, boards: Sequence[Known]) -> None:
        scene = plan.pieces.joined.drawn.scene
        self.by_path = scene.instances
        self.instances = [i for path, i in scene.instances.items() if path]
        self.levels: dict[str, int] = {"": 0}
        for instance in self.instances:
            self.levels[instance.path] = self._level(instance)
        self.depth = max(self.levels.values())
        self.of: dict[str, list[tuple[str, str]]] = {i.path: [] for i in self.instances}
        for board in boards:
            owner = board.side.owner
            inner = board.side.path
            while owner:
                self.of[owner].append((inner.removeprefix(f"{owner}."), board.key))
                owner = self.by_path[owner].parent or ""
        self.named = {path: tuple(sorted(some)) for path, some in self.of.items()}
        self.sized = {path: tuple((name, _header(key)) for name, key in some) for path, some in self.named.items()}
        self.shapes = {path: tuple(sorted(key for _, key in some)) for path, some in self.of.items()}

    def _level(self, instance: Instance) -> int:
        level, parent = 1, instance.parent
        while parent:
            level, parent = level + 1, self.by_path[parent].parent
        return level

    def place(self, instance: Instance) -> Box | None:
        return stand(self.by_path, instance.path)

    def stem(self, instance: Instance) -> str:
        """The name that the members of a repeat share; "" for anything else."""
        stem, _, number = instance.name.rpartition(".")
        return stem if number.isdecimal() else ""
