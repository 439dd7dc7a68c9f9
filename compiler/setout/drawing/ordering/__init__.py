"""The build order as boxes and lines."""

from setout.drawing.ordering.drawn import order_graph

__all__ = ["order_graph"]
