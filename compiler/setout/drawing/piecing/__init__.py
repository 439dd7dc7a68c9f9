"""One piece laid flat, with all its machining."""

from setout.drawing.piecing.drawn import BOTH, piece
from setout.drawing.piecing.landing import Landed
from setout.drawing.piecing.laying import faces_to_draw
from setout.drawing.piecing.trimming import trimmed

__all__ = ["BOTH", "Landed", "faces_to_draw", "piece", "trimmed"]
