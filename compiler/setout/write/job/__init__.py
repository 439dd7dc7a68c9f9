"""The plan for other programs, with its schema."""

from setout.write.job.build import VERSION, Job, build

__all__ = ["VERSION", "Job", "build"]
