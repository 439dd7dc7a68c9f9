"""Which board comes out of which sheet, offcut or stick, and the cuts in the order to make them."""

from setout.plan.cutting.checks import larger_than_usable
from setout.plan.cutting.model import Cut, Cutting, Falls, Laid, Leftover, Setting, Source, SourcePlan, StockPlan
from setout.plan.cutting.rack import rack_text
from setout.plan.cutting.search import Budget
from setout.plan.cutting.stage import DEFAULT, Told, cutting

__all__ = [
    "DEFAULT",
    "Budget",
    "Cut",
    "Cutting",
    "Falls",
    "Laid",
    "Leftover",
    "Setting",
    "Source",
    "SourcePlan",
    "StockPlan",
    "Told",
    "cutting",
    "larger_than_usable",
    "rack_text",
]
