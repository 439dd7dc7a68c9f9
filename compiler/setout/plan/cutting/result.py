"""What the planning of one stock hands on, before the cuts of all stocks are put in order."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.plan.cutting.sequence import Laying
from setout.resolve.model import Stock


@dataclass(frozen=True)
class Planned:
    """`missing`, `bound`, `bound_cost` and `proven` as in StockPlan. `more`: new sheets or sticks that would hold what
    is missing (0 when nothing is)."""

    stock: Stock
    layings: tuple[Laying, ...]
    bound: int
    bound_cost: Fraction | None
    missing: tuple[tuple[str, int], ...]
    more: int
    kerf: Fraction
    trim: Fraction
    proven: bool
