"""An opening with its drawers, seen from the front: fronts drawn through, boxes dashed, heights from its floor."""

from __future__ import annotations

from fractions import Fraction

from setout.drawing.ink import dimension
from setout.drawing.ink.dimension import Station
from setout.drawing.ink.lettering import SMALL
from setout.drawing.ink.svg import FINE, FINE_DASHED, HEAVY, OUTLINE, Area, Canvas, Pen
from setout.drawing.model import Drawing
from setout.place.model import Drawer, DrawerBank
from setout.units import Style, say

NUMBER = 12.0
BESIDE, AROUND = 110.0, 52.0  # points that numbers take at both sides, and above and below
RAIL = 11.0  # points of a slide that are shown


def fronts(bank: DrawerBank, width: float, height: float, style: Style) -> Drawing:
    """At most `width` and `height` points. Slides' heights stand at the left, the fronts' lower edges at the right."""
    return _Opening(bank, width, height, style).drawn()


class _Opening:
    def __init__(self, bank: DrawerBank, width: float, height: float, style: Style) -> None:
        self.bank, self.style, self.canvas = bank, style, Canvas()
        ends = [(d.front_low, d.front_low + d.front[1]) for d in bank.drawers if d.front and d.front_low is not None]
        self.low = min([Fraction(0), *(low for low, _ in ends)])
        self.high = max([bank.opening[1], *(high for _, high in ends)])
        widest = max([bank.opening[0], *(d.front[0] for d in bank.drawers if d.front)])
        self.over = (widest - bank.opening[0]) / 2
        wide, high = float(widest), float(self.high - self.low)
        self.scale = min((width - BESIDE) / wide, (height - AROUND) / high)

    def drawn(self) -> Drawing:
        self.canvas.area(self._area(self.bank.opening[0], Fraction(0), self.bank.opening[1]), HEAVY)
        for drawer in self.bank.drawers:
            self._box(drawer)
            self._front(drawer)
        self._heights()
        return self.canvas.finished("The opening from the front, with its drawers")

    def _area(self, wide: Fraction, low: Fraction, high: Fraction) -> Area:
        """A rectangle in the middle of the opening, `low` and `high` above its floor."""
        left = float(self.bank.opening[0] - wide) / 2 * self.scale
        return Area(left, self._y(high), left + float(wide) * self.scale, self._y(low))

    def _y(self, up: Fraction) -> float:
        return -float(up) * self.scale

    def _front(self, drawer: Drawer) -> None:
        if drawer.front is None or drawer.front_low is None:
            area = self._box_area(drawer)
        else:
            area = self._area(drawer.front[0], drawer.front_low, drawer.front_low + drawer.front[1])
            self.canvas.area(area, OUTLINE)
        if area is not None:
            self.canvas.text(area.middle, str(drawer.number), min(NUMBER, max(SMALL, area.high - 4)), bold=True)

    def _box_area(self, drawer: Drawer) -> Area | None:
        if drawer.box is None or drawer.box_low is None:
            return None
        return self._area(drawer.box[0], drawer.box_low, drawer.box_low + drawer.box[1])

    def _box(self, drawer: Drawer) -> None:
        area = self._box_area(drawer)
        if area is not None:
            self.canvas.area(area, FINE_DASHED if drawer.front else OUTLINE)
        if drawer.slide is None:
            return
        right, y = float(self.bank.opening[0]) * self.scale, self._y(drawer.slide)
        self.canvas.line((0, y), (RAIL, y), Pen(2.2))
        self.canvas.line((right - RAIL, y), (right, y), Pen(2.2))

    def _heights(self) -> None:
        over = float(self.over) * self.scale
        right = float(self.bank.opening[0]) * self.scale
        slides = [d.slide for d in self.bank.drawers if d.slide is not None]
        lows = [d.front_low for d in self.bank.drawers if d.front is not None and d.front_low is not None]
        tops = [d.front_low + d.front[1] for d in self.bank.drawers if d.front and d.front_low is not None][:1]
        above, below = self._y(self.high) - 16, self._y(self.low) + 18
        for values, edge, start, out, words in (
            (slides, -over, 0.0, -1, "slides"),
            ([*lows, *tops], right + over, right + over, 1, "fronts"),
        ):
            if not values:
                continue
            stations = [Station(self._y(v), start, say(v, self.style)) for v in values]
            dimension.running(self.canvas, stations, edge, out, across=False)
            up, _ = dimension.overhang(stations, self._y(self.high), self._y(self.low))
            anchor = "end" if out < 0 else "start"
            self.canvas.text((edge + out * 6, above - up), words, anchor=anchor)
        dimension.level(self.canvas, 0, right, below, say(self.bank.opening[0], self.style))
        self.canvas.line((0, below - 6), (0, self._y(self.low) + 4), FINE)
        self.canvas.line((right, below - 6), (right, self._y(self.low) + 4), FINE)
