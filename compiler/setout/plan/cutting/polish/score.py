"""How good a board is to work by, in whole numbers, without ordering its cuts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from setout.plan.cutting.search.trees import Board, Node, squares

Cut = tuple[int, int, int, bool]
"""The board's extents along and across, the size set, whether the stop may be used."""
Setting = Literal["stop", "fence"]
Judgement = tuple["Setting | None", bool]
"""What has to be set for a cut (None: it is set already), and whether some saw can make it."""


@dataclass(frozen=True)
class Taste:
    """What counts: weights of the share of a sheet's area that is the largest leftover, of each fence setting, each
    stop, each cut; of the sum of the squared shares of all leftovers (it leads the search on where nothing else
    changes)."""

    leftover: float = 100.0
    fence: float = 5.0
    stop: float = 0.4
    cut: float = 0.08
    tidy: float = 8.0


@dataclass(frozen=True)
class Rules:
    """`kerf` and the least sizes worth keeping as the search counts them; `area` of the largest board; `feasible(along,
    across, setting)` whether some saw can make a cut; `fenced(across, setting)` whether a fence reaches so far on
    boards so long, `stopped(across)` whether some board so wide is cut to a stop; `known` are fence settings made in
    any case."""

    kerf: int
    keep_long: int
    keep_short: int
    area: int
    feasible: Callable[[int, int, int], bool]
    fenced: Callable[[int, int], bool]
    stopped: Callable[[int], bool]
    known: frozenset[int] = frozenset()
    judged: dict[Cut, Judgement] = field(default_factory=dict, compare=False, repr=False)

    def judge(self, cut: Cut) -> Judgement:
        """The same cuts come up again and again while boards are laid anew: each is looked into once."""
        if cut not in self.judged:
            self.judged[cut] = self._setting(cut), self._feasible(cut)
        return self.judged[cut]

    def _setting(self, cut: Cut) -> Setting | None:
        _, across, size, to_stop = cut
        wide = across - self.kerf
        if (to_stop and self.stopped(wide)) or not self.fenced(wide, size - self.kerf):
            return "stop"
        return None if size in self.known else "fence"

    def _feasible(self, cut: Cut) -> bool:
        along, across, size, _ = cut
        return self.feasible(along - self.kerf, across - self.kerf, size - self.kerf)


@dataclass(frozen=True)
class Merit:
    """One board's. `left` is the area of its largest leftover worth keeping, `bad` counts cuts no saw can make."""

    fences: frozenset[int]
    stops: frozenset[int]
    cuts: int
    bad: int
    left: int
    tidy: float


USUAL = Taste()
EMPTY = Merit(frozenset(), frozenset(), 0, 0, 0, 0.0)


def merit(board: Board, rules: Rules) -> Merit:
    if board.root is None:
        return EMPTY
    walk = _Walk(rules)
    root, (width, height) = board.root, board.size
    along, across = (height, width) if root.d else (width, height)
    if root.a < across:
        walk.cut(across, along, root.a, across >= along)
        walk.leave(across - root.a, along)
    walk.node(root, along, root.a)
    return Merit(
        frozenset(walk.fences), frozenset(walk.stops), walk.cuts, walk.bad, walk.left, squares(board) / rules.area**2
    )


class _Walk:
    def __init__(self, rules: Rules):
        self.rules = rules
        self.fences: set[int] = set()
        self.stops: set[int] = set()
        self.cuts = self.bad = self.left = 0

    def node(self, node: Node, extent: int, across: int) -> None:
        """A board `extent` along the node's direction is cut apart, the widest part first."""
        remains, to_stop = extent, extent >= across
        for kid in reversed(node.kids):
            if kid.a < remains:
                self.cut(remains, across, kid.a, to_stop)
            remains -= kid.a
            if kid.kids is not None:
                self.node(kid, across, kid.a)
            elif kid.c < across:
                self.cut(across, kid.a, kid.c, across >= kid.a)
                self.leave(across - kid.c, kid.a)
        if remains:
            self.leave(remains, across)

    def cut(self, along: int, across: int, size: int, to_stop: bool) -> None:
        self.cuts += 1
        setting, feasible = self.rules.judge((along, across, size, to_stop))
        if setting == "stop":
            self.stops.add(size)
        elif setting == "fence":
            self.fences.add(size)
        if not feasible:
            self.bad += 1

    def leave(self, one: int, other: int) -> None:
        rules = self.rules
        long, short = (one, other) if one > other else (other, one)
        long -= rules.kerf
        short -= rules.kerf
        if short >= rules.keep_short and long >= rules.keep_long and long * short > self.left:
            self.left = long * short
