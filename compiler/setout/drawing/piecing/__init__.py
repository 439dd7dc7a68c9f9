"""One piece laid flat, with all its machining."""

from setout.drawing.piecing.drawn import BOTH, piece
from setout.drawing.piecing.landing import Landed
from setout.drawing.piecing.laying import faces_to_draw

__all__ = ["BOTH", "Landed", "faces_to_draw", "piece"]
