"""A stick as a bar: lengths to scale, its width not."""

from __future__ import annotations

from fractions import Fraction

from setout.drawing.cutting.beside import Narrow, leaders
from setout.drawing.cutting.marking import Label, words_on_leftover
from setout.drawing.cutting.numbering import Stroke, circles
from setout.drawing.cutting.replay import replayed
from setout.drawing.cutting.sheet import INSET
from setout.drawing.ink.dimension import Station, running
from setout.drawing.ink.hatch import hatch
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import FINE_DASHED, HAIR, HATCH, HEAVY, Area, Canvas, Pen, Point
from setout.drawing.model import Drawing
from setout.plan.cutting.model import SourcePlan
from setout.units import Style, say

HIGH = 24.0  # points; how high every bar is drawn
NAME = 12.0
SIDES = 24.0  # points; what the numbers take beyond the bar's ends


def stick(plan: SourcePlan, style: Style, width: float, longest: Fraction, name: str = "") -> Drawing:
    """A bar at the scale at which a stick `longest` inches long fills `width` points. Numbers below it run from its
    left end.

    `name` as for a sheet.
    """
    return _Bar(plan, style, (width - SIDES) / float(longest)).draw(name or plan.source.id)


class _Bar:
    """One drawing under way: x from the stick's left end, y from the bar's upper edge."""

    def __init__(self, plan: SourcePlan, style: Style, scale: float) -> None:
        self.plan, self.style, self.scale, self.canvas = plan, style, scale, Canvas()
        self.bar = self._area(Fraction(0), plan.source.length)
        self.narrow: list[Narrow] = []
        self.used: list[Area] = []

    def _area(self, x: Fraction, length: Fraction) -> Area:
        return Area(float(x) * self.scale, 0.0, float(x + length) * self.scale, HIGH)

    def draw(self, name: str) -> Drawing:
        self.canvas.area(self.bar, HEAVY)
        lines = replayed(self.plan)
        taken = Taken()
        strokes = [self._cut(float(line.at), float(line.cut.kerf), line.cut.number) for line in lines]
        # the lower side is the numbers': a bar said to reach far below keeps circles above it
        numbered = circles(self.canvas, strokes, self.bar._replace(bottom=10 * HIGH), taken)
        self._boards()
        self._leftovers()
        self._settings([line.cut.at for line in lines])
        solid = [self._area(laid.x, laid.length) for laid in self.plan.laid]
        used = [*numbered.used, *self.used, self.canvas.bounds._replace(top=HIGH)]
        leaders(self.canvas, self.narrow, numbered.crowds, solid, used)
        self.canvas.text((0, self.canvas.bounds.top - 10), name, NAME, anchor="start", bold=True)
        return self.canvas.finished(f"{name}: what is cut from it")

    def _cut(self, at: float, kerf: float, number: int) -> Stroke:
        a: Point = (at * self.scale, 0.0)
        b: Point = (at * self.scale, HIGH)
        self.canvas.line(a, b, Pen(round(max(kerf * self.scale, 0.9), 2)))
        return Stroke(number, True, a, b)

    def _boards(self) -> None:
        for laid in self.plan.laid:
            area = self._area(laid.x, laid.length)
            if laid.reserved and area.wide > 3 * INSET:
                area = area.grown(-INSET)
                self.canvas.area(area, FINE_DASHED)
            long = say(laid.length, self.style)
            label = Label(laid.mark, "", "", long)
            self._write(words_on_leftover(area, label, _anywhere), area, label)

    def _leftovers(self) -> None:
        for leftover in self.plan.leftovers:
            area = self._area(leftover.x, leftover.length)
            long = say(leftover.length, self.style)
            if leftover.keep:
                hatch(self.canvas, area, 4.5)
                label = Label(leftover.name, "", "", long)
                words = words_on_leftover(area, label, _anywhere)
                for word in words:
                    self.canvas.mask(word.area.grown(1.5))
                self._write(words, area, label)
            else:
                self.canvas.line((area.left, area.top), (area.right, area.bottom), HAIR, HATCH)
                self.canvas.line((area.left, area.bottom), (area.right, area.top), HAIR, HATCH)

    def _write(self, words: tuple, area: Area, label: Label) -> None:
        if not words:
            self.narrow.append(Narrow(area, label, (area.middle,)))
        for word in words:
            self.canvas.text(word.at, word.words, word.size, bold=word.bold, turned=word.turned)
            self.used.append(word.area)

    def _settings(self, at: list[Fraction]) -> None:
        """Where each cut begins, from the left end, as a hooked tape reads; the stick's length last."""
        ends = [(x, False) for x in at] + [(self.plan.source.length, True)]
        stations = [Station(float(x) * self.scale, HIGH, say(x, self.style), bold) for x, bold in ends]
        running(self.canvas, stations, HIGH, 1, across=True)


def _anywhere(area: Area) -> bool:
    return True
