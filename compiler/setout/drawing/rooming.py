"""The job in its room, seen from the front (an elevation of the back wall) or from above (a plan).

Things are outlines with numbers; what must stay clear is dashed with a cross, an obstacle is hatched, studs are broken
lines. Edges are dimensioned from the left wall, from the floor, and in the plan from the back wall.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from setout.drawing.ink import dimension
from setout.drawing.ink.dimension import Station
from setout.drawing.ink.hatch import hatch
from setout.drawing.ink.lettering import SMALL, shortened, width
from setout.drawing.ink.room import Raster
from setout.drawing.ink.svg import FINE, FINE_DASHED, HAIR, HAIR_DASHED, HEAVY, OVER, Area, Canvas, Pen, Point
from setout.drawing.model import Drawing
from setout.drawing.solids.seen import Face2, Seen
from setout.geometry import Axis, Box, Face
from setout.units import Style, say

SIDES, ENDS = 74.0, 88.0  # points round the room that numbers take
NUMBER = 11.0
MOST = 16  # edges dimensioned along one side; with more, the table says them


class Standing(NamedTuple):
    """Something of the job: the words on it (a number in the table), its outline, and which of its faces may still
    move: their numbers stand in brackets."""

    words: str
    box: Box
    moves: frozenset[Face] = frozenset()


class InRoom(NamedTuple):
    """A part of the room: `solid` an obstacle, else to be kept clear."""

    words: str
    box: Box
    solid: bool


def in_room(
    things: Sequence[Standing],
    parts: Sequence[InRoom],
    room: Box,
    studs: Sequence[Fraction],
    side: str,
    wide: float,
    high: float,
    style: Style,
) -> Drawing:
    """`side` is "front" or "top"; `studs` are places on the back wall, from the left one. `room` may begin behind
    the front wall: then its front is drawn as a broken line. At most `wide` and `high` points."""
    made, scale = None, min((wide - SIDES) / float(room.size(0)), (high - ENDS) / float(room.size(_up(side))))
    for _ in range(4):
        made = _Room(things, parts, room, studs, side, scale, style).drawn()
        if made.width <= wide and made.height <= high:
            break
        scale *= min(wide / made.width, high / made.height, 0.97)
    assert made is not None
    return made


def _up(side: str) -> Axis:
    return Axis.DEEP if side == "top" else Axis.HIGH


class _Room:
    def __init__(
        self,
        things: Sequence[Standing],
        parts: Sequence[InRoom],
        room: Box,
        studs: Sequence[Fraction],
        side: str,
        scale: float,
        style: Style,
    ) -> None:
        self.things, self.parts, self.room, self.studs, self.style = things, parts, room, studs, style
        self.up, self.scale, self.canvas = _up(side), scale, Canvas()
        self.wall = self._area(room)
        self.seen = Seen([self._face(n, thing.box) for n, thing in enumerate(things)])

    def drawn(self) -> Drawing:
        left, top, right, bottom = self.wall
        self.canvas.polyline([(left, bottom), (left, top), (right, top), (right, bottom)], HEAVY)
        whole = self.up == Axis.HIGH or self.room.lo[Axis.DEEP] == 0
        self.canvas.line((left, bottom), (right, bottom), HEAVY if whole else FINE_DASHED)
        self._parts()
        self._things()
        self._numbers()
        self._edges()
        from_above = self.up == Axis.DEEP
        return self.canvas.finished("The room from above, back wall at the top" if from_above else "The back wall")

    def _face(self, owner: int, box: Box) -> Face2:
        a, u = Axis.WIDE, self.up
        near = float(box.lo[Axis.DEEP]) if u == Axis.HIGH else -float(box.hi[Axis.HIGH])
        return Face2(float(box.lo[a]), float(box.lo[u]), float(box.hi[a]), float(box.hi[u]), near, owner)

    def _at(self, across: float, up: float) -> Point:
        return (across - float(self.room.lo[0])) * self.scale, (float(self.room.hi[self.up]) - up) * self.scale

    def _area(self, box: Box) -> Area:
        left, low = self._at(float(box.lo[0]), float(box.lo[self.up]))
        right, top = self._at(float(box.hi[0]), float(box.hi[self.up]))
        return Area(left, top, right, low)

    def _things(self) -> None:
        for thing in self.things:
            self.canvas.mask(self._area(thing.box))
        for run in self.seen.runs():
            pen = Pen(1.1) if run.behind < 0 else FINE
            self.canvas.line(self._at(run.x, run.y), self._at(run.x2, run.y2), pen, OVER)

    def _parts(self) -> None:
        for part in self.parts:
            area = self._area(part.box)
            if part.solid:
                hatch(self.canvas, area)
                self.canvas.area(area, FINE)
                continue
            self.canvas.area(area, FINE_DASHED)
            self.canvas.line((area.left, area.top), (area.right, area.bottom), HAIR_DASHED)
            self.canvas.line((area.left, area.bottom), (area.right, area.top), HAIR_DASHED)
        if self.up == Axis.HIGH:
            for stud in self.studs:
                x, _ = self._at(float(stud), 0)
                self.canvas.line((x, self.wall.top), (x, self.wall.bottom), HAIR_DASHED)

    def _numbers(self) -> None:
        """On the thing where there is room, else beside it with a line; the room's parts by name."""
        raster = Raster(self.wall.grown(-2), self._looked_at)
        late = []
        for n, thing in enumerate(self.things):
            area = raster.place(n, width(thing.words, NUMBER, True) + 4, NUMBER + 2)
            if area is None:
                late.append(n)
                continue
            self.canvas.text(area.middle, thing.words, NUMBER, bold=True)
            raster.take(area)
        for part in self.parts:
            area = self._area(part.box)
            if part.solid and area.wide < width(part.words) + 8:
                raster.take(area)
        for n in late:
            self._beside(raster, n)
        for part in self.parts:
            self._name(raster, part)

    def _name(self, raster: Raster, part: InRoom) -> None:
        words = shortened(part.words, 130, SMALL, False)
        end = self._area(part.box).middle
        area = raster.place(-1, width(words) + 6, SMALL + 3, end) or raster.beside(end, -1, width(words) + 6, SMALL + 3)
        if area is None:
            return
        self.canvas.mask(area)
        self.canvas.text(area.middle, words)
        raster.take(area)

    def _beside(self, raster: Raster, n: int) -> None:
        words, end = self.things[n].words, raster.middle(n) or self._glimpse(n)
        if end is None:
            return
        area = raster.beside(end, n, width(words, NUMBER, True) + 4, NUMBER + 2)
        if area is None:
            return
        self.canvas.mask(area.grown(-1))
        start = area.nearest(end)
        self.canvas.line(start, end, HAIR, OVER)
        self.canvas.circle(end, 1.3, Pen(0), OVER, "black")
        self.canvas.text(area.middle, words, NUMBER, bold=True)
        raster.take_line(start, end)
        raster.take(area)

    def _glimpse(self, n: int) -> Point | None:
        """The middle of the largest bit seen of something too thin for the raster."""
        xs, ys = self.seen.xs, self.seen.ys
        cells = [
            ((xs[i + 1] - xs[i]) * (ys[j + 1] - ys[j]), i, j)
            for j in range(len(ys) - 1)
            for i in range(len(xs) - 1)
            if self.seen.owner(j, i) == n
        ]
        if not cells:
            return None
        _, i, j = max(cells)
        return self._at((xs[i] + xs[i + 1]) / 2, (ys[j] + ys[j + 1]) / 2)

    def _looked_at(self, xs: list[float], ys: list[float]) -> list[list[int]]:
        left, top = float(self.room.lo[0]), float(self.room.hi[self.up])
        columns = [bisect_right(self.seen.xs, x / self.scale + left) - 1 for x in xs]
        rows = [bisect_right(self.seen.ys, top - y / self.scale) - 1 for y in ys]
        return [[self.seen.owner(row, column) for column in columns] for row in rows]

    def _edges(self) -> None:
        """From the left wall below, from the floor (or the back wall) at the right; studs above."""
        wall, across = self.wall, self._ends(Axis.WIDE)
        said = {v: self._maybe(self._from_left(v), Axis.WIDE, v) for v in across}
        stations = [Station(self._at(float(v), 0)[0], wall.bottom, said[v]) for v in across]
        if stations:
            dimension.running(self.canvas, stations, wall.bottom, 1, across=True)
        up = self._ends(self.up)
        said = {v: self._maybe(self._from_datum(v), self.up, v) for v in up}
        stations = [Station(self._at(0, float(v))[1], wall.right, said[v]) for v in up]
        if stations:
            dimension.running(self.canvas, stations, wall.right, 1, across=False)
        if self.up == Axis.HIGH and self.studs:
            stations = [Station(self._at(float(s), 0)[0], wall.top, self._from_left(s)) for s in self.studs]
            dimension.running(self.canvas, stations, wall.top, -1, across=True)

    def _ends(self, axis: Axis) -> list[Fraction]:
        """Edges within the room, the walls' own left out; none where there are too many to read."""
        found = {end for thing in self.things for end in (thing.box.lo[axis], thing.box.hi[axis])}
        inside = sorted(v for v in found if self.room.lo[axis] < v < self.room.hi[axis])
        return inside if len(inside) <= MOST else []

    def _maybe(self, words: str, axis: Axis, value: Fraction) -> str:
        moves = any(thing.box.face(face) == value for thing in self.things for face in thing.moves if face.axis == axis)
        return f"({words})" if moves else words

    def _from_left(self, value: Fraction) -> str:
        return say(value - self.room.lo[0], self.style)

    def _from_datum(self, value: Fraction) -> str:
        if self.up == Axis.DEEP:
            return say(self.room.hi[self.up] - value, self.style)
        return say(value - self.room.lo[self.up], self.style)
