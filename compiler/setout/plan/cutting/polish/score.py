"""How good a board is to work by, in whole numbers, without ordering its cuts."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from itertools import accumulate
from operator import attrgetter
from typing import Literal

from setout.plan.cutting.search.trees import Board, Node, squares

Setting = Literal["stop", "fence", "guide", "none"]
Cut = tuple[int, int, int, bool]
"""The board's extents along and across, the size set, whether the stop may be used."""
FIXED = ("stop", "fence")
ALONG = attrgetter("a")


@dataclass(frozen=True)
class Taste:
    """What counts: weights of the share of a sheet's area that is the largest leftover, of each fence setting, each
    stop, each cut by the guide, each cut; of the sum of the squared shares of all leftovers (it leads the search on
    where nothing else changes). `less`: the share by which the largest leftover is smaller than before."""

    leftover: float = 100.0
    less: float = 400.0
    fence: float = 5.0
    stop: float = 0.4
    guide: float = 0.3
    cut: float = 0.08
    tidy: float = 8.0


@dataclass(frozen=True)
class Rules:
    """`kerf` and the least sizes worth keeping as the search counts them; `area` of the largest board; `set_by(along,
    across, setting, to_stop)` what is set for a cut; `known` are fence settings made in any case."""

    kerf: int
    keep_long: int
    keep_short: int
    area: int
    set_by: Callable[[int, int, int, bool], Setting]
    known: frozenset[int] = frozenset()
    judged: dict[Cut, Setting] = field(default_factory=dict, compare=False, repr=False)

    def judge(self, cut: Cut) -> Setting:
        """The same cuts come up again and again while boards are laid anew: each is looked into once."""
        found = self.judged.get(cut)
        if found is None:
            along, across, size, to_stop = cut
            kerf = self.kerf
            found = self.judged[cut] = self.set_by(along - kerf, across - kerf, size - kerf, to_stop)
        return found


@dataclass(frozen=True)
class Merit:
    """One board's. `left` is the area of its largest leftover worth keeping, `guided` counts the cuts by the guide,
    `bad` those that no saw can make."""

    fences: frozenset[int]
    stops: frozenset[int]
    guided: int
    cuts: int
    bad: int
    left: int
    tidy: float


USUAL = Taste()
EMPTY = Merit(frozenset(), frozenset(), 0, 0, 0, 0, 0.0)


def merit(board: Board, rules: Rules) -> Merit:
    if board.root is None:
        return EMPTY
    walk = _Walk(rules)
    root, (width, height) = board.root, board.size
    walk.whole(root, *((height, width) if root.d else (width, height)))
    return Merit(
        frozenset(walk.fences - rules.known),
        frozenset(walk.stops),
        walk.guided,
        walk.cuts,
        walk.bad,
        walk.left,
        squares(board) / rules.area**2,
    )


class _Walk:
    def __init__(self, rules: Rules):
        self.rules = rules
        self.fences: set[int] = set()
        self.stops: set[int] = set()
        self.cuts = self.guided = self.bad = self.left = 0

    def whole(self, root: Node, along: int, across: int) -> None:
        if root.a < across:
            self.cut(across, along, root.a, across >= along)
            self.leave(across - root.a, along)
        self.apart(root.kids, along, root.a)

    def apart(self, kids: Sequence[Node], extent: int, across: int) -> None:
        """A board `extent` along its cuts is cut into the kids; while it is too large, in two."""
        if not self.workable(kids, extent, across):
            self.part(sorted(kids, key=ALONG), extent, across)
            return
        remains, to_stop = extent, extent >= across
        for kid in reversed(kids):
            if kid.a < remains:
                self.cut(remains, across, kid.a, to_stop)
            remains -= kid.a
            if kid.kids is not None:
                self.apart(kid.kids, across, kid.a)
            elif kid.c < across:
                self.trim(kid, across)
        if remains:
            self.leave(remains, across)

    def workable(self, kids: Sequence[Node], extent: int, across: int) -> bool:
        """Whether a saw that stands still can go on with it: if with any cut, then with the narrowest part's."""
        while len(kids) == 1 and kids[0].a == extent:
            kid = kids[0]
            if kid.kids is None:
                return kid.c == across or self.fixed(across, extent, kid.c)
            kids, extent, across = kid.kids, across, extent
        return self.fixed(extent, across, kids[0].a if len(kids) == 1 else min(kids, key=ALONG).a)

    def fixed(self, along: int, across: int, size: int) -> bool:
        return self.rules.judge((along, across, size, along >= across)) in FIXED

    def part(self, kids: list[Node], extent: int, across: int) -> None:
        """`kids` the narrowest first. As sequence.breaking does: where the fewest boards stay too large, the two as
        even as may be."""
        low, kept, rest = self.parting(kids, extent, across)
        if not low:  # a single part fills it
            self.apart(kids[0].kids, across, extent) if kids[0].kids else self.trim(kids[0], across)
            return
        self.cut(extent, across, low, extent >= across)
        self.apart(kept, low, across)
        if rest:
            self.apart(rest, extent - low, across)
        else:
            self.leave(extent - low, across)

    def parting(self, kids: list[Node], extent: int, across: int) -> tuple[int, list[Node], list[Node]]:
        """How far the low side goes, the parts in it and the others; 0 when there is nothing to part."""
        count, sizes = len(kids), [0, *accumulate(kid.a for kid in kids)]
        ways = [(abs(2 * (sizes[count] - sizes[start]) - extent), start, count) for start in range(count)]
        ways += [(abs(2 * sizes[end] - extent), 0, end) for end in range(1, count)]
        best, fewest = (0, kids, kids[:0]), 3
        for _, start, end in sorted(ways):
            low = sizes[end] - sizes[start]
            if low == extent:
                continue
            kept, rest = kids[start:end], kids[:start] + kids[end:]
            large = not self.workable(kept, low, across)
            if rest and not self.workable(rest, extent - low, across):
                large += 1
            if large < fewest:
                best, fewest = (low, kept, rest), large
                if not large:
                    break
        return best

    def trim(self, leaf: Node, across: int) -> None:
        if leaf.c < across:
            self.cut(across, leaf.a, leaf.c, across >= leaf.a)
            self.leave(across - leaf.c, leaf.a)

    def cut(self, along: int, across: int, size: int, to_stop: bool) -> None:
        self.cuts += 1
        setting = self.rules.judge((along, across, size, to_stop))
        if setting == "stop":
            self.stops.add(size)
        elif setting == "fence":
            self.fences.add(size)
        elif setting == "guide":
            self.guided += 1
        else:
            self.bad += 1

    def leave(self, one: int, other: int) -> None:
        rules = self.rules
        long, short = (one, other) if one > other else (other, one)
        long -= rules.kerf
        short -= rules.kerf
        if short >= rules.keep_short and long >= rules.keep_long and long * short > self.left:
            self.left = long * short
