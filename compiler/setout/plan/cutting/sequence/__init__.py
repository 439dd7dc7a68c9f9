"""The cuts of a layout in the order to make them."""

from setout.plan.cutting.sequence.equal import Made, Size, groups, unlike
from setout.plan.cutting.sequence.model import Blank, Job, Laying, Limits
from setout.plan.cutting.sequence.stage import Worked, worked

__all__ = ["Blank", "Job", "Laying", "Limits", "Made", "Size", "Worked", "groups", "unlike", "worked"]
