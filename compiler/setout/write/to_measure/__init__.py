"""Blanks for sizes taken on site."""

from setout.write.to_measure.build import ToMeasure, build

__all__ = ["ToMeasure", "build"]
