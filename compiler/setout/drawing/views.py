"""The job seen squarely from the front, the right or above, with its overall sizes."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from itertools import groupby
from typing import NamedTuple

from setout.drawing.ink import dimension
from setout.drawing.ink.hatch import hatch
from setout.drawing.ink.lettering import SMALL, shortened, width
from setout.drawing.ink.room import CELL, Raster
from setout.drawing.ink.svg import BROKEN, FINE, HAIR, HEAVY, LINES, OUTLINE, OVER, Area, Canvas, Pen, Point
from setout.drawing.model import Drawing
from setout.drawing.solids.seen import Face2, Run, Seen
from setout.drawing.solids.solid import Block, without_notches
from setout.geometry import Axis, Face
from setout.join.model import JoinedScene
from setout.units import Style, say, spoken

FOOT = 1.25  # inches; how wide a foot is drawn, for its hardware says only how far it raises
NAME = 11.0
ASIDE, APART = 44.0, 46.0  # points between the front and what is seen beside it and over it
HATCHED = 4.6  # points between the lines of a hatched board
TRIES = 4  # at a scale at which words too find room
TOGETHER = "Seen from the front, from above and from the right side, at one scale"


class Look(NamedTuple):
    """A way of looking: the axes across and up the page, and the face that is turned to the viewer."""

    across: Axis
    up: Axis
    toward: Face
    says: str


LOOKS = {
    "front": Look(Axis.WIDE, Axis.HIGH, Face(Axis.DEEP, -1), "Seen from the front"),
    "side": Look(Axis.DEEP, Axis.HIGH, Face(Axis.WIDE, 1), "Seen from the right side"),
    "top": Look(Axis.WIDE, Axis.DEEP, Face(Axis.HIGH, 1), "Seen from above, front at the bottom"),
}


class Thing(NamedTuple):
    """Something drawn: its blocks, the name it is labelled with (by group), whether its size is still held, and the
    board's path."""

    blocks: tuple[Block, ...]
    group: str
    held: bool
    path: str = ""


def view(
    scene: JoinedScene,
    mark_of: Mapping[str, str],
    side: str,
    width: float,
    height: float,
    style: Style,
    others: Sequence[JoinedScene] = (),
) -> Drawing:
    """The whole job from one side: `side` is "front", "side" (from the right) or "top". `others` are scenes of it for
    other values of its measures: a size that is another in one of them isn't final."""
    look, canvas = LOOKS[side], Canvas()
    things = things_in(scene)
    if not things:
        return _nothing(canvas, look.says)
    sheet = Sheet(scene, things, look, style, others=others)
    sheet.draw(canvas, min((width - 46) / sheet.wide, (height - 40 - sheet.below) / sheet.tall), (0, 0), mark_of)
    return canvas.finished(look.says)


def together(
    scene: JoinedScene,
    mark_of: Mapping[str, str],
    width: float,
    height: float,
    style: Style,
    others: Sequence[JoinedScene] = (),
) -> Drawing:
    """All three at one scale and in line: from above over the front, from the right beside it, so that a rule
    carries across. `others` as in view()."""
    things = things_in(scene)
    if not things:
        return _nothing(Canvas(), TOGETHER)
    front, side, top = (Sheet(scene, things, LOOKS[name], style, others=others) for name in ("front", "side", "top"))
    wide, high = width - 48 - ASIDE, height - 62 - APART
    for _ in range(TRIES):
        scale = min(wide / (front.wide + side.wide), high / (front.tall + top.tall))
        made = _in_line(front, side, top, scale, mark_of).finished(TOGETHER)
        if made.width <= width and made.height <= height:
            break
        wide, high = wide - max(made.width - width, 0) - 1, high - max(made.height - height, 0) - 1
    return made


def _in_line(front: Sheet, side: Sheet, top: Sheet, scale: float, mark_of: Mapping[str, str]) -> Canvas:
    canvas = Canvas()
    right, down = front.wide * scale + ASIDE, top.tall * scale + APART
    top.draw(canvas, scale, (0, 0), mark_of, ("up",))
    front.draw(canvas, scale, (0, down), mark_of)
    side.draw(canvas, scale, (right, down), mark_of, ("across",))
    canvas.text((right - ASIDE + 16, top.tall * scale / 2), "from above", anchor="start")
    canvas.text((right, down - 32), "from the right", anchor="start")
    return canvas


def _nothing(canvas: Canvas, says: str) -> Drawing:
    canvas.text((0, 0), "Nothing is placed", anchor="start")
    return canvas.finished(says)


def things_in(scene: JoinedScene) -> list[Thing]:
    """Boards, then feet. A board of the job itself is a group of its own; others belong to their outermost assembly."""
    out = []
    for path, joined in scene.boards.items():
        group = scene.scene.unit_of[path]
        out.append(Thing(tuple(without_notches(joined)), group, any(joined.board.held), path))
    for fitting in scene.scene.fittings:
        if fitting.hardware.raises > 0:
            blocks = tuple(_foot(p, fitting.hardware.raises, fitting.face) for p in fitting.points)
            out.append(Thing(blocks, "", False))
    return [t for t in out if t.blocks]


