"""The steps, in order."""

from setout.write.build_order.build import BuildOrder, build

__all__ = ["BuildOrder", "build"]
