"""Every pair of boards that touch or overlap."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from setout.join.solid import APART, Meeting, Solid, Touch, touch
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


def touches(solids: Mapping[str, Solid], among: Iterable[str] | None = None) -> Touches:
    """All pairs that touch in a face or overlap; with `among`, those pairs alone that hold one of these boards."""
    paths = list(solids)
    wanted = None if among is None else set(among)
    found: dict[tuple[int, int], Touch] = {}
    for count, (i, j) in enumerate(close_pairs([s.box for s in solids.values()])):
        if count >= MOST_PAIRS:
            return Touches(_named(found, paths), full=True)
        if wanted is not None and paths[i] not in wanted and paths[j] not in wanted:
            continue
        how = touch(solids[paths[i]], solids[paths[j]])
        if how.meetings or how.shared or how.intricate:
            found[i, j] = how
    return Touches(_named(found, paths))


def _named(found: Mapping[tuple[int, int], Touch], paths: list[str]) -> dict[Pair, Touch]:
    return {(paths[i], paths[j]): found[i, j] for i, j in sorted(found)}
