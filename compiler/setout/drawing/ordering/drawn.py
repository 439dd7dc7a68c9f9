"""The build order as boxes and lines, in as many drawings as a readable size asks for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import hypot
from typing import NamedTuple

from setout.drawing.ink.dimension import spread
from setout.drawing.ink.lettering import width, wrapped
from setout.drawing.ink.svg import FINE, OUTLINE, OVER, Area, Canvas, Point
from setout.drawing.model import Drawing
from setout.drawing.ordering.dot import Layout, laid_out
from setout.drawing.ordering.leveling import levelled, reduced, sheets
from setout.plan.order.model import Order, StepId

REACHES = (99, 4, 2, 1)  # levels a line may go down; what is not drawn is said in words
MANY = 30  # steps a drawing
LEAST_LINES, MOST_LINES = 3, 12  # of words in a box
BOX_WIDE = 112.0
LEADING = 10.6
APART = (10.0, 20.0)  # between boxes side by side, and between levels
NUMBER = 11.0


class Pictures(NamedTuple):
    """`longest`: the most lines of words that any of their boxes has."""

    drawings: tuple[Drawing, ...]
    longest: int


class Box(NamedTuple):
    """What a box says. `after`: numbers of the steps it waits for to which no line is drawn."""

    number: int
    words: str
    after: tuple[int, ...]


def order_graph(order: Order, words: Mapping[StepId, str], width: float, height: float) -> tuple[Drawing, ...] | None:
    """Steps in boxes, joined to what they wait for; where no line can be drawn it is said in words.

    Boxes are as high as the longest words need. None when there is no program to lay them out.
    """
    made, lines = _pictures(order, words, LEAST_LINES, width, height), LEAST_LINES
    while made is not None and lines < made.longest <= MOST_LINES:
        lines = made.longest  # a higher box may leave other lines out, and so have more to say
        made = _pictures(order, words, lines, width, height)
    return None if made is None else made.drawings


def _pictures(
    order: Order, words: Mapping[StepId, str], lines: int, width: float, height: float
) -> Pictures | None:
    """With that many lines of words in every box."""
    number = {s.id: n for n, s in enumerate(order.steps)}
    needs = reduced({n: [number[r.after] for r in s.reasons if r.after in number] for n, s in enumerate(order.steps)})
    most = max(1, int((width - 4 + APART[0]) / (BOX_WIDE + APART[0])))
    high = lines * LEADING + 6
    deep = max(1, int((height + APART[1]) / (high + APART[1])))
    parts = sheets(range(len(order.steps)), needs, most, deep, MANY)
    out, longest = [], 0
    for n, part in enumerate(parts, 1):
        layout = _layout(part, needs, most, high, width - 4)
        if layout is None:
            return None
        boxes = {i: _box(order, words, needs, layout, i) for i in part}
        longest = max(longest, *(len(_lines(box)) for box in boxes.values()))
        title = "The order of the steps" if len(parts) == 1 else f"The order of the steps, {n} of {len(parts)}"
        out.append(_drawn(boxes, layout, high).finished(title))
    return Pictures(tuple(out), longest)


def _box(order: Order, words: Mapping[StepId, str], needs: Mapping[int, Sequence[int]], layout: Layout, i: int) -> Box:
    step = order.steps[i]
    after = tuple(order.steps[n].number for n in needs[i] if (n, i) not in layout.edges)
    return Box(step.number, words.get(step.id, f"{step.id.verb} {step.id.target}"), after)


def _layout(
    part: Sequence[int], needs: Mapping[int, Sequence[int]], most: int, high: float, room: float
) -> Layout | None:
    """With as many lines as the page has room for: those that pass the most levels are the first to be left out."""
    layout = None
    levels = levelled(part, needs, most)
    at = {i: n for n, level in enumerate(levels) for i in level}
    for reach in REACHES:
        edges = [(n, i) for i in part for n in needs[i] if n in at and at[i] - at[n] <= reach]
        layout = laid_out(levels, edges, (BOX_WIDE, high), APART)
        if layout is None or layout.width <= room:
            return layout
    return _squeezed(layout, levels, high, room) if layout else None


def _squeezed(layout: Layout, levels: Sequence[Sequence[int]], high: float, room: float) -> Layout:
    """The same order on every level, closer together; lines run straight from level to level."""
    narrower = (room - BOX_WIDE) / (layout.width - BOX_WIDE)
    boxes, step = {}, BOX_WIDE + APART[0]
    for level in levels:
        order = sorted(level, key=lambda i: layout.boxes[i])
        wanted = [BOX_WIDE / 2 + (layout.boxes[i][0] - BOX_WIDE / 2) * narrower for i in order]
        places = spread(wanted, [step] * (len(order) - 1))
        for n, (i, x) in enumerate(zip(order, places)):
            least, most = BOX_WIDE / 2 + n * step, room - BOX_WIDE / 2 - (len(order) - 1 - n) * step
            boxes[i] = (min(max(x, least), most), layout.boxes[i][1])
    edges = {pair: _straight(*(boxes[i] for i in pair), high) for pair in layout.edges}
    return Layout(boxes, edges, room, layout.height)


def _straight(above: Point, below: Point, high: float) -> tuple[Point, Point]:
    """From the foot of one box to the head of the next, leaving and arriving on the side where the other is."""
    half = BOX_WIDE * 0.38
    start = min(max(below[0], above[0] - half), above[0] + half)
    end = min(max(above[0], below[0] - half), below[0] + half)
    return (start, above[1] + high / 2), (end, below[1] - high / 2)


def _drawn(boxes: Mapping[int, Box], layout: Layout, high: float) -> Canvas:
    canvas = Canvas()
    for bends in layout.edges.values():
        canvas.polyline(bends, FINE)
        _head(canvas, bends[-2], bends[-1])
    for i, (x, y) in layout.boxes.items():
        area = Area(x - BOX_WIDE / 2, y - high / 2, x + BOX_WIDE / 2, y + high / 2)
        canvas.area(area, OUTLINE, layer=OVER, blank=True)
        _fill(canvas, area, boxes[i])
    return canvas


def _head(canvas: Canvas, before: Point, tip: Point) -> None:
    dx, dy = tip[0] - before[0], tip[1] - before[1]
    long = hypot(dx, dy) or 1.0
    dx, dy = dx / long, dy / long
    back = (tip[0] - 5.5 * dx, tip[1] - 5.5 * dy)
    canvas.solid([(back[0] - 2 * dy, back[1] + 2 * dx), tip, (back[0] + 2 * dy, back[1] - 2 * dx)])


def _fill(canvas: Canvas, area: Area, box: Box) -> None:
    """The number at the left, the words beside it."""
    wide = _number_wide(box)
    canvas.text((area.left + 5 + wide / 2, area.middle[1]), str(box.number), NUMBER, bold=True)
    start, lines = area.left + wide + 11, _lines(box)
    first = area.middle[1] - LEADING * (len(lines) - 1) / 2
    for n, line in enumerate(lines):
        canvas.text((start, first + LEADING * n), line, anchor="start")


def _lines(box: Box) -> list[str]:
    """What it says beside its number."""
    room = BOX_WIDE - _number_wide(box) - 14
    after = wrapped(f"after {', '.join(map(str, box.after))}", room, MOST_LINES // 2) if box.after else ()
    return [*wrapped(box.words, room, MOST_LINES - len(after)), *after]


def _number_wide(box: Box) -> float:
    return max(width(str(box.number), NUMBER, True), 10.0)
