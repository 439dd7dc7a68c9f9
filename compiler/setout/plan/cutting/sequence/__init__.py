"""The cuts of a layout in the order to make them."""

from setout.plan.cutting.sequence.model import Blank, Job
from setout.plan.cutting.sequence.stage import Laying, Worked, worked

__all__ = ["Blank", "Job", "Laying", "Worked", "worked"]
