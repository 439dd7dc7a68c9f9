"""Items on bins at the least cost: a first plan, then searches in turns until the bound is met or the budget spent."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence

from setout.plan.cutting.search.bounds import bound, fits
from setout.plan.cutting.search.columns import Columns
from setout.plan.cutting.search.fleet import Fleet
from setout.plan.cutting.search.full import Full, tight
from setout.plan.cutting.search.kinds import Kind, kinds_of
from setout.plan.cutting.search.layout import used_of
from setout.plan.cutting.search.meter import Meter
from setout.plan.cutting.search.model import Bin, Bound, Budget, Item, Layout, Progress
from setout.plan.cutting.search.places import put
from setout.plan.cutting.search.squeeze import Squeeze
from setout.plan.cutting.search.trees import Board, kinds_on

USUAL = Budget()
Told = Callable[[Progress], None]
FIRST = 10_000  # work of the first tries to do without a board
MANY = 12  # items on a board from which on ...
LONGER = 60  # ... the first tries are so much longer, for then patterns help little
MOST = 40_000
NEAR = 0.15  # up to this share of a board may be squeezed in among boards of few items ...
CLOSE, FAR = 20_000, 5_000  # ... and the work it's worth, and where there is more to squeeze in
SHARE_OF_MANY = 3.0  # work of squeezing a plan rounded from patterns, against the work of rounding it
SWAP, TRIES = 2_000, 10  # work of a try to do with cheaper bins, and how many tries without success
BRIMFUL, ONE = 400_000, 4_000_000  # work of a turn at filling boards without waste, and one board alone
LAST = 200_000  # work of bringing in what found no place on limited bins


def solve(
    items: Sequence[Item],
    bins: Sequence[Bin],
    budget: Budget = USUAL,
    progress: Told | None = None,
) -> Layout:
    """A plan of least cost among those found. Items that fit no bin, or for which the bins don't suffice, are
    `missing`.
    """
    meter = Meter(budget)
    kinds = [kind for kind in kinds_of(items) if any(fits(kind, spec) for spec in bins)]
    search = Search(kinds, bins, bound(items, bins), meter, progress)
    search.run()
    used, laid = used_of(search.boards, kinds, items)
    missing = tuple((i, item.count - laid.get(i, 0)) for i, item in enumerate(items) if item.count > laid.get(i, 0))
    return Layout(used, missing, search.fleet.cost(search.boards), search.bound, meter.work, search.done)


class Search:
    """The best plan so far (`boards`, `absent` kinds) and what is needed to better it."""

    def __init__(self, kinds: Sequence[Kind], bins: Sequence[Bin], low: Bound, meter: Meter, progress: Told | None):
        self.kinds = kinds
        self.fleet = Fleet(bins)
        self.bound = low
        self.meter = meter
        self.progress = progress
        self.rng = random.Random(meter.budget.seed)
        self.columns: Columns | None = None
        self.full: Full | None = None
        self.boards, self.absent = self.first()

    @property
    def done(self) -> bool:
        return not self.absent and self.fleet.cost(self.boards) <= self.bound.cost

    def first(self) -> tuple[list[Board], list[int]]:
        """Large items first, each at the best place, a new bin when there is none."""
        boards: list[Board] = []
        absent: list[int] = []
        for k in sorted(range(len(self.kinds)), key=lambda k: (-self.kinds[k].area, k)):
            absent += self.laid(k, boards)
        return boards, absent

    def laid(self, k: int, boards: list[Board]) -> list[int]:
        """Lay all of one kind; what finds no place. A board that has no place for it keeps having none, so it's
        looked at once."""
        kind = self.kinds[k]
        laying = self.squeeze([], [])
        places = [(*laying.best_place([board], k)[:2], board) for board in boards]
        places = [found for found in places if found[1] is not None]
        for n in range(kind.count):
            if not places:
                index = next(self.fleet.fitting(boards, kind.shapes), None)
                if index is None:
                    return [k] * (kind.count - n)
                boards.append(self.fleet.board(index))
                places = [(*laying.best_place(boards[-1:], k)[:2], boards[-1])]
            best = max(range(len(places)), key=lambda i: places[i][0])
            _, place, board = places[best]
            put(board, k, place)
            again = laying.best_place([board], k)[:2]
            if again[1] is None:
                del places[best]
            else:
                places[best] = (*again, board)
        return []

    def squeeze(self, boards: list[Board], absent: list[int]) -> Squeeze:
        return Squeeze(self.kinds, boards, absent, self.rng, self.meter)

    def run(self) -> None:
        if self.absent:
            self.complete()
        if self.absent:
            self.brimful()
        if self.absent or self.done or self.meter.spent():
            return
        limit = self.meter.work + 10 * FIRST
        while self.meter.work < limit and not self.done and self.cheapen(FIRST):
            pass
        if len(self.fleet.bins) > 1:
            self.exchange()
        self.brimful()
        while self.many and len(self.fleet.bins) == 1 and not self.done and self.afresh(FIRST * LONGER):
            pass
        if not self.done and not self.meter.spent():
            self.columns = Columns(self.kinds, self.fleet, self.rng, self.meter)
            self.columns.see(self.boards)
        while not self.done and not self.meter.spent():
            if self.full and self.brimful():
                continue
            if not (self.many and len(self.fleet.bins) == 1 and self.afresh(FIRST * LONGER)):
                self.round()

    def brimful(self) -> bool:
        """Fill boards without waste when there is next to no area to spare, or find that it can't be done."""
        if self.done or self.meter.spent():
            return False
        if self.full is None:
            limit = None if self.absent else self.fleet.cost(self.boards) - self.step
            found = tight(self.kinds, self.fleet, self.bound.cost, limit)
            if found is None:
                return False
            self.full = Full(self.kinds, *found, self.rng, self.meter)
        boards = self.full.run(ONE if len(self.full.stocks) == 1 else BRIMFUL)
        if boards is not None:
            self.absent = []
            self.keep(boards)
        elif self.full.impossible and not self.absent and len(self.fleet.bins) == 1:
            bins = len(self.full.stocks) + 1
            self.bound = Bound(bins, bins * self.fleet.bins[0].cost)
        return boards is not None

    def round(self) -> None:
        """Round a cheaper plan from patterns, squeeze in what it leaves out, and try cheaper bins."""
        start = self.meter.work
        limit = self.fleet.cost(self.boards) - self.step
        boards, absent = self.rounded(limit)
        search = self.squeeze(boards, absent)
        if search.run(self.patience(self.meter.work - start, boards, absent), self.columns.see):
            self.keep(search.boards)
        if len(self.fleet.bins) > 1 and not self.done:
            self.exchange()

    def patience(self, rounding: int, boards: Sequence[Board], absent: Sequence[int]) -> int:
        """The work of squeezing in what a plan rounded from patterns leaves out. Where a board holds few items only
        little can be squeezed in, and another plan is the better try."""
        if self.many:
            return int(rounding * SHARE_OF_MANY)
        if len(self.fleet.bins) == 1:
            area = sum(self.kinds[k].area for k in absent)
            return CLOSE if area < NEAR * boards[0].size[0] * boards[0].size[1] else FAR
        return MOST if any(board.root for board in boards) else FIRST

    def exchange(self) -> None:
        """Try other bins a while, longer after every success."""
        tries, limit = TRIES, self.meter.work + SWAP * 4 * TRIES
        while tries > 0 and self.meter.work < limit and not self.done and not self.meter.spent():
            act = self.swap if self.rng.random() < 0.8 else self.cheapen
            tries += TRIES // 2 if act(SWAP, self.columns.see if self.columns else None) else -1

    @property
    def step(self) -> int:
        """The least by which a cheaper plan is cheaper."""
        return self.fleet.bins[0].cost if len(self.fleet.bins) == 1 else 1

    @property
    def many(self) -> bool:
        return sum(kind.count for kind in self.kinds) > MANY * len(self.boards)

    def rounded(self, limit: int) -> tuple[list[Board], list[int]]:
        """A plan that costs no more than `limit`, with empty boards as far as the money goes, and what is absent from
        it.
        """
        boards, demand = self.columns.dive(limit, self.bound.cost)
        absent = [k for k, n in enumerate(demand) for _ in range(n)]
        money = limit - self.fleet.cost(boards)
        for k in absent:
            index = next(
                (i for i in self.fleet.fitting(boards, self.kinds[k].shapes) if self.fleet.bins[i].cost <= money), None
            )
            if index is None:
                break
            boards.append(self.fleet.board(index))
            money -= self.fleet.bins[index].cost
        if absent:
            absent = self.squeeze(boards, absent).recreate(boards, absent)
        return boards, absent

    def complete(self) -> None:
        """Bring the absent in; they are few or the bins don't suffice."""
        search = self.squeeze(self.boards + self.fleet.spares(self.boards, 1 << 60), self.absent)
        if search.boards:
            search.run(LAST)
            boards, self.absent = search.best
            self.keep(boards)

    def cheapen(self, work: int, seen: Callable[[list[Board]], None] | None = None) -> bool:
        """Do without one board, with spare bins that cost less in its stead."""
        bins = self.fleet.bins
        order = sorted(range(len(self.boards)), key=lambda i: (self.boards[i].area - bins[self.boards[i].bin].cost, i))
        gone = order[int(len(order) * self.rng.random() ** 3)] if len(bins) > 1 else order[0]
        rest = [board for i, board in enumerate(self.boards) if i != gone]
        spares = self.fleet.spares(rest, bins[self.boards[gone].bin].cost)
        return self.tried(rest + spares, kinds_on(self.boards[gone]), work, seen)

    def swap(self, work: int, seen: Callable[[list[Board]], None] | None = None) -> bool:
        """Put other bins that cost less in the place of one board or a few."""
        for _ in range(20):
            gone = set(
                self.rng.sample(range(len(self.boards)), min(len(self.boards), self.rng.choice((1, 1, 2, 2, 3, 4))))
            )
            rest = [board for i, board in enumerate(self.boards) if i not in gone]
            old = [self.boards[i] for i in sorted(gone)]
            slack = sum(board.size[0] * board.size[1] - board.area for board in rest)
            need = sum(board.area for board in old) - slack
            new = self.fleet.cheaper(rest, self.fleet.cost(old) - self.step, need, self.rng)
            if new:
                return self.tried(rest + new, [k for board in old for k in kinds_on(board)], work, seen)
        return False

    def tried(self, boards: list[Board], pool: list[int], work: int, seen: Callable | None) -> bool:
        """Lay the pool on the empty ones of these boards, then squeeze; kept when nothing is absent."""
        if not boards:
            return False
        self.meter.work += len(boards)
        search = self.squeeze(boards, [])
        empty = [board for board in boards if board.root is None]
        search.absent = search.recreate(empty, pool)
        search.best = (list(boards), search.absent)
        if not search.run(work, seen):
            return False
        self.keep(search.boards)
        return True

    def afresh(self, work: int) -> bool:
        """Lay everything anew on one board less."""
        boards = [self.fleet.board(0) for _ in self.boards[1:]]
        search = self.squeeze(boards, [])
        search.absent = search.recreate(boards, [k for k, kind in enumerate(self.kinds) for _ in range(kind.count)])
        search.best = (boards, search.absent)
        if search.run(work):
            self.keep(search.boards)
            return True
        return False

    def keep(self, boards: Sequence[Board]) -> None:
        self.boards = [board for board in boards if board.root is not None]
        if self.progress:
            self.progress(Progress(self.fleet.cost(self.boards), self.bound.cost, self.meter.work, len(self.absent)))
