"""Boards filled to the last corner: plans without waste, or nearly, for items that have next to no area to spare.

The search in `squeeze` leaves a little everywhere and then lacks a board. Here nothing is left anywhere: items are
joined where their sides agree (`blocks`), and where that alone doesn't decide it, boards are filled strip by strip
(`peeling`).
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from setout.plan.cutting.search.full.blocks import Blocks, laid_within
from setout.plan.cutting.search.full.counts import Counts
from setout.plan.cutting.search.full.cover import covered
from setout.plan.cutting.search.full.peeling import Peeled, Peeling
from setout.plan.cutting.search.full.planting import planted
from setout.plan.cutting.search.full.stocks import Stock, tight
from setout.plan.cutting.search.kinds import Kind
from setout.plan.cutting.search.meter import Meter
from setout.plan.cutting.search.trees import Board

__all__ = ["Full", "tight"]

MOST = 50_000  # blocks listed
MORE = 4  # times as many if strips lead nowhere with so much work ...
SHORT = 400_000
GROWTH = 1.7  # ... and an item more makes less than so many times the blocks: the end of the list is near


class Full:
    """The items to go on just these boards, with `slack` area to spare. `impossible`: it's certain that straight cuts
    can't do it."""

    def __init__(self, kinds: Sequence[Kind], stocks: Sequence[Stock], slack: int, rng: Random, meter: Meter):
        self.stocks = stocks
        self.slack = slack
        self.rng = rng
        self.meter = meter
        # The longest first, as strips take them.
        self.kinds = sorted(range(len(kinds)), key=lambda k: (-max(kinds[k].shapes[0]), -kinds[k].area, k))
        self.shapes = [(*kinds[k].shapes[0], len(set(kinds[k].shapes[0])) == len(kinds[k].shapes)) for k in self.kinds]
        self.counts = Counts([kinds[k].count for k in self.kinds])
        self.most = MOST
        self.look_over()

    def look_over(self) -> None:
        """List the blocks and see whether they decide it."""
        sizes = [size for _, size in self.stocks]
        widest = max(wide for wide, _ in sizes), max(high for _, high in sizes)
        self.blocks = Blocks(self.counts, self.shapes, self.counts.full, widest, self.most, self.meter)
        self.wholes, tried = covered(self.blocks, self.counts, sizes, self.slack, self.meter)
        self.impossible = not self.slack and self.blocks.complete and tried and self.wholes is None
        self.peeling: Peeling | None = None

    def run(self, work: int) -> list[Board] | None:
        """Boards with everything on them, if they are found with so much work (or with more where a longer list of
        blocks may decide it)."""
        near = self._near_the_end()
        found = self.filled(SHORT if near else work)
        if found is None and near:
            self.most *= MORE
            self.look_over()
            found = self.filled(work)
        return found and [
            board
            for stock, peeled in zip(self.stocks, found)
            if (board := planted(*stock, peeled, self.kinds)).root is not None
        ]

    def filled(self, work: int) -> list[Peeled] | None:
        if self.wholes:
            return [Peeled([], laid_within(one, size)) for one, (_, size) in zip(self.wholes, self.stocks)]
        return None if self.impossible else self.peel(work)

    def peel(self, work: int) -> list[Peeled] | None:
        if self.peeling is None:
            sizes = [size for _, size in self.stocks]
            self.peeling = Peeling(self.counts, self.shapes, self.blocks, sizes, self.slack, self.rng, self.meter)
        limit = self.meter.work + work
        while self.meter.work < limit and not self.meter.spent():
            found = self.peeling.once()
            if found:
                return found
        return None

    def _near_the_end(self) -> bool:
        """The last level may be cut short, so the two before it are compared."""
        if self.blocks.complete or self.slack or self.most > MOST or len(self.blocks.all) < 4:
            return False
        before, last = self.blocks.all[-3:-1]
        return len(last) < GROWTH * len(before)
