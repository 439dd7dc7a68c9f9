"""The cut list on paper."""

from setout.write.pieces.build import Pieces, build

__all__ = ["Pieces", "build"]
