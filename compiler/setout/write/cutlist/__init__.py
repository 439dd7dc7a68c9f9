"""The cut list for a spreadsheet."""

from setout.write.cutlist.build import COLUMNS, build

__all__ = ["COLUMNS", "build"]
