"""A sheet or an offcut with its pieces, cuts and leftovers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from setout.drawing.cutting.beside import Narrow, leaders
from setout.drawing.cutting.marking import (
    GRAIN,
    Label,
    Word,
    mark_on,
    places_for_grain,
    rooms_of,
    ways_on,
    words_on,
    words_on_leftover,
)
from setout.drawing.cutting.numbering import Stroke, circles
from setout.drawing.cutting.replay import CutLine, replayed
from setout.drawing.ink import dimension
from setout.drawing.ink.arrows import arrow
from setout.drawing.ink.hatch import hatch
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import FINE_DASHED, HAIR, HATCH, HEAVY, Area, Canvas, Pen
from setout.drawing.model import Drawing
from setout.plan.cutting.model import Laid, Leftover, SourcePlan
from setout.units import Style, say

NAME = 14.0
SLIVER = 7.0  # points; narrower waste is not crossed
INSET = 2.2  # points; how far inside its outline a reserved blank's dashes run
TRIES = 4
ROOMY = 45.0  # points; a board that is wider has room for words somewhere else
DOT = 4.0


def sheet(plan: SourcePlan, style: Style, width: float, height: float, name: str = "") -> Drawing:
    """Everything that becomes of a sheet or offcut, to scale, within `width` x `height` points; its origin lower left.

    `name` stands over it instead of the source's own, where the drawing serves for several.
    """
    wide, high = width - 40, height - 60
    for _ in range(TRIES):
        made = _Sheet(plan, style, max(wide, 60.0), max(high, 20.0)).draw(name or plan.source.id)
        over, tall = made.width - width, made.height - height
        if over <= 0 and tall <= 0:
            break
        wide, high = wide - max(over + 1, 0.0), high - max(tall + 1, 0.0)
    return made


class Small(NamedTuple):
    """A board with little room, and the rooms that each way to write on it takes, the best first."""

    area: Area
    ways: tuple[tuple[Area, ...], ...]


def _small(area: Area, label: Label) -> Small | None:
    """None where words have room somewhere or other, or have none at all."""
    if min(area.wide, area.high) >= ROOMY:
        return None
    ways = tuple(map(rooms_of, ways_on(area, label)))
    return Small(area, ways) if ways else None


class _Sheet:
    """One drawing under way. Page points: x to the right, y down from the board's far edge. `marks`: boards and
    their marks."""

    def __init__(self, plan: SourcePlan, style: Style, wide: float, high: float) -> None:
        self.plan, self.style, self.canvas, self.taken = plan, style, Canvas(), Taken()
        self.scale = min(wide / float(plan.source.length), high / float(plan.source.width))
        self.board = self._area(Fraction(0), Fraction(0), plan.source.length, plan.source.width)
        self.narrow: list[Narrow] = []
        self.marks: list[tuple[Area, Area]] = []
        self.used: list[Area] = []
        every = ((self._area(p.x, p.y, p.length, p.width), self._label(p)) for p in plan.laid)
        self.small = [small for one in every if (small := _small(*one))]

    def draw(self, name: str) -> Drawing:
        self.canvas.area(self.board, HEAVY)
        strokes = [self._cut(line) for line in replayed(self.plan)]
        numbered = circles(self.canvas, strokes, self.board, self.taken, self._harm)
        for laid in sorted(self.plan.laid, key=lambda laid: min(laid.length, laid.width)):
            self._laid(laid)
        for leftover in self.plan.leftovers:
            self._leftover(leftover)
        self._grain()
        pieces = [self._area(p.x, p.y, p.length, p.width) for p in self.plan.laid]
        used = [*numbered.used, *self.used, *_rim(self.board)]
        leaders(self.canvas, self.narrow, numbered.crowds, pieces, used)
        self._sizes()
        self._name(name)
        aside = len(self.narrow) + len(numbered.crowds)
        return replace(self.canvas.finished(f"{name}: what is cut from it"), aside=aside)

    def _harm(self, circle: Area) -> int:
        """What a circle there does to the words of small boards (on others they find room somewhere else): 1 for each
        that would have to move them, 2 for each that had room for them, and has none then."""
        return sum(self._harm_to(small, circle) for small in self.small if small.area.meets(circle))

    def _harm_to(self, small: Small, circle: Area) -> int:
        if not any(room.meets(circle) for room in small.ways[0]):
            return 0
        open_ = [way for way in small.ways if all(map(self.taken.free, way))]
        if not open_:
            return 0
        return 2 if all(any(room.meets(circle) for room in way) for way in open_) else 1

    def _label(self, laid: Laid) -> Label:
        along, up = say(laid.length, self.style), say(laid.width, self.style)
        return Label(laid.mark, along, up, f"{up} × {along}" if laid.turned else f"{along} × {up}")

    def _area(self, x: Fraction, y: Fraction, length: Fraction, width: Fraction) -> Area:
        left, top = float(x) * self.scale, float(self.plan.source.width - y - width) * self.scale
        return Area(left, top, left + float(length) * self.scale, top + float(width) * self.scale)

    def _cut(self, line: CutLine) -> Stroke:
        """A line as wide as the kerf, but never too thin to see."""
        least = 1.3 if line.cut.kind == "break down" else 0.7
        pen = Pen(round(max(float(line.cut.kerf) * self.scale, least), 2))
        at, start, end = (float(v) * self.scale for v in (line.at, line.start, line.end))
        foot, upright = self.board.bottom, line.cut.across == "x"
        a, b = ((at, foot - end), (at, foot - start)) if upright else ((end, foot - at), (start, foot - at))
        self.canvas.line(a, b, pen)
        return Stroke(line.cut.number, upright, a, b)

    def _laid(self, laid: Laid) -> None:
        area = self._area(laid.x, laid.y, laid.length, laid.width)
        if laid.reserved and min(area.wide, area.high) > 3 * INSET:
            area = area.grown(-INSET)
            self.canvas.area(area, FINE_DASHED)
        label = self._label(laid)
        words = words_on(area, label, self.taken.free)
        written = words or mark_on(area, label, self.taken.free)
        self._use_words(written)
        if not words:
            self._aside(area, label._replace(mark="" if written else label.mark))
        if written:
            self.marks.append((area, written[0].area))

    def _leftover(self, leftover: Leftover) -> None:
        """Waste is crossed; what is kept is hatched, with its letter and size."""
        area = self._area(leftover.x, leftover.y, leftover.length, leftover.width)
        if leftover.keep:
            hatch(self.canvas, area, 4.5)
            both = f"{say(leftover.length, self.style)} × {say(leftover.width, self.style)}"
            label = Label(leftover.name, "", "", both)
            words = words_on_leftover(area, label, self.taken.free)
            for word in words:
                self.canvas.mask(word.area.grown(1.5))
            self._write(words, area, label)
        elif min(area.wide, area.high) >= SLIVER:
            self.canvas.line((area.left, area.top), (area.right, area.bottom), HAIR, HATCH)
            self.canvas.line((area.left, area.bottom), (area.right, area.top), HAIR, HATCH)

    def _write(self, words: tuple[Word, ...], area: Area, label: Label) -> None:
        """On the area; beside it, later, when there are no words that fit."""
        if not words:
            self._aside(area, label)
        self._use_words(words)

    def _aside(self, area: Area, label: Label) -> None:
        """A line to it ends off its words, near its middle or at a third of it."""
        x, y = area.middle
        wide, high = (area.wide / 6, 0.0) if area.wide > area.high else (0.0, area.high / 6)
        wanted = [(x + n * wide, y + n * high) for n in (0, -2, 2)]
        found = [self.taken.nearest(at, DOT, DOT, area) for at in wanted]
        self.narrow.append(Narrow(area, label, tuple(free.middle for free in found if free) or (area.middle,)))

    def _use_words(self, words: tuple[Word, ...]) -> None:
        """A line that has to pass them is broken there."""
        for word in words:
            self.canvas.mask(word.area.grown(-1))
            self.canvas.text(word.at, word.words, word.size, bold=word.bold, turned=word.turned)
            self._use(word.area)

    def _use(self, area: Area) -> None:
        self.taken.add(area)
        self.used.append(area)

    def _grain(self) -> None:
        """An arrow on each board that still has room for it."""
        level = self.plan.source.grain == "length"
        for area, mark in self.marks if self.plan.source.grain else ():
            places = places_for_grain(area, mark, level)
            at, room = next(((at, room) for at, room in places if self.taken.free(room.grown(1))), (None, None))
            if at and room:
                arrow(self.canvas, at, (1.0, 0.0) if level else (0.0, 1.0), GRAIN)
                self._use(room)

    def _sizes(self) -> None:
        """The source's own, outside everything else."""
        rim, board, source = self.canvas.bounds, self.board, self.plan.source
        dimension.level(self.canvas, board.left, board.right, rim.bottom + 9, say(source.length, self.style))
        dimension.upright(self.canvas, board.top, board.bottom, rim.left - 9, say(source.width, self.style))

    def _name(self, name: str) -> None:
        """Above everything, at the left; which way the grain runs at the right."""
        top, right = self.canvas.bounds.top - 11, self.board.right
        self.canvas.text((self.board.left, top), name, NAME, anchor="start", bold=True)
        if self.plan.source.grain:
            level = self.plan.source.grain == "length"
            step, long = ((1.0, 0.0), GRAIN) if level else ((0.0, 1.0), NAME)
            arrow(self.canvas, (right - GRAIN / 2, top), step, long)
            self.canvas.text((right - GRAIN - 4, top), "grain", anchor="end")


def _rim(board: Area) -> Iterator[Area]:
    """The board's outline, which no words may wipe out."""
    yield from (board._replace(bottom=board.top).grown(1.5), board._replace(top=board.bottom).grown(1.5))
    yield from (board._replace(right=board.left).grown(1.5), board._replace(left=board.right).grown(1.5))