def _foot(at: tuple[Fraction, Fraction, Fraction], raises: Fraction, face: Face) -> Block:
    x, y, z = (float(c) for c in at)
    return Block((x - FOOT / 2, y - float(raises), z - FOOT / 2), (x + FOOT / 2, y, z + FOOT / 2))


class Sheet:
    """One view under way. `origin` is the page point of its upper left corner, `wide` and `tall` its extent in
    inches. The boards of the paths `hatched` are. `others` as in view()."""

    def __init__(
        self,
        scene: JoinedScene,
        things: list[Thing],
        look: Look,
        style: Style,
        hatched: frozenset[str] = frozenset(),
        others: Sequence[JoinedScene] = (),
    ) -> None:
        self.scene, self.things, self.look, self.style = scene, things, look, style
        self.scenes = (*others, scene)
        self.hatched = {n for n, thing in enumerate(things) if thing.path in hatched}
        self.seen = Seen(self._faces())
        self.floor = 0.0 if look.up == Axis.HIGH else None
        low = min(self.seen.ys[0], self.floor) if self.floor is not None else self.seen.ys[0]
        self.below = 16.0 if self.floor is not None else 30.0  # room for names where no floor is drawn
        self.low, self.high = low, self.seen.ys[-1]
        self.wide, self.tall = self.seen.xs[-1] - self.seen.xs[0], self.high - self.low

    def _faces(self) -> list[Face2]:
        a, u, toward = self.look.across, self.look.up, self.look.toward
        out = []
        for owner, thing in enumerate(self.things):
            for b in thing.blocks:
                near = -b.hi[toward.axis] if toward.sign > 0 else b.lo[toward.axis]
                out.append(Face2(b.lo[a], b.lo[u], b.hi[a], b.hi[u], near, owner))
        return out

    def at(self, across: float, up: float) -> Point:
        x, y = self.origin
        return x + (across - self.seen.xs[0]) * self.scale, y + (self.high - up) * self.scale

    def draw(
        self,
        canvas: Canvas,
        scale: float,
        origin: Point,
        mark_of: Mapping[str, str],
        sizes: tuple[str, ...] = ("across", "up"),
    ) -> None:
        self.canvas, self.scale, self.origin = canvas, scale, origin
        runs = self.seen.runs()
        nearest = min(f.near for f in self.seen.faces)
        deepest = max(f.near for f in self.seen.faces)
        for run in runs:
            self.canvas.line(self.at(run.x, run.y), self.at(run.x2, run.y2), self._pen(run, nearest, deepest))
        self._hatching()
        self._ground()
        self._sizes(sizes)
        self._names(mark_of)

    def _pen(self, run: Run, nearest: float, deepest: float) -> Pen:
        """Against the open heavy; then by how near the part is: what stands in front stands out."""
        if run.behind < 0:
            pen = HEAVY
        elif run.step == 0:
            pen = FINE
        else:
            pen = OUTLINE if run.near <= nearest + (deepest - nearest) / 4 else FINE
        return BROKEN[pen] if self.things[run.front].held else pen

    def _hatching(self) -> None:
        """Row by row of what is seen, each as far as it is of hatched boards."""
        if not self.hatched:
            return
        rows, columns = len(self.seen.ys) - 1, len(self.seen.xs) - 1
        for row in range(rows):
            lit = [self.seen.owner(row, column) in self.hatched for column in range(columns)]
            for is_lit, some in groupby(range(columns), lit.__getitem__):
                if is_lit:
                    mine = list(some)
                    left, bottom = self.at(self.seen.xs[mine[0]], self.seen.ys[row])
                    right, top = self.at(self.seen.xs[mine[-1] + 1], self.seen.ys[row + 1])
                    hatch(self.canvas, Area(left, top, right, bottom), HATCHED)

    def _ground(self) -> None:
        """The floor, and from the side or above the wall behind when the job stands against it."""
        left, right = self.seen.xs[0], self.seen.xs[-1]
        if self.floor is not None:
            y = self.at(0, self.floor)[1]
            self._solid_ground(self.at(left, 0)[0] - 12, self.at(right, 0)[0] + 12, lambda s, out: (s, y + out))
        room = self.scene.scene.room
        if room is None or _ends(self.scene, Axis.DEEP)[1] != room.hi[Axis.DEEP]:
            return
        wall = float(room.hi[Axis.DEEP])
        if self.look.up == Axis.DEEP:
            y = self.at(0, wall)[1]
            self._solid_ground(self.at(left, 0)[0] - 12, self.at(right, 0)[0] + 12, lambda s, out: (s, y - out))
        if self.look.across == Axis.DEEP:
            x = self.at(wall, 0)[0]
            self._solid_ground(self.at(0, self.high)[1] - 12, self.at(0, self.low)[1], lambda s, out: (x + out, s))

    def _solid_ground(self, start: float, end: float, to: Callable[[float, float], Point]) -> None:
        """A line with short strokes where the floor or wall is; `to` takes a place along it and how far out."""
        self.canvas.line(to(start, 0), to(end, 0), HEAVY)
        for i in range(int((end - start) / 9)):
            self.canvas.line(to(start + 9 * i + 6, 0), to(start + 9 * i + 1, 5), HAIR)

    def _sizes(self, wanted: tuple[str, ...]) -> None:
        left, bottom = self.at(self.seen.xs[0], self.seen.ys[0])
        right, top = self.at(self.seen.xs[-1], self.seen.ys[-1])
        below = self.at(0, self.low)[1] + self.below
        if "across" in wanted:
            dimension.level(self.canvas, left, right, below, self._extent(self.look.across))
        if "up" not in wanted:
            return
        dimension.upright(self.canvas, top, bottom, left - 20, self._extent(self.look.up))
        if self.floor is not None and self.seen.ys[0] > self.floor:
            lift = self._final([_ends(scene, Axis.HIGH)[0] for scene in self.scenes], "")
            dimension.upright(self.canvas, bottom, self.at(0, self.floor)[1], left - 20, lift)

    def _extent(self, axis: Axis) -> str:
        return self._final([high - low for low, high in (_ends(scene, axis) for scene in self.scenes)], f" {axis.word}")

    def _final(self, values: Sequence[Fraction], what: str) -> str:
        """The value in the scene drawn, and whether it is the same in all."""
        return say(values[-1], self.style) + what + (" (not final)" if len(set(values)) > 1 else "")

    def _names(self, mark_of: Mapping[str, str]) -> None:
        """Assemblies by name, the job's own boards by mark; a single assembly needs no telling apart."""
        groups = sorted({t.group for t in self.things if t.group})
        if len(groups) < 2:
            return
        (left, bottom), (right, top) = self.at(self.seen.xs[0], self.low), self.at(self.seen.xs[-1], self.high)
        under = 0.0 if self.floor is not None else self.below - 10
        raster = Raster(Area(left, top - 24, right, bottom + under), self._looked_at)
        beside: dict[str, int] = {}
        for group in groups:
            mine = [i for i, t in enumerate(self.things) if t.group == group]
            mine.sort(key=lambda i: (-raster.count(i), i))
            words = shortened(mark_of.get(group) or spoken(group), 120, NAME, True)
            if raster.count(mine[0]) and not self._on_face(raster, mine, words) and self._is_shown(raster, mine):
                beside.setdefault(words, mine[0])  # of boards alike one is enough
        for words, thing in beside.items():
            self._beside(raster, thing, words)

    def _on_face(self, raster: Raster, mine: list[int], words: str) -> bool:
        """On the first of the group's faces with room for it."""
        for size in (NAME, SMALL):
            areas = (raster.place(i, width(words, size, True) + 4, size + 3) for i in mine)
            area = next(filter(None, areas), None)
            if area:
                if self.hatched.intersection(mine):
                    self.canvas.mask(area, LINES)
                self.canvas.text(area.middle, words, size, bold=True)
                raster.take(area)
                return True
        return False

    def _is_shown(self, raster: Raster, mine: list[int]) -> bool:
        """Whether enough of a group is seen to point at it."""
        whole = sum((f.right - f.left) * (f.high - f.low) for f in self.seen.faces if f.owner in mine)
        seen = sum(raster.count(i) for i in mine) * (CELL / self.scale) ** 2
        return seen > whole / 4

    def _beside(self, raster: Raster, thing: int, words: str) -> None:
        """Next to the thing, with a line to it."""
        end = raster.middle(thing)
        area = raster.beside(end, thing, width(words, NAME, True) + 4, NAME + 3) if end else None
        if end is None or area is None:
            return
        start = area.nearest(end)
        self.canvas.line(start, end, HAIR, OVER)
        self.canvas.circle(end, 1.3, Pen(0), OVER, "black")
        self.canvas.text(area.middle, words, NAME, bold=True)
        raster.take_line(start, end)
        raster.take(area)

    def _looked_at(self, xs: list[float], ys: list[float]) -> list[list[int]]:
        """Which thing is seen at each point of the page."""
        left, top = self.origin
        columns = [bisect_right(self.seen.xs, (x - left) / self.scale + self.seen.xs[0]) - 1 for x in xs]
        rows = [bisect_right(self.seen.ys, self.high - (y - top) / self.scale) - 1 for y in ys]
        return [[self.seen.owner(row, column) for column in columns] for row in rows]


def _ends(scene: JoinedScene, axis: Axis) -> tuple[Fraction, Fraction]:
    """The true outline, exact: boards with banding put on top, and feet where they reach lower."""
    boxes = [b.board.banded for b in scene.boards.values()]
    low, high = min(b.lo[axis] for b in boxes), max(b.hi[axis] for b in boxes)
    if axis == Axis.HIGH:
        feet = [p[1] - f.hardware.raises for f in scene.scene.fittings if f.hardware.raises > 0 for p in f.points]
        low = min([low, *feet])
    return low, high
