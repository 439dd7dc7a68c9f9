"""Among plans that cost the same: the one that is better to work by."""

from setout.plan.cutting.polish.score import Taste
from setout.plan.cutting.polish.search import fences, polished

__all__ = ["Taste", "fences", "polished"]
