"""Whether items have so little area to spare that they must be laid without waste, and on which boards."""

from __future__ import annotations

from collections.abc import Sequence

from setout.plan.cutting.search.fleet import Fleet
from setout.plan.cutting.search.kinds import Kind

SPARE = 500  # at most one part in so many of the boards' area is left over
MOST_BOARDS = 40
Stock = tuple[int, tuple[int, int]]  # a bin's index, its size


def tight(kinds: Sequence[Kind], fleet: Fleet, least: int, limit: int | None) -> tuple[list[Stock], int] | None:
    """The boards of least money for their area that just suffice, and the area to spare on them; None when there is
    more to spare, when they cost less than `least` (no plan does) or more than `limit`, or when items must keep
    together."""
    if any(any(kind.strips) for kind in kinds):
        return None
    need = sum(kind.area * kind.count for kind in kinds)
    stocks: list[Stock] = []
    area = cost = 0
    for index in fleet.order:
        spec = fleet.bins[index]
        size = spec.width * spec.height
        many = -(-max(0, need - area) // size)
        many = many if spec.copies is None else min(many, spec.copies)
        cost += many * spec.cost
        area += many * size
        if (limit is not None and cost > limit) or len(stocks) + many > MOST_BOARDS:
            return None
        stocks += [(index, (spec.width, spec.height))] * many
    return (stocks, area - need) if cost >= least and 0 <= (area - need) * SPARE <= area else None
