"""What is written on a piece: its mark large, its sizes along two edges; in less room, less."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import product
from typing import NamedTuple

from setout.drawing.ink.lettering import SMALL, width
from setout.drawing.ink.svg import Area, Point, text_area

LARGE = (22.0, 18.0, 15.0, 12.0)  # sizes of a mark with room round it
TIGHT = (12.0, 11.0, 10.0, SMALL)
GRAIN = 22.0  # length of the grain arrow
_AIR = 1.5  # least room between words and a board's edge
_LEAST_AIR = 0.2  # of words packed close: their own room has some air in it
_IN = 7.5  # how far in from its edge a size stands
_STRIP = 2 * _IN - _AIR  # what a size takes of the board along its edge
_GAP = 5.0
_ASIDE = (0.0, -0.25, 0.25)  # shares of its room that words may move aside
_FINELY = tuple(n / 32 for n in sorted(range(-13, 14), key=abs))  # the same where little room is left

Free = Callable[[Area], bool]


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


def ways_on(area: Area, label: Label) -> Iterator[tuple[Word, ...]]:
    """Ways to write everything on the area, the best first: sizes along the edges, all in one line, or the sizes under
    the mark."""
    yield from _that_fit(area.grown(-_AIR), _full(area, label))
    yield from _that_fit(area.grown(-_LEAST_AIR), _one_line(area, label), _stacked(area, label), _in_three(area, label))


def words_on(area: Area, label: Label, free: Free) -> tuple[Word, ...]:
    """Everything, the best way that is free; () when none is."""
    return _first(free, ways_on(area, label))


def words_on_leftover(area: Area, label: Label, free: Free) -> tuple[Word, ...]:
    """Its letter and under it its size, or both in a line, or the letter alone."""
    ways = _that_fit(area.grown(-_AIR), _stacked(area, label), _one_line(area, label))
    return _first(free, ways) or mark_on(area, label, free)


def places_for_grain(area: Area, mark: Area, level: bool) -> Iterator[tuple[Point, Area]]:
    """Where an arrow along the grain may stand, with the room it takes: above the mark, below it, or beside it."""
    wide, high = (GRAIN, 5.0) if level else (5.0, GRAIN)
    x, y = mark.middle
    places = (
        (x, mark.top - high / 2 - 2),
        (x, mark.bottom + high / 2 + 2),
        (mark.right + wide / 2 + 5, y),
        (mark.left - wide / 2 - 5, y),
    )
    for px, py in places:
        arrow = Area(px - wide / 2, py - high / 2, px + wide / 2, py + high / 2)
        if _inside(arrow.grown(2), area):
            yield (px, py), arrow


def _full(area: Area, label: Label) -> Iterator[tuple[Word, ...]]:
    """Sizes at the lower and the left edge, or at the others; the mark in the middle of the board or of what they
    leave."""
    if width(label.along) > area.wide or width(label.up) > area.high:
        return
    for size, low, left in product(LARGE, (True, False), (True, False)):
        y = area.bottom - _IN if low else area.top + _IN
        x = area.left + _IN if left else area.right - _IN
        clear = Area(
            area.left + _STRIP * left,
            area.top + _STRIP * (not low),
            area.right - _STRIP * (not left),
            area.bottom - _STRIP * low,
        ).middle
        whole = area.middle
        for mark, sizes in ((whole, whole), (clear, whole), (clear, clear)):
            along = Word((sizes[0], y), label.along, SMALL, False)
            up = Word((x, sizes[1]), label.up, SMALL, False, True)
            yield Word(mark, label.mark, size, True), along, up


def _stacked(area: Area, label: Label) -> Iterator[tuple[Word, ...]]:
    x0, y0 = area.middle
    for size in (*LARGE[1:], *TIGHT[1:]):
        apart = (size + SMALL) * 0.56 + 1.2
        if 2 * apart - 1.2 > area.high or width(label.both) > area.wide:
            continue
        up = apart * SMALL / (size + SMALL)
        for dy, dx in product(_ASIDE, _FINELY):
            x, y = x0 + dx * area.wide, y0 + dy * area.high
            yield Word((x, y - up), label.mark, size, True), Word((x, y - up + apart), label.both, SMALL, False)


def _in_three(area: Area, label: Label) -> Iterator[tuple[Word, ...]]:
    """Mark, one size and the other below each other."""
    first, _, second = label.both.partition(" × ")
    x0, y0 = area.middle
    for size in TIGHT:
        apart, line = (size + SMALL) * 0.56 + 1.2, SMALL * 1.12 + 1.2
        if 2 * apart + line - 1.2 > area.high or max(width(f"{first} ×"), width(second)) > area.wide:
            continue
        for dy, dx in product(_ASIDE, _FINELY):
            x, top = x0 + dx * area.wide, y0 + dy * area.high - (apart + line) / 2
            yield (
                Word((x, top), label.mark, size, True),
                Word((x, top + apart), f"{first} ×", SMALL, False),
                Word((x, top + apart + line), second, SMALL, False),
            )


def _one_line(area: Area, label: Label) -> Iterator[tuple[Word, ...]]:
    """Mark and sizes one behind the other, along the area."""
    turned, both = area.high > area.wide, width(label.both)
    for size, aside in product(TIGHT, _FINELY):
        mark = width(label.mark, size, True)
        if mark + _GAP + both > (area.high if turned else area.wide):
            continue
        start = -(mark + _GAP + both) / 2 + aside * (area.high if turned else area.wide)
        to_mark, to_both = start + mark / 2, start + mark + _GAP + both / 2
        x, y = area.middle
        places = ((x, y - to_mark), (x, y - to_both)) if turned else ((x + to_mark, y), (x + to_both, y))
        yield Word(places[0], label.mark, size, True, turned), Word(places[1], label.both, SMALL, False, turned)


def mark_on(area: Area, label: Label, free: Free) -> tuple[Word, ...]:
    """The mark alone; () where there is no room for that either."""
    for turned, size, dx, dy in product((False, True), TIGHT, _ASIDE, _ASIDE):
        at = area.middle[0] + dx * area.wide, area.middle[1] + dy * area.high
        word = Word(at, label.mark, size, True, turned)
        if _inside(word.area, area.grown(-0.5)) and free(word.area.grown(-1)):
            return (word,)
    return ()


def rooms_of(words: Sequence[Word]) -> tuple[Area, ...]:
    """What has to be free for them."""
    return tuple(word.area.grown(-1) for word in words)


def _first(free: Free, ways: Iterator[tuple[Word, ...]]) -> tuple[Word, ...]:
    return next((words for words in ways if all(map(free, rooms_of(words)))), ())


def _that_fit(room: Area, *ways: Iterator[tuple[Word, ...]]) -> Iterator[tuple[Word, ...]]:
    return (words for way in ways for words in way if _fits(words, room))


def _fits(words: Sequence[Word], room: Area) -> bool:
    areas = [word.area for word in words]
    if not all(_inside(a, room) for a in areas):
        return False
    return all(not a.grown(1).meets(b) for n, a in enumerate(areas) for b in areas[n + 1 :])


def _inside(inner: Area, outer: Area) -> bool:
    return (
        inner.left >= outer.left
        and inner.right <= outer.right
        and inner.top >= outer.top
        and inner.bottom <= outer.bottom
    )
