"""What a cutting plan takes: bought, on hand, from the rack; and how sure it is that less will not do."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from setout.plan.cutting.model import Source, StockPlan
from setout.units import Style
from setout.write.facts.sizes import Length, decimal, length


@dataclass(frozen=True)
class Lot:
    """Sources of one size; `sizes` length and width, of sticks the length alone. `price` of one, "" where none is
    said."""

    count: int
    sizes: tuple[Length, ...]
    price: str


@dataclass(frozen=True)
class Supply:
    """One stock's sources. `cost` and `least_cost` "" without a price. `claim`: "nothing" to buy; "fewest", "cheapest"
    (proven; of sticks without a price the least length); "fewer" may do (`least` bounds it); a "cheaper" mix may be
    possible (`least_cost` bounds it); "short": boards are missing; "" when nothing can be said."""

    kind: str
    bought: tuple[Lot, ...]
    on_hand: tuple[Lot, ...]
    offcuts: tuple[Lot, ...]
    count: int
    claim: str
    least: int
    least_cost: str
    cost: str


def supply(plan: StockPlan, style: Style) -> Supply:
    sources = [one.source for one in plan.sources]
    return Supply(
        kind=plan.stock.kind,
        bought=_lots((s for s in sources if not s.on_hand), style),
        on_hand=_lots((s for s in sources if s.on_hand and s.kind != "offcut"), style),
        offcuts=_lots((s for s in sources if s.kind == "offcut"), style),
        count=plan.bought,
        claim=_claim(plan),
        least=plan.bound,
        least_cost=money(plan.bound_cost),
        cost=money(plan.cost),
    )


def money(amount: Fraction | None) -> str:
    return "" if amount is None else decimal(amount, 2)


def _claim(plan: StockPlan) -> str:
    if plan.missing:
        return "short"
    if not plan.bought:
        return "nothing"
    if plan.proven:
        return "fewest" if plan.bought <= plan.bound else "cheapest"
    if plan.bought > plan.bound:
        return "fewer"
    return "cheaper" if plan.bound_cost is not None and plan.cost is not None and plan.bound_cost < plan.cost else ""


def _lots(sources: Iterable[Source], style: Style) -> tuple[Lot, ...]:
    """The largest first."""
    count = Counter((s.length, s.width if s.stock.kind == "sheet" else None, s.price) for s in sources)
    by_size = sorted(count.items(), key=lambda item: (item[0][0], item[0][1] or 0, item[0][2] or 0), reverse=True)
    return tuple(
        Lot(n, tuple(length(v, style) for v in (long, wide) if v is not None), money(price))
        for (long, wide, price), n in by_size
    )
