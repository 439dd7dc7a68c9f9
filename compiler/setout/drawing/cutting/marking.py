"""What is written on a piece: its mark large, its sizes along two edges; in less room, less."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from setout.drawing.ink.lettering import SMALL, width
from setout.drawing.ink.svg import Area, Point, text_area

LARGE = (22.0, 18.0, 15.0, 12.0)  # sizes of a mark with room round it
TIGHT = (12.0, 11.0, 10.0, SMALL)
AIR = 1.5  # least room between words and a board's edge
GRAIN = 22.0  # length of the grain arrow
_IN = 7.5  # how far in from its edge a size stands
_GAP = 5.0


class Word(NamedTuple):
    """Words and how they stand, as Canvas.text takes them."""

    at: Point
    words: str
    size: float
    bold: bool
    turned: bool = False

    @property
    def area(self) -> Area:
        return text_area(self.at, self.words, self.size, bold=self.bold, turned=self.turned)


class Label(NamedTuple):
    """`along` is the size along the page's width, `up` the other; `both` as one says them."""

    mark: str
    along: str
    up: str
    both: str


def words_on(area: Area, label: Label) -> tuple[Word, ...]:
    """The most that the area has room for: everything, all in one line, or the mark alone; () when not even that."""
    return _full(area, label) or _one_line(area, label) or _mark_alone(area, label)


def words_on_leftover(area: Area, label: Label) -> tuple[Word, ...]:
    """Its letter and under it its size, or both in a line, or the letter alone."""
    x, y = area.middle
    both = label.both
    stacked = (Word((x, y - 8), label.mark, LARGE[1], True), Word((x, y + 10), both, SMALL, False))
    return stacked if _fits(stacked, area, 4) else _one_line(area, label) or _mark_alone(area, label)


def room_for_grain(area: Area, words: Sequence[Word], level: bool) -> Point | None:
    """Where an arrow along the grain finds room: above the mark, below it, or beside it."""
    wide, high = (GRAIN, 5.0) if level else (5.0, GRAIN)
    mark = words[0].area
    x, y = mark.middle
    places = (
        (x, mark.top - high / 2 - 2),
        (x, mark.bottom + high / 2 + 2),
        (mark.right + wide / 2 + 5, y),
        (mark.left - wide / 2 - 5, y),
    )
    taken = [word.area for word in words]
    for px, py in places:
        arrow = Area(px - wide / 2, py - high / 2, px + wide / 2, py + high / 2)
        if inside(arrow.grown(2), area) and not any(arrow.grown(1).meets(a) for a in taken):
            return px, py
    return None


def inside(inner: Area, outer: Area) -> bool:
    return (
        inner.left >= outer.left
        and inner.right <= outer.right
        and inner.top >= outer.top
        and inner.bottom <= outer.bottom
    )


def _full(area: Area, label: Label) -> tuple[Word, ...]:
    x, y = area.middle
    along = Word((x, area.bottom - _IN), label.along, SMALL, False)
    up = Word((area.left + _IN, y), label.up, SMALL, False, True)
    for size in LARGE:
        made = (Word((x, y), label.mark, size, True), along, up)
        if _fits(made, area):
            return made
        shifted = (Word((x + 4, y - 4), label.mark, size, True), along, up)
        if _fits(shifted, area):
            return shifted
    return ()


def _one_line(area: Area, label: Label) -> tuple[Word, ...]:
    """Mark and sizes one behind the other, along the area."""
    turned = area.high > area.wide
    x, y = area.middle
    for size in TIGHT:
        mark, both = width(label.mark, size, True), width(label.both)
        start = -(mark + _GAP + both) / 2
        to_mark, to_both = start + mark / 2, start + mark + _GAP + both / 2
        places = ((x, y - to_mark), (x, y - to_both)) if turned else ((x + to_mark, y), (x + to_both, y))
        made = (Word(places[0], label.mark, size, True, turned), Word(places[1], label.both, SMALL, False, turned))
        if _fits(made, area):
            return made
    return ()


def _mark_alone(area: Area, label: Label) -> tuple[Word, ...]:
    for turned in (False, True):
        for size in TIGHT:
            made = (Word(area.middle, label.mark, size, True, turned),)
            if _fits(made, area, air=0.5):
                return made
    return ()


def _fits(words: Sequence[Word], area: Area, air: float = AIR) -> bool:
    areas = [word.area for word in words]
    apart = all(not a.grown(1).meets(b) for n, a in enumerate(areas) for b in areas[n + 1 :])
    return apart and all(inside(a, area.grown(-air)) for a in areas)
