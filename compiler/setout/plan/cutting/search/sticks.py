"""Lengths out of sticks at the least cost, proved where it can be.

Equal lengths are one row of a programme over patterns. Patterns are priced exactly (a bounded knapsack, by capacity
when that is small and by branch and bound when it isn't), so its value rounded up is a bound that no plan beats. Plans
are rounded from it: patterns taken whole, then the most used one, asking again after each; the rest is filled the
best-fitting way. Small jobs that meet the plain bound at once never need it.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable, Sequence
from math import ceil

from setout.plan.cutting.search.knapsack import best_pattern, fullest
from setout.plan.cutting.search.meter import Meter
from setout.plan.cutting.search.model import Budget, Progress, Stick, StickLayout, UsedStick

USUAL = Budget()
Cut = tuple[int, tuple[int, ...]]  # the stick, and the rows cut from it, longest first
EPS = 1e-6


def solve_sticks(
    lengths: Sequence[tuple[int, int]],
    sticks: Sequence[Stick],
    budget: Budget = USUAL,
    progress: Callable[[Progress], None] | None = None,
) -> StickLayout:
    """`lengths` pairs a length with how many of it. What no stick holds, or the sticks don't suffice for, is `missing`.
    """
    meter = Meter(budget)
    longest = max((stick.length for stick in sticks), default=0)
    rows = [(length, count) for length, count in _merged(lengths) if length <= longest]
    search = _Search(rows, sticks, meter, progress)
    if rows:
        search.run()
    used = _with_indexes(search.cuts, rows, lengths)
    laid: Counter[int] = Counter()
    for one in used:
        for i in one.lengths:
            laid[i] += one.times
    missing = tuple((i, count - laid[i]) for i, (_, count) in enumerate(lengths) if count > laid[i])
    cost = sum(sticks[stick].cost for stick, _ in search.cuts)
    return StickLayout(used, missing, cost, search.bound, not missing and cost <= search.bound, meter.work)


def _merged(lengths: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    total: Counter[int] = Counter()
    for length, count in lengths:
        total[length] += count
    return sorted(total.items(), reverse=True)


def _with_indexes(
    cuts: Sequence[Cut], rows: Sequence[tuple[int, int]], lengths: Sequence[tuple[int, int]]
) -> tuple[UsedStick, ...]:
    """Rows stand for lengths that may have been asked for more than once: hand the indexes out in order, then gather
    sticks cut alike."""
    waiting: dict[int, list[int]] = {}
    for i in range(len(lengths) - 1, -1, -1):
        waiting.setdefault(lengths[i][0], []).extend([i] * lengths[i][1])
    found: Counter[tuple] = Counter()
    for stick, pattern in sorted(cuts):
        found[stick, tuple(waiting[rows[row][0]].pop() for row in pattern)] += 1
    return tuple(UsedStick(stick, indexes, times) for (stick, indexes), times in found.items())


class _Search:
    """`cuts` is the best plan so far, `bound` what any plan costs at least."""

    def __init__(self, rows: list[tuple[int, int]], sticks: Sequence[Stick], meter: Meter, progress):
        self.rows = rows
        self.sizes = [length for length, _ in rows]
        self.sticks = sticks
        self.meter = meter
        self.progress = progress
        self.rng = random.Random(meter.budget.seed)
        self.cuts: list[Cut] = []
        self.short = 0
        self.bound = 0
        self.cost: int | None = None

    def run(self) -> None:
        demand = [count for _, count in self.rows]
        self.bound = self.by_length()
        self.keep(*self.filled(demand, []))
        self.keep(*self.topped(demand, []))
        if self.done():
            return
        from setout.plan.cutting.search.stick_master import StickMaster

        master = StickMaster(self.sizes, demand, self.sticks)
        for stick, rows in self.cuts:
            master.add(stick, rows)
        self.bound = max(self.bound, self.relaxed(master, demand, ()))
        while not self.done() and not self.meter.spent():
            self.dive(master, demand)

    def done(self) -> bool:
        return self.cost is not None and not self.short and self.cost <= self.bound

    def by_length(self) -> int:
        """All lengths end to end, bought at the least money for a length."""
        if any(stick.copies is not None for stick in self.sticks):
            return 0
        total = sum(length * count for length, count in self.rows)
        cheapest = min(self.sticks, key=lambda stick: stick.cost / stick.length)
        return -(-total * cheapest.cost // cheapest.length)

    def keep(self, cuts: list[Cut], demand: Sequence[int]) -> None:
        short = sum(length * n for length, n in zip(self.sizes, demand))
        cost = sum(self.sticks[stick].cost for stick, _ in cuts)
        if self.cost is None or (short, cost) < (self.short, self.cost):
            self.cuts, self.short, self.cost = cuts, short, cost
            if self.progress:
                self.progress(Progress(cost, self.bound, self.meter.work, sum(demand)))

    def copies(self, cuts: Sequence[Cut]) -> list[int | None]:
        used = Counter(stick for stick, _ in cuts)
        return [None if s.copies is None else s.copies - used[i] for i, s in enumerate(self.sticks)]

    def filled(self, demand: Sequence[int], cuts: list[Cut]) -> tuple[list[Cut], list[int]]:
        """The longest waiting length where it fits best, a new stick when there is none. Sticks opened are cut down to
        cheaper ones at the end."""
        demand, open_, left = list(demand), [], self.copies(cuts)
        for row, size in enumerate(self.sizes):
            while demand[row]:
                self.meter.work += 1
                fits = [one for one in open_ if one[0] >= size]
                if fits:
                    one = min(fits, key=lambda one: one[0])
                else:
                    stick = self.opened(size, left)
                    if stick is None:
                        break
                    one = [self.sticks[stick].length, stick, []]
                    open_.append(one)
                one[0] -= size
                one[2].append(row)
                demand[row] -= 1
        return cuts + [self.exchanged(one, left) for one in open_], demand

    def opened(self, size: int, left: list[int | None]) -> int | None:
        fits = [i for i, stick in enumerate(self.sticks) if stick.length >= size and left[i] != 0]
        if not fits:
            return None
        stick = min(fits, key=lambda i: (self.sticks[i].cost / self.sticks[i].length, -self.sticks[i].length))
        if left[stick] is not None:
            left[stick] -= 1
        return stick

    def exchanged(self, one: list, left: list[int | None]) -> Cut:
        """The same lengths from the cheapest stick that is long enough."""
        rest, stick, rows = one
        need = self.sticks[stick].length - rest
        for i, other in enumerate(self.sticks):
            if other.length >= need and other.cost < self.sticks[stick].cost and left[i] != 0:
                if left[stick] is not None:
                    left[stick] += 1
                if left[i] is not None:
                    left[i] -= 1
                stick = i
        return stick, tuple(rows)

    def topped(self, demand: Sequence[int], cuts: list[Cut]) -> tuple[list[Cut], list[int]]:
        """Sticks one after the other, each filled as full as it can be with the longest waiting length in it."""
        demand, cuts, left = list(demand), list(cuts), self.copies(cuts)
        while any(demand) and not self.meter.spent():
            first = next(row for row, n in enumerate(demand) if n)
            stick = self.opened(self.sizes[first], left)
            if stick is None:
                break
            demand[first] -= 1
            rest = self.sticks[stick].length - self.sizes[first]
            rows = [first, *fullest(self.sizes, demand, rest, self.meter)]
            for row in rows[1:]:
                demand[row] -= 1
                rest -= self.sizes[row]
            cuts.append(self.exchanged([rest, stick, rows], left))
        return cuts, demand

    def relaxed(self, master, demand: Sequence[int], cuts: Sequence[Cut], rounds: int = 10_000) -> int:
        """Add patterns until none is worth more than it costs; what the rest of the demand costs at least (0 when it
        ended early)."""
        master.ask(demand, self.copies(cuts))
        for _ in range(rounds):
            self.meter.work += len(master.patterns) // 4 + 10
            master.solve()
            new, proved = 0, True
            for i, stick in enumerate(self.sticks):
                added, sure = self.priced(master, i, stick, demand)
                new += added
                proved = proved and sure
            if not new:
                return ceil(master.value - 1e-5) if proved else 0
            if self.meter.spent():
                return 0
        return 0

    def priced(self, master, i: int, stick: Stick, demand: Sequence[int]) -> tuple[int, bool]:
        """Add a few patterns worth more than they cost, no two with a row in common; whether there was none and that is
        sure."""
        worth = stick.cost - master.extra[i]
        price, new, sure = list(master.price), 0, True
        for _ in range(4):
            value, rows, sure = best_pattern(self.sizes, demand, stick.length, price, worth + EPS, self.meter)
            if value <= worth + EPS:
                break
            new += master.add(i, rows)
            for row in rows:
                price[row] = 0.0
        return new, sure

    def dive(self, master, demand: Sequence[int]) -> None:
        """Round one plan: what is taken whole first, then the pattern most used, more or less."""
        demand, cuts, limit = list(demand), [], (self.cost or 0)
        bold = self.rng.choice((0.6, 0.8, 1.0))
        while any(demand) and not self.meter.spent():
            low = self.relaxed(master, demand, cuts, 10_000 if cuts else 0) if cuts else 0
            if not cuts:
                master.ask(demand, self.copies(cuts))
                master.solve()
            if not self.short and sum(self.sticks[s].cost for s, _ in cuts) + low >= limit:
                return
            taken = self.taken(master, demand, self.copies(cuts), bold)
            if not taken:
                break
            cuts += taken
            if sum(demand) <= 40:
                self.keep(*self.filled(demand, cuts))
                self.keep(*self.topped(demand, cuts))
        self.keep(*self.topped(demand, cuts))

    def taken(self, master, demand: list[int], left: list[int | None], bold: float) -> list[Cut]:
        shares = master.shares()
        whole = [(j, int(x + EPS)) for j, x in shares if x > 1 - EPS]
        if not whole and shares:
            rng = self.rng
            most = max(shares, key=lambda share: share[1] * (bold + (2 - bold) * rng.random()))
            whole = [most, *(share for share in shares if share[1] > bold and share != most)]
            whole = [(j, 1) for j, _ in whole]
        cuts: list[Cut] = []
        for j, times in whole:
            stick, rows = master.patterns[j]
            for _ in range(times):
                kept: list[int] = []
                for row in rows if left[stick] != 0 else ():
                    if demand[row]:
                        demand[row] -= 1
                        kept.append(row)
                if kept:
                    if left[stick] is not None:
                        left[stick] -= 1
                    rest = self.sticks[stick].length - sum(self.sizes[row] for row in kept)
                    more = fullest(self.sizes, demand, rest, self.meter) if len(kept) < len(rows) else []
                    for row in more:
                        demand[row] -= 1
                    cuts.append((stick, tuple(sorted(kept + more))))
        return cuts
