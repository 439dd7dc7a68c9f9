"""One piece laid flat, with all its machining."""

from setout.drawing.piecing.drawn import piece
from setout.drawing.piecing.trimming import trimmed

__all__ = ["piece", "trimmed"]
