"""The first sheet of the packet."""

from setout.write.job_sheet.build import JobSheet, build, room_for_view

__all__ = ["JobSheet", "build", "room_for_view"]
