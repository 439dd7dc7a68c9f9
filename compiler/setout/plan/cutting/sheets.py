"""One sheet stock: its boards laid on offcuts and sheets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from setout.plan.cutting.polish import Taste, fences, polished
from setout.plan.cutting.polish.score import Rules, Setting
from setout.plan.cutting.result import Planned
from setout.plan.cutting.saws import far_way, fixed_way, guided_way
from setout.plan.cutting.scale import scale_for
from setout.plan.cutting.search import Bin, Budget, Item, Layout, Progress, Region, Used, bound, solve
from setout.plan.cutting.search import Piece as Laid
from setout.plan.cutting.sequence import Blank, Job, Laying, Limits
from setout.plan.cutting.sources import Supply, named
from setout.plan.cutting.wanted import Member, Want
from setout.resolve.model import Stock

NEW = 10**7  # what a new sheet counts; on hand a whole one counts FREE, and everything touched counts TOUCHED more
FREE = 1000
TOUCHED = 100
ALONE = 0.2  # the share of the search kept for a plan on new sheets alone, where there are others


@dataclass(frozen=True)
class Shop:
    """What a stock is planned with. `keep` is the least length and width of a leftover worth keeping."""

    limits: Limits
    keep: tuple[Fraction, Fraction]
    told: Callable[[Progress], None] | None


class Sheets:
    """The planning of one stock in whole numbers: `solve`, then `polish`, then `planned`. The search's x axis is the
    grain's: a source whose grain runs across is laid down turned."""

    def __init__(self, stock: Stock, wants: Sequence[Want], supplies: Sequence[Supply], shop: Shop):
        self.stock = stock
        self.wants = wants
        self.supplies = supplies
        self.shop = shop
        lengths = [n for want in wants for n in (want.a, want.b)] + [n for s in supplies for n in s.usable]
        lengths += [m for want in wants for one in want.members for m in (one.a, one.b)]
        self.scale = scale_for(lengths, shop.limits.kerf)
        self.items = [self._item(want) for want in wants]
        self.bins = [self._bin(rank, supply) for rank, supply in enumerate(supplies)]
        self.fitting = [i for i, item in enumerate(self.items) if any(_fits(item, spec) for spec in self.bins)]
        self.asked = [self.items[i] for i in self.fitting]
        self.layout = Layout((), (), 0, bound([], self.bins), 0, True)
        self.used: tuple[Used, ...] = ()

    def solve(self, budget: Budget) -> int:
        """Everything on the least money; the work it took."""
        if not self.asked:
            return 0
        new = [i for i, supply in enumerate(self.supplies) if not supply.on_hand]
        mixed = 0 < len(new) < len(self.bins)
        self.layout = solve(self.asked, self.bins, _part(budget, 1 - ALONE) if mixed else budget, self.shop.told)
        work = self.layout.work
        if mixed and (other := self._another(new, _part(budget, ALONE))):
            work += other.work
            if _worse(self.layout, other):
                self.layout = replace(other, bound=self.layout.bound, finished=other.cost <= self.layout.bound.cost)
        self.used = self.layout.used
        return work

    def _another(self, new: Sequence[int], budget: Budget) -> Layout | None:
        """A second search: with many kinds of boards to choose from, the first may miss the plan that leaves alone
        what is on hand, or one with fewer new sheets. None where there is neither."""
        best = self.layout
        if best.missing or bound(self.asked, [self.bins[i] for i in new]).cost < best.cost:
            found = solve(self.asked, [self.bins[i] for i in new], budget, self.shop.told)
            return replace(found, used=tuple(replace(used, bin=new[used.bin]) for used in found.used))
        if self._bought(best.used) > self._least():
            return solve(self.asked, self.bins, replace(budget, seed=budget.seed + 1), self.shop.told)
        return None

    def _bought(self, used: Sequence[Used]) -> int:
        return sum(not self.supplies[one.bin].on_hand for one in used)

    def polish(self, budget: Budget, taste: Taste, set_anyway: Iterable[Fraction] = ()) -> frozenset[Fraction]:
        """Better to work by, at no more money. `set_anyway`: fence settings that other stocks need; with those of this
        one."""
        rules = self._rules(set_anyway)
        if self.used:
            self.used = polished(self.used, self.asked, self.bins, rules, budget, taste)
        own = fences(self.used, self.asked, self.bins, rules)
        return frozenset(set_anyway) | {self.scale.bare(n) for n in own}

    def _item(self, want: Want) -> Item:
        a, b = self.scale.grown(want.a), self.scale.grown(want.b)
        width, height = (b, a) if want.grain == "b" else (a, b)
        return Item(width, height, want.count, want.grain is None or self.stock.grain is None)

    def _bin(self, rank: int, supply: Supply) -> Bin:
        x, y = (self.scale.grown(n) for n in supply.usable)
        if supply.grain == "width":
            x, y = y, x
        return Bin(x, y, self._cost(supply), supply.copies, rank)

    def _cost(self, supply: Supply) -> int:
        if not supply.on_hand:
            return NEW
        assert self.stock.long is not None
        share = supply.length * supply.width / (self.stock.long * self.stock.short)
        return TOUCHED + max(1, round(FREE * share))

    def _rules(self, set_anyway: Iterable[Fraction]) -> Rules:
        scale, limits = self.scale, self.shop.limits
        saws, unit = scale.saws(limits.saws), scale.unit
        known_fences = {int(n * unit) + scale.kerf for n in set_anyway if not n * unit % 1}

        def heavy(one: int, other: int) -> bool:
            return limits.heavy(Fraction(one, unit), Fraction(other, unit))

        def set_by(along: int, across: int, size: int, to_stop: bool) -> Setting:
            """As the sequence will have it."""
            guided = guided_way(saws, along, across, size)
            if guided and heavy(along, across):
                return "guide"
            way = fixed_way(saws, along, across, size, to_stop)
            if way:
                return "fence" if way.kind == "rip" else "stop"
            if guided:
                return "guide"
            return "fence" if far_way(saws, along, across, size) else "none"

        long, short = (-(-n.numerator * scale.unit // n.denominator) for n in self.shop.keep)
        return Rules(
            scale.kerf,
            long,
            short,
            max(b.width * b.height for b in self.bins),
            set_by,
            frozenset(known_fences),
        )

    def planned(self) -> Planned:
        unfit = [i for i in range(len(self.items)) if i not in set(self.fitting)]
        absent = [(self.fitting[i], count) for i, count in self.layout.missing]
        missing: Counter[str] = Counter()
        for i, count in [*absent, *((i, self.wants[i].count) for i in unfit)]:
            for member in self.wants[i].members:
                missing[member.mark] += count
        least, bought = self._least(), self._bought(self.used)
        price = next((s.price for s in self.supplies if not s.on_hand), None)
        return Planned(
            self.stock,
            tuple(_Writing(self).layings(self.used)),
            least,
            None if price is None else least * price,
            tuple(sorted(missing.items())),
            self._more(absent),
            self.shop.limits.kerf,
            max((s.trim for s in self.supplies), default=Fraction(0)),
            bool(self.used) and not missing and bought <= least,
        )

    def _least(self) -> int:
        """New sheets that no plan can do without: what is on hand counts nothing then."""
        if not self.asked or self.layout.missing or all(s.on_hand for s in self.supplies):
            return 0
        bins = [replace(spec, cost=0 if s.on_hand else 1) for spec, s in zip(self.bins, self.supplies)]
        spare = sum(spec.cost * (spec.copies or 0) for spec, s in zip(self.bins, self.supplies) if s.on_hand)
        return max(bound(self.asked, bins).cost, -(-(self.layout.bound.cost - spare) // NEW), self._least_by_count())

    def _least_by_count(self) -> int:
        """Of the boards of some area and more, how many find no room on hand, where a board counts as its least area;
        the new sheets they need."""
        found, large, count = 0, [], 0
        for item in sorted(self.asked, key=lambda one: -one.width * one.height):
            least = item.width * item.height
            large.append(item)
            count += item.count
            room = [
                spec.width * spec.height // least if any(_fits(one, spec) for one in large) else 0 for spec in self.bins
            ]
            on_hand = sum(n * (spec.copies or 0) for n, spec, s in zip(room, self.bins, self.supplies) if s.on_hand)
            on_new = max((n for n, s in zip(room, self.supplies) if not s.on_hand), default=0)
            if on_new and count > on_hand:
                found = max(found, -(-(count - on_hand) // on_new))
        return found

    def _more(self, absent: Sequence[tuple[int, int]]) -> int:
        """New sheets, without limit, for what found no place."""
        new = [replace(spec, copies=None) for spec, s in zip(self.bins, self.supplies) if not s.on_hand] or [
            replace(spec, copies=None) for spec, s in zip(self.bins, self.supplies) if s.kind == "sheet"
        ]
        items = [replace(self.items[i], count=count) for i, count in absent]
        return len(solve(items, new[:1], Budget(work=20_000)).used) if items and new else 0


class _Writing:
    """Layouts back to furniture: named sources, exact trees, copies counted."""

    def __init__(self, problem: Sheets):
        self.problem = problem
        self.copies: Counter[str] = Counter()
        self.numbers: Counter[str] = Counter()

    def layings(self, used: Sequence[Used]) -> list[Laying]:
        """In the order of the supplies, the fullest first, those cut alike together."""
        return [self._laying(one) for one in sorted(used, key=self._place)]

    def _place(self, used: Used) -> tuple:
        pieces = list(_pieces(used.root))
        area = sum(p.width * p.height for p in pieces)
        return used.bin, -area, tuple((p.x, p.y, p.width, p.height) for p in pieces)

    def _laying(self, used: Used) -> Laying:
        problem = self.problem
        supply = problem.supplies[used.bin]
        word = "offcut" if supply.kind == "offcut" else "sheet"
        self.numbers[word] += 1
        turned = supply.grain == "width"
        job = self._job(used.root, turned)
        assert isinstance(job, Job)
        return Laying(named(supply, problem.stock, self.numbers[word]), job, supply.trim, problem.shop.limits)

    def _job(self, region: Region | Laid, turned: bool) -> Job | Blank:
        """`turned`: the search's x is the source's y."""
        if isinstance(region, Laid):
            return self._blank(region, turned)
        parts = tuple(self._job(part, turned) for part in region.parts)
        sizes = self.problem.scale.bare(region.width), self.problem.scale.bare(region.height)
        along = region.along if not turned else {"x": "y", "y": "x"}[region.along]
        return Job(*(sizes[::-1] if turned else sizes), along, parts)

    def _blank(self, laid: Laid, turned: bool) -> Job | Blank:
        want = self.problem.wants[self.problem.fitting[laid.item]]
        a_on_x = (want.grain != "b") != laid.turned
        if turned:
            a_on_x = not a_on_x
        if len(want.members) == 1:
            return self._member(want.members[0], a_on_x)
        sizes = (want.a, want.b) if a_on_x else (want.b, want.a)
        return Job(*sizes, "x" if a_on_x else "y", tuple(self._member(one, a_on_x) for one in want.members))

    def _member(self, member: Member, a_on_x: bool) -> Blank:
        self.copies[member.mark] += 1
        sizes = (member.a, member.b) if a_on_x else (member.b, member.a)
        return Blank(member.mark, self.copies[member.mark], *sizes, member.length_on_a != a_on_x, member.reserved)


def _part(budget: Budget, share: float) -> Budget:
    work, seconds = budget.work, budget.seconds
    return replace(
        budget,
        work=None if work is None else max(1, int(work * share)),
        seconds=None if seconds is None else seconds * share,
    )


def _worse(one: Layout, other: Layout) -> bool:
    return (sum(n for _, n in one.missing), one.cost) > (sum(n for _, n in other.missing), other.cost)


def _fits(item: Item, spec: Bin) -> bool:
    straight = item.width <= spec.width and item.height <= spec.height
    return straight or (item.turnable and item.height <= spec.width and item.width <= spec.height)


def _pieces(region: Region | Laid):
    if isinstance(region, Laid):
        yield region
    else:
        for part in region.parts:
            yield from _pieces(part)
