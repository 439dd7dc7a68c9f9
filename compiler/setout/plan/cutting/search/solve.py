"""Items on bins at the least cost: a first plan, then searches in turns until the bound is met or the budget spent."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence

from setout.plan.cutting.search.bounds import bound, fits
from setout.plan.cutting.search.columns import Columns
from setout.plan.cutting.search.fleet import Fleet
from setout.plan.cutting.search.kinds import Kind, kinds_of
from setout.plan.cutting.search.layout import used_of
from setout.plan.cutting.search.meter import Meter
from setout.plan.cutting.search.model import Bin, Bound, Budget, Item, Layout, Progress
from setout.plan.cutting.search.squeeze import Squeeze
from setout.plan.cutting.search.trees import Board, kinds_on

Told = Callable[[Progress], None]


def solve(items: Sequence[Item], bins: Sequence[Bin], budget: Budget = Budget(), progress: Told | None = None) -> Layout:
    """A plan of least cost among those found; items that fit no bin, or for which the bins don't suffice, are `missing`."""
    meter = Meter(budget)
    kinds = [kind for kind in kinds_of(items) if any(fits(kind, spec) for spec in bins)]
    search = Search(kinds, bins, bound(items, bins), meter, progress)
    search.run()
    used, laid = used_of(search.boards, kinds, items)
    missing = tuple((i, item.count - laid.get(i, 0)) for i, item in enumerate(items) if item.count > laid.get(i, 0))
    cost = search.fleet.cost(search.boards)
    return Layout(used, missing, cost, search.bound, search.meter.work, search.done)


V = dict(FIRST=10000, THICK=10, DENSE=12, MORE=3.0, LESS=0.5)


class Search:
    """The best plan so far (`boards`, `absent` kinds) and what is needed to better it."""

    def __init__(self, kinds: Sequence[Kind], bins: Sequence[Bin], low: Bound, meter: Meter, progress: Told | None):
        self.kinds = kinds
        self.fleet = Fleet(bins)
        self.bound = low
        self.meter = meter
        self.progress = progress
        self.rng = random.Random(meter.budget.seed)
        self.boards, self.absent = self.first()

    @property
    def done(self) -> bool:
        return not self.absent and self.fleet.cost(self.boards) <= self.bound.cost

    @property
    def dense(self) -> bool:
        return sum(kind.count for kind in self.kinds) / len(self.boards) > V["DENSE"]

    def first(self) -> tuple[list[Board], list[int]]:
        """Large items first, each at the best place, a new bin when there is none."""
        pool = [k for k, kind in enumerate(self.kinds) for _ in range(kind.count)]
        pool.sort(key=lambda k: (-self.kinds[k].area, k))
        boards: list[Board] = []
        absent = []
        laying = self.squeeze([], [])
        for k in pool:
            if laying.recreate(boards, [k]):
                index = next(self.fleet.fitting(boards, self.kinds[k].shapes), None)
                if index is None:
                    absent.append(k)
                else:
                    boards.append(self.fleet.board(index))
                    laying.recreate(boards[-1:], [k])
        return boards, absent

    def squeeze(self, boards: list[Board], absent: list[int]) -> Squeeze:
        return Squeeze(self.kinds, boards, absent, self.rng, self.meter)

    def run(self) -> None:
        if self.absent:
            self.complete()
        if self.absent or self.done or self.meter.spent():
            return
        while self.cheapen(V["FIRST"] * (V["THICK"] if self.dense else 1)) and not self.done:
            pass
        self.columns = Columns(self.kinds, self.fleet, self.rng, self.meter)
        self.columns.see(self.boards)
        self.rounds = 0
        while not self.done and not self.meter.spent():
            self.round()

    def round(self) -> None:
        start = self.meter.work
        self.rounds += 1
        limit = self.fleet.cost(self.boards) - 1
        if len(self.fleet.bins) == 1:
            limit = self.fleet.cost(self.boards) - self.fleet.bins[0].cost
        boards, demand = self.columns.dive(limit, 3)
        cost = self.fleet.cost(boards)
        absent = [k for k, n in enumerate(demand) for _ in range(n)]
        while True:
            index = next((i for i in self.fleet.fitting(boards, self.kinds[0].shapes) if self.fleet.bins[i].cost + cost <= limit), None)
            if index is None:
                break
            boards.append(self.fleet.board(index))
            cost += self.fleet.bins[index].cost
        search = self.squeeze(boards, absent)
        if absent:
            search.absent = search.recreate(boards, absent)
        work = (self.meter.work - start) * (V["MORE"] if self.dense else V["LESS"])
        if search.run(int(work), self.columns.see):
            self.keep(search.boards)
        if len(self.fleet.bins) > 1:
          while self.cheapen(2000, self.columns.see) and not self.done:
            pass

    def complete(self) -> None:
        """Bring the absent in; they are few or the bins don't suffice."""
        search = self.squeeze(self.boards + self.fleet.spares(self.boards, 1 << 60), self.absent)
        search.run(200_000)
        self.boards, self.absent = search.best

    def cheapen(self, work: int, seen=None) -> bool:
        """Do without one board, with spare bins that cost less in its stead."""
        bins = self.fleet.bins
        order = sorted(range(len(self.boards)), key=lambda i: (self.boards[i].area - bins[self.boards[i].bin].cost, i))
        gone = order[int(len(order) * self.rng.random() ** 3)] if len(bins) > 1 else order[0]
        rest = [board for i, board in enumerate(self.boards) if i != gone]
        spares = self.fleet.spares(self.boards, bins[self.boards[gone].bin].cost)
        search = self.squeeze(rest + spares, kinds_on(self.boards[gone]))
        if search.boards and search.run(work, seen):
            self.keep(search.boards)
            return True
        return False

    def keep(self, boards: Sequence[Board]) -> None:
        self.boards = [board for board in boards if board.root is not None]
        if self.progress:
            self.progress(Progress(self.fleet.cost(self.boards), self.bound.cost, self.meter.work, len(self.absent)))
