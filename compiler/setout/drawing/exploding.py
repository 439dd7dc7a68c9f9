"""One assembly's boards pulled apart, each with its mark."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from setout.drawing.ink.arrows import arrow
from setout.drawing.ink.lettering import LEADING, width, wrapped
from setout.drawing.ink.room import Raster, clearly_best
from setout.drawing.ink.svg import BROKEN, FINE, HAIR, HAIR_DASHED, HEAVY, OUTLINE, OVER, Area, Canvas, Pen, Point
from setout.drawing.model import Drawing
from setout.drawing.solids.oblique import ACROSS, UP, bounds, flat, looked_at, visible
from setout.drawing.solids.solid import P3, Block, Edge, added, block, edges, split, taken_out
from setout.drawing.solids.spreading import Touch, ranks, touching
from setout.geometry import Box
from setout.join.model import JoinedScene
from setout.units import Style, spoken

MARK = 11.0
MOST = 150  # things in one drawing; more could not be told apart
GRAIN = 24.0  # length of the grain arrow, points
HEAVIER = {OUTLINE: Pen(2.0), FINE: HEAVY}
HEAVIER_DASHED = Pen(2.0, (5, 2.5))
MARGIN = 18.0  # kept free round the boards for marks that stand outside
_TOWARD_EYE = (1, 1, -1)  # signs of the faces that are seen: right, top, front


class Item(NamedTuple):
    """A board, or an assembly inside this one drawn as a plain box. `box` is its box between shoulders."""

    label: str
    box: Box
    whole: Block
    gone: tuple[Block, ...]
    grain: int | None
    held: bool
    heavy: bool = False


def exploded(
    scene: JoinedScene, path: str, mark_of: Mapping[str, str], width: float, height: float, style: Style
) -> Drawing:
    """The boards of the assembly at `path` ("" is the job) and, as plain boxes, the assemblies that stand in it."""
    items = _items(scene, path, mark_of)
    title = f"{spoken(path) or 'The job'}, pulled apart"
    canvas = Canvas()
    if not items:
        canvas.text((0, 0), "No boards of its own", anchor="start")
        return canvas.finished(title)
    if len(items) > MOST:
        canvas.text((0, height - 6), f"{len(items) - MOST} more not drawn", anchor="start")
        items = items[:MOST]
    _Apart(items, canvas, width, height).draw()
    return canvas.finished(title)


@dataclass(frozen=True)
class Apart:
    """An assembly to be pulled apart. The boards of the paths `heavy` are drawn with a heavy outline."""

    scene: JoinedScene
    path: str
    mark_of: Mapping[str, str]
    heavy: frozenset[str]


def exploded_alike(sides: Sequence[Apart], rooms: Sequence[tuple[float, float]]) -> tuple[int, tuple[Drawing, ...]]:
    """Several at one scale, in that of the `rooms` (width and height for each) where they come out largest, the first
    unless another shows them clearly larger; which of them that is."""
    known = [_items(side.scene, side.path, side.mark_of, side.heavy)[:MOST] for side in sides]
    drawn = [[_Apart(items, Canvas(), *room) for items in known] for room in rooms]
    scales = [min(one.scale for one in some) for some in drawn]
    best = clearly_best(scales)
    made = []
    for side, one in zip(sides, drawn[best]):
        one.draw(scales[best])
        made.append(one.canvas.finished(f"{spoken(side.path) or 'The job'}, pulled apart"))
    return best, tuple(made)


def _items(
    scene: JoinedScene, path: str, mark_of: Mapping[str, str], heavy: frozenset[str] = frozenset()
) -> list[Item]:
    out = []
    for at, joined in scene.boards.items():
        b = joined.board
        if b.owner == path:
            grain = int(b.grain) if isinstance(b.grain, int) else None
            whole, gone = block(joined.box), tuple(taken_out(joined))
            out.append(Item(mark_of.get(at, b.name), b.box, whole, gone, grain, any(b.held), at in heavy))
    for inner in scene.scene.instances.values():
        if inner.parent == path and inner.path != path:
            outline = _outline(scene, inner.path)
            if outline:
                name = spoken(inner.path[len(path) :].lstrip("."))
                out.append(Item(name, outline, block(outline), (), None, False))
    return out


def _outline(scene: JoinedScene, path: str) -> Box | None:
    """The box round all boards in an assembly and in what stands in it."""
    boxes = [j.board.box for j in scene.boards.values() if f"{j.board.owner}.".startswith(f"{path}.")]
    if not boxes:
        return None
    lo, hi = (
        tuple(pick(getattr(b, end)[k] for b in boxes) for k in range(3)) for end, pick in (("lo", min), ("hi", max))
    )
    return Box(lo, hi)  # type: ignore[arg-type]


class _Apart:
    """One drawing under way. `moves` says how far each item was pulled, in inches."""

    def __init__(self, items: list[Item], canvas: Canvas, width: float, height: float) -> None:
        self.items, self.canvas = items, canvas
        boxes = [i.box for i in items]
        self.touches = touching(boxes)
        self.moves = _moves(boxes, ranks(boxes, self.touches))
        parts = [split(i.whole, i.gone) for i in items]
        self.blocks = [(b.moved(m), n) for n, (part, m) in enumerate(zip(parts, self.moves)) for b in part]
        self.plain = [b for b, _ in self.blocks]
        self.rims = [bounds(b) for b in self.plain]
        left, low = min(r[0] for r in self.rims), min(r[1] for r in self.rims)
        right, high = max(r[2] for r in self.rims), max(r[3] for r in self.rims)
        self.origin = (left, high)
        self.scale = min((width - 2 * MARGIN) / (right - left), (height - 2 * MARGIN) / (high - low))
        self.size = right - left, high - low
        self.planes: dict[tuple[int, str, float], int] = {}

    def at(self, p: P3) -> Point:
        x, y = flat(p)
        return (x - self.origin[0]) * self.scale, (self.origin[1] - y) * self.scale

    def draw(self, scale: float | None = None) -> None:
        """At that scale, or the largest there is room for."""
        self.scale = scale or self.scale
        self.area = Area(-MARGIN, -MARGIN, self.size[0] * self.scale + MARGIN, self.size[1] * self.scale + MARGIN)
        for item, move in zip(self.items, self.moves):
            for edge in edges(item.whole, item.gone):
                pen = _pen(edge, item.held, item.heavy)
                if pen:
                    self._seen_line(added(edge.a, move), added(edge.b, move), pen)
        for touch in self.touches:
            self._pull_lines(touch)
        raster = Raster(self.area, self._planes)
        self._labels(raster)
        self._grain(raster)

    def _seen_line(self, a: P3, b: P3, pen: Pen) -> None:
        for start, end in visible(a, b, self.plain, self.rims):
            self.canvas.line(self.at(_between(a, b, start)), self.at(_between(a, b, end)), pen)

    def _pull_lines(self, touch: Touch) -> None:
        """From the two ends of where a pair met, the way one was pulled off the other."""
        low, high, axis, shared = touch
        apart = [k for k in range(3) if self.moves[low][k] != self.moves[high][k]]
        if apart != [axis]:  # a slanting line would say nothing
            return
        area = block(shared)
        long = max((k for k in range(3) if k != axis), key=lambda k: area.hi[k] - area.lo[k])
        for end in (area.lo, area.hi):
            p = [(x + y) / 2 for x, y in zip(area.lo, area.hi)]
            p[long] = end[long]
            at: P3 = (p[0], p[1], p[2])
            self._seen_line(added(at, self.moves[low]), added(at, self.moves[high]), HAIR_DASHED)

    def _planes(self, xs: list[float], ys: list[float]) -> list[list[int]]:
        """Which flat face is seen at each point of the page; faces are numbered in `planes` as they turn up."""
        rows = looked_at(
            self.blocks, [x / self.scale + self.origin[0] for x in xs], [self.origin[1] - y / self.scale for y in ys]
        )
        return [[-1 if k is None else self.planes.setdefault(k, len(self.planes)) for k in row] for row in rows]

    def _faces_of(self, item: int, raster: Raster) -> list[tuple[int, str]]:
        """The item's seen faces, the largest first: number and word."""
        mine = [(n, word) for (owner, word, _), n in self.planes.items() if owner == item]
        return sorted(mine, key=lambda f: (-raster.count(f[0]), f[0]))

    def _labels(self, raster: Raster) -> None:
        """Marks that fit on their boards first, then the others beside theirs with a line."""
        outside = []
        for n, item in enumerate(self.items):
            words = wrapped(item.label, 110, 3, MARK, True)
            wide, high = max(width(line, MARK, True) for line in words) + 4, MARK * (1 + LEADING * (len(words) - 1)) + 2
            faces = self._faces_of(n, raster)
            area = next(filter(None, (raster.place(face, wide, high) for face, _ in faces)), None)
            if area:
                self._mark(raster, area, words)
            elif faces:
                outside.append((faces[0][0], words, wide, high))
        for face, words, wide, high in outside:
            self._beside(raster, face, words, wide, high)

    def _beside(self, raster: Raster, face: int, words: Sequence[str], wide: float, high: float) -> None:
        end = raster.middle(face)
        area = raster.beside(end, face, wide, high) if end else None
        if end is None or area is None:
            return
        start = area.nearest(end)
        self.canvas.line(start, end, HAIR, OVER)
        self.canvas.circle(end, 1.3, Pen(0), OVER, "black")
        raster.take(Area(*end, *end).grown(5))
        raster.take_line(start, end)
        self._mark(raster, area, words)

    def _mark(self, raster: Raster, area: Area, words: Sequence[str]) -> None:
        self.canvas.mask(area)
        x, y = area.middle
        for n, line in enumerate(words):
            self.canvas.text((x, y + MARK * LEADING * (n - (len(words) - 1) / 2)), line, MARK, bold=True)
        raster.take(area)

    def _grain(self, raster: Raster) -> None:
        """An arrow along the grain on the largest face that shows it, where there is room."""
        for n, item in enumerate(self.items):
            if item.grain is None:
                continue
            step = ((1.0, 0.0), (0.0, -1.0), (0.8, -0.6))[item.grain]
            for face, word in self._faces_of(n, raster):
                if item.grain == {"front": 2, "top": 1, "right": 0}[word]:
                    continue
                area = raster.place(face, abs(step[0]) * GRAIN + 7, abs(step[1]) * GRAIN + 7)
                if area:
                    arrow(self.canvas, area.middle, step, GRAIN)
                    raster.take(area)
                    break


