"""What to be careful of in this job."""

from setout.write.cautions.build import Cautions, build

__all__ = ["Cautions", "build"]
