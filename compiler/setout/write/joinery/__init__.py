"""What to drill and mill."""

from setout.write.joinery.build import Joinery, build

__all__ = ["Joinery", "build"]