def _pen(edge: Edge, held: bool, heavy: bool = False) -> Pen | None:
    """Outer edges stronger than those between two seen faces; None for edges that turn away."""
    pen: Pen | None = FINE
    if len(edge.empty) == 3:
        u, v = (k for k in range(3) if k != edge.axis)
        (su, sv) = next(q for q in ((-1, -1), (-1, 1), (1, -1), (1, 1)) if q not in edge.empty)
        seen = (-su == _TOWARD_EYE[u]) + (-sv == _TOWARD_EYE[v])
        pen = (None, OUTLINE, FINE)[seen]
    if pen and heavy:
        pen = HEAVIER[pen]
    return BROKEN.get(pen, HEAVIER_DASHED) if pen and held else pen


def _moves(boxes: list[Box], rank: list[tuple[float, float, float]]) -> list[P3]:
    """Ranks times a gap that shows the face behind, without tearing the whole apart."""
    size = [float(max(b.hi[k] for b in boxes) - min(b.lo[k] for b in boxes)) for k in range(3)]
    wants = (ACROSS * size[2] * 1.1, UP * size[2] * 0.8, 0.6 * (size[0] + size[1]) / 2)
    gaps = []
    for k in range(3):
        spread = max(r[k] for r in rank) - min(r[k] for r in rank)
        least, most = 0.12 * max(size), 0.8 * max(size)
        gap = min(max(wants[k], least), most)
        gaps.append(min(gap, 1.6 * max(size) / spread) if spread else 0.0)
    return [(r[0] * gaps[0], r[1] * gaps[1], r[2] * gaps[2]) for r in rank]


def _between(a: P3, b: P3, t: float) -> P3:
    return a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t
