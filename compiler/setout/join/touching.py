"""Every pair of boards that touch or overlap."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import islice

from setout.geometry import Box
from setout.join.solid import APART, Meeting, Solid, Touch, overlap, touch
from setout.join.sweep import close_pairs
from setout.place.model import Board, Notch

MOST_PAIRS = 100_000  # beyond it the job is not looked at any further

Pair = tuple[str, str]


@dataclass(frozen=True)
class Touches:
    """`pairs` by two paths, the earlier board first; only pairs that touch in a face or overlap. `full`: too many."""

    pairs: Mapping[Pair, Touch]
    full: bool = False

    def between(self, a: str, b: str) -> Touch:
        """How `a` stands to `b`: the faces are `a`'s."""
        if (a, b) in self.pairs:
            return self.pairs[a, b]
        found = self.pairs.get((b, a), APART)
        turned = tuple(Meeting(m.face.opposite, m.area) for m in found.meetings)
        return Touch(turned, found.shared, found.intricate)

    @cached_property
    def neighbours(self) -> Mapping[str, list[str]]:
        """For each board those it has to do with, in the order of the boards."""
        near = defaultdict(list)
        for a, b in self.pairs:
            near[a].append(b)
            near[b].append(a)
        return near


def solid(board: Board) -> Solid:
    """The board less its notches and cut-outs."""
    return Solid(board.box, tuple(f.box for f in board.features if isinstance(f, Notch)))


def touches(solids: Mapping[str, Solid]) -> Touches:
    """All pairs that touch in a face or overlap."""
    paths = list(solids)
    found: dict[tuple[int, int], Touch] = {}
    for count, (i, j) in enumerate(close_pairs([s.box for s in solids.values()])):
        if count >= MOST_PAIRS:
            return Touches(_named(found, paths), full=True)
        how = touch(solids[paths[i]], solids[paths[j]])
        if how.meetings or how.shared or how.intricate:
            found[i, j] = how
    return Touches(_named(found, paths))


def overlaps(solids: Mapping[str, Solid], among: Collection[str]) -> dict[Pair, Box]:
    """What is shared by the pairs that overlap and hold one of these boards, as the box that bounds it."""
    paths = list(solids)
    shared: dict[Pair, Box] = {}
    for i, j in sorted(islice(close_pairs([s.box for s in solids.values()]), MOST_PAIRS)):
        if paths[i] in among or paths[j] in among:
            box = overlap(solids[paths[i]], solids[paths[j]])
            if box is not None:
                shared[paths[i], paths[j]] = box
    return shared


def _named(found: Mapping[tuple[int, int], Touch], paths: list[str]) -> dict[Pair, Touch]:
    return {(paths[i], paths[j]): found[i, j] for i, j in sorted(found)}
