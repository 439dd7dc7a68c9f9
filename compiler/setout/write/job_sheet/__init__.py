"""The first sheet of the packet."""

from setout.write.job_sheet.build import JobSheet, build

__all__ = ["JobSheet", "build"]
