"""Drawings as SVG text: black on white, for paper."""

from setout.drawing.cutting import sheet, stick
from setout.drawing.exploding import exploded
from setout.drawing.fronting import fronts
from setout.drawing.model import Drawing
from setout.drawing.ordering import order_graph
from setout.drawing.piecing import BOTH, Landed, faces_to_draw, piece
from setout.drawing.rooming import InRoom, Standing, in_room
from setout.drawing.views import together, view

__all__ = [
    "BOTH",
    "Drawing",
    "InRoom",
    "Landed",
    "Standing",
    "exploded",
    "faces_to_draw",
    "fronts",
    "in_room",
    "order_graph",
    "piece",
    "sheet",
    "stick",
    "together",
    "view",
]
