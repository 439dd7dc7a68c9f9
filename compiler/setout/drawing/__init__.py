"""Drawings as SVG text: black on white, for paper."""

from setout.drawing.cutting import sheet, stick
from setout.drawing.exploding import exploded
from setout.drawing.model import Drawing
from setout.drawing.ordering import order_graph
from setout.drawing.piecing import piece
from setout.drawing.views import together, view

__all__ = ["Drawing", "exploded", "order_graph", "piece", "sheet", "stick", "together", "view"]
