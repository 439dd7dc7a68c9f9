"""The cutting plan on paper."""

from setout.write.cutting.alike import alike
from setout.write.cutting.build import build
from setout.write.cutting.model import CuttingPages

__all__ = ["CuttingPages", "alike", "build"]
