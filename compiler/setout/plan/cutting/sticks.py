"""One stick stock: the same in one dimension, at the least money for the lengths bought."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from math import lcm

from setout.plan.cutting.result import Planned
from setout.plan.cutting.scale import scale_for
from setout.plan.cutting.search import Budget, Stick, StickLayout, solve_sticks
from setout.plan.cutting.sequence import Blank, Job, Laying
from setout.plan.cutting.sheets import Shop
from setout.plan.cutting.sources import Supply, named
from setout.plan.cutting.wanted import Want
from setout.resolve.model import Stock

NEW = 10**5  # the least money there is counts so much; on hand a length counts FREE at the most, and TOUCHED more
FREE = 1000
TOUCHED = 100


class Sticks:
    """The planning of one stock in whole numbers, steps as in Sheets; wants of one length are one."""

    def __init__(self, stock: Stock, wants: Sequence[Want], supplies: Sequence[Supply], shop: Shop):
        self.stock = stock
        self.wants = wants
        self.supplies = supplies
        self.shop = shop
        self.scale = scale_for([want.a for want in wants] + [s.length for s in supplies], shop.limits.kerf)
        longest = max((s.length for s in supplies), default=Fraction(0))
        self.unfit = [want for want in wants if want.a > longest]
        self.of: dict[Fraction, list[Want]] = {}
        for want in sorted((w for w in wants if w.a <= longest), key=lambda want: (-want.a, -want.b)):
            self.of.setdefault(want.a, []).append(want)
        self.priced = all(s.price is not None for s in supplies)
        self.unit = lcm(*(price.denominator for price in self._prices()))
        self.counts = [(self.scale.grown(a), sum(want.count for want in self.of[a])) for a in self.of]
        self.sticks = [self._stick(s, price) for s, price in zip(self.supplies, self._prices())]
        self.layout = StickLayout((), (), 0, 0, True, 0)

    def solve(self, budget: Budget) -> int:
        if self.counts and self.sticks:
            self.layout = solve_sticks(self.counts, self.sticks, budget)
        return self.layout.work

    def _prices(self) -> list[Fraction]:
        """What each supply counts for money: where no price is said, its length at the price of what has one."""
        known = [s for s in self.supplies if s.price is not None and not s.on_hand]
        per_inch = sum((s.price or 0) / s.length for s in known) / len(known) if known else Fraction(1)
        return [s.price if s.price is not None else s.length * per_inch for s in self.supplies]

    def planned(self) -> Planned:
        lengths, layout = list(self.of), self.layout
        missing: Counter[str] = Counter()
        for i, count in layout.missing:
            for mark in self._marks(lengths[i])[-count:]:
                missing[mark] += 1
        for want in self.unfit:
            missing[want.members[0].mark] += want.count
        money = self._least(layout, self.sticks)
        bought = sum(one.times for one in layout.used if not self.supplies[one.stick].on_hand)
        return Planned(
            self.stock,
            tuple(self._layings(layout, lengths)),
            self._fewest(lengths) if not missing else 0,
            money if self.priced and bought else None,
            tuple(sorted(missing.items())),
            self._more(self.counts, self.sticks, layout),
            self.shop.limits.kerf,
            Fraction(0),
            layout.proven and bool(layout.used) and not missing,
        )

    def _stick(self, supply: Supply, price: Fraction) -> Stick:
        if not supply.on_hand:
            return Stick(self.scale.grown(supply.length), max(1, int(price * self.unit)) * NEW, supply.copies)
        share = supply.length / max(self.stock.lengths)
        return Stick(self.scale.grown(supply.length), TOUCHED + max(1, round(FREE * share)), supply.copies)

    def _least(self, layout: StickLayout, sticks: Sequence[Stick]) -> Fraction:
        """No plan spends less; what is on hand could at best have cost nothing."""
        spare = sum(stick.cost * (stick.copies or 0) for stick, s in zip(sticks, self.supplies) if s.on_hand)
        return Fraction(max(0, -(-(layout.bound - spare) // NEW)), self.unit)

    def _fewest(self, lengths: Sequence[Fraction]) -> int:
        """Sticks to buy by length alone, what is on hand used to the last inch."""
        grown = self.scale.grown
        asked = sum(grown(a) * sum(want.count for want in self.of[a]) for a in lengths)
        asked -= sum(grown(s.length) * (s.copies or 0) for s in self.supplies if s.on_hand)
        longest = max((grown(s.length) for s in self.supplies if not s.on_hand), default=0)
        return max(0, -(-asked // longest)) if longest else 0

    def _more(self, counts: Sequence[tuple[int, int]], sticks: Sequence[Stick], layout: StickLayout) -> int:
        if not layout.missing:
            return 0
        new = [Stick(stick.length, stick.cost) for stick, s in zip(sticks, self.supplies) if not s.on_hand]
        asked = [(counts[i][0], count) for i, count in layout.missing]
        return sum(one.times for one in solve_sticks(asked, new, Budget(work=20_000)).used) if new else 0

    def _marks(self, length: Fraction) -> list[str]:
        return [want.members[0].mark for want in self.of[length] for _ in range(want.count)]

    def _layings(self, layout: StickLayout, lengths: Sequence[Fraction]) -> list[Laying]:
        waiting = {a: [want for want in self.of[a] for _ in range(want.count)] for a in lengths}
        copies: Counter[str] = Counter()
        numbers: Counter[str] = Counter()
        made = []
        for used in sorted(layout.used, key=lambda one: (one.stick, one.lengths)):
            supply = self.supplies[used.stick]
            for _ in range(used.times):
                word = "offcut" if supply.kind == "offcut" else "stick"
                numbers[word] += 1
                parts = tuple(self._blank(waiting[lengths[i]].pop(0), copies) for i in used.lengths)
                job = Job(supply.length, supply.width, "x", parts)
                made.append(Laying(named(supply, self.stock, numbers[word]), job, Fraction(0), self.shop.limits))
        return made

    def _blank(self, want: Want, copies: Counter[str]) -> Blank:
        member = want.members[0]
        copies[member.mark] += 1
        return Blank(member.mark, copies[member.mark], member.a, member.b, False, member.reserved)
