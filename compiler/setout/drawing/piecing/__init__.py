"""One piece laid flat, with all its machining."""

from setout.drawing.piecing.drawn import piece

__all__ = ["piece"]
