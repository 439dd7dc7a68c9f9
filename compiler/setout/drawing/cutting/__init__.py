"""A board of material with what is cut from it, to scale."""

from setout.drawing.cutting.sheet import sheet
from setout.drawing.cutting.stick import stick

__all__ = ["sheet", "stick"]
