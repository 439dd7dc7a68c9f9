"""Among plans that cost the same: the one that is better to work by."""

from setout.plan.cutting.polish.score import USUAL, Taste
from setout.plan.cutting.polish.search import fences, polished

__all__ = ["USUAL", "Taste", "fences", "polished"]
