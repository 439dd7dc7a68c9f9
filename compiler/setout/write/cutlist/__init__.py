"""The cut list for a spreadsheet."""

from setout.write.cutlist.build import COLUMNS, build, harmless

__all__ = ["COLUMNS", "build", "harmless"]
