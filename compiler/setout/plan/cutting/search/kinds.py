"""Items as the search sees them: equal ones are of one kind, and a group that is cut from one strip is one large
rectangle."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from setout.plan.cutting.search.model import Item


@dataclass(frozen=True)
class Kind:
    """`shapes` are the (x size, y size) it may be laid in. `members` lists the items it stands for: single items for a
    plain kind (one for each copy), or for a group one tuple of items in order. `strips` says of each shape along which
    axis a group's members lie ("" for a plain kind)."""

    shapes: tuple[tuple[int, int], ...]
    strips: tuple[str, ...]
    area: int
    members: tuple[tuple[int, ...], ...]

    @property
    def count(self) -> int:
        return len(self.members)


def kinds_of(items: Sequence[Item]) -> tuple[Kind, ...]:
    """The kinds in an order that doesn't depend on the order of the items."""
    members: dict[tuple, list[tuple[int, ...]]] = {}
    for index, item in enumerate(items):
        if item.group is None:
            shapes = _shapes(item.width, item.height, item.turnable)
            members.setdefault((shapes, ("",) * len(shapes)), []).extend([(index,)] * item.count)
    for group in _groups(items):
        members.setdefault(_strips([items[i] for i in group]), []).append(group)
    return tuple(
        Kind(shapes, strips, shapes[0][0] * shapes[0][1], tuple(found))
        for (shapes, strips), found in sorted(members.items(), key=lambda pair: pair[0])
    )


def _shapes(width: int, height: int, turnable: bool) -> tuple[tuple[int, int], ...]:
    if not turnable or width == height:
        return ((width, height),)
    return ((max(width, height), min(width, height)), (min(width, height), max(width, height)))


def _groups(items: Sequence[Item]) -> list[tuple[int, ...]]:
    groups: dict[int, list[int]] = {}
    for index, item in enumerate(items):
        if item.group is not None:
            groups.setdefault(item.group, []).extend([index] * item.count)
    return [tuple(groups[key]) for key in sorted(groups)]


def _strips(run: Sequence[Item]) -> tuple[tuple[tuple[int, int], ...], tuple[str, ...]]:
    """A run lies along x or along y, and when all may turn it lies so with its members turned, too."""
    wide, high = [item.width for item in run], [item.height for item in run]
    found = {(sum(wide), max(high)): "x", (max(wide), sum(high)): "y"}
    if all(item.turnable for item in run):
        found = {(sum(high), max(wide)): "x turned", (max(high), sum(wide)): "y turned"} | found
    return tuple(sorted(found)), tuple(found[shape] for shape in sorted(found))
