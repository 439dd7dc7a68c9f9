"""What becomes of boards that are cut already, so that the least of them is lost."""

from setout.compare.reuse.stage import reuse

__all__ = ["reuse"]
