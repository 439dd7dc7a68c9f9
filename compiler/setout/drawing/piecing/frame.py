"""Where on the page one view of a board is drawn."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.drawing.ink.svg import Area, Point
from setout.drawing.piecing.laying import Lie
from setout.geometry import Box, Vec

ACROSS = ("top", "bottom")  # sides of the page along which things run left and right
OPPOSITE = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}
INWARD = {"left": (1.0, 0.0), "right": (-1.0, 0.0), "top": (0.0, 1.0), "bottom": (0.0, -1.0)}


@dataclass(frozen=True)
class Frame:
    """The board's lower left corner is drawn at `left`, `base`; `across` and `up` are points an inch."""

    lie: Lie
    across: float
    up: float
    left: float
    base: float

    def at(self, x: Fraction | float, y: Fraction | float) -> Point:
        return self.left + float(x) * self.across, self.base - float(y) * self.up

    def place(self, p: Vec) -> Point:
        return self.at(self.lie.x(p), self.lie.y(p))

    @property
    def area(self) -> Area:
        return Area(*self.at(0, self.lie.high), *self.at(self.lie.wide, 0))

    def of(self, box: Box) -> Area:
        left, low, right, high = self.lie.rect(box)
        return Area(*self.at(left, high), *self.at(right, low))

    def scale_from(self, side: str) -> float:
        """Points an inch at right angles to a side."""
        return self.up if side in ACROSS else self.across

    def room_from(self, side: str) -> float:
        """Points from a side to the one across."""
        return self.area.high if side in ACROSS else self.area.wide

    def line_of(self, side: str) -> float:
        """The side's own coordinate on the page."""
        return getattr(self.area, side)

    def on_edge(self, p: Vec, side: str) -> Point:
        """The point of that side abreast of `p`."""
        x, y = self.place(p)
        return (x, self.line_of(side)) if side in ACROSS else (self.line_of(side), y)
