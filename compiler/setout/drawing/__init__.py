"""Drawings as SVG text: black on white, for paper."""

from setout.drawing.comparing import Front, fronts_alike
from setout.drawing.cutting import sheet, stick
from setout.drawing.exploding import Apart, exploded, exploded_alike
from setout.drawing.fronting import fronts
from setout.drawing.model import Drawing
from setout.drawing.ordering import order_graph
from setout.drawing.piecing import BOTH, Landed, faces_to_draw, piece, trimmed
from setout.drawing.rooming import InRoom, Standing, in_room
from setout.drawing.views import together, view

__all__ = [
    "BOTH",
    "Apart",
    "Drawing",
    "Front",
    "InRoom",
    "Landed",
    "Standing",
    "exploded",
    "exploded_alike",
    "faces_to_draw",
    "fronts",
    "fronts_alike",
    "in_room",
    "order_graph",
    "piece",
    "sheet",
    "stick",
    "together",
    "trimmed",
    "view",
]
