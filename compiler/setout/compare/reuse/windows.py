"""Where in an old board the new one may lie, so that all that was done to the old one is in the waste or wanted there.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from typing import NamedTuple

from setout.compare.reuse.body import Body, Spot
from setout.compare.reuse.leftover import widens

TRIES = 200
"""After so many the search goes on line by line instead, which takes its time and finds what there is."""


class Window(NamedTuple):
    """Where the new board's low corner may lie in the old one: ranges along length and width."""

    x0: int
    x1: int
    y0: int
    y1: int

    @property
    def corners(self) -> tuple[tuple[int, int], ...]:
        """Each once."""
        return tuple(dict.fromkeys(product((self.x0, self.x1), (self.y0, self.y1))))

    def holds(self, x: int, y: int) -> bool:
        return self.x0 <= x <= self.x1 and self.y0 <= y <= self.y1

    def cut(self, other: Window) -> Window | None:
        x0, x1, y0, y1 = self
        left, right, low, high = other
        if right < x0 or x1 < left or high < y0 or y1 < low:
            return None
        return Window(max(x0, left), min(x1, right), max(y0, low), min(y1, high))


Choices = Sequence[Sequence[Window]]


def whole(old: Body, new: Body) -> Window:
    """Wherever the new board is within the old one."""
    return Window(0, old.size[0] - new.size[0], 0, old.size[1] - new.size[1])


def windows(old: Body, new: Body) -> list[Window]:
    """Windows in which no spot of the old board is any trouble; if there are any, one of them at least is found."""
    all_ = whole(old, new)
    choices: list[list[Window]] = []
    for spot in old.spots:
        some = options(spot, old, new, all_)
        if not some:
            return []
        choices.append(some)
    choices.sort(key=len)  # first what has least choice
    found: dict[Window, None] = {}
    if not _searched(all_, choices, 0, [TRIES], found):
        found.update(dict.fromkeys(_swept(all_, choices)))
    return list(found)


def _searched(window: Window, choices: Choices, at: int, left: list[int], found: dict[Window, None]) -> bool:
    """Add to `found` every window within this one in which the spots from `at` on are no trouble; whether there was
    time for it."""
    if at == len(choices):
        found[window] = None
        return True
    for option in choices[at]:
        narrowed = window.cut(option)
        if narrowed is None:
            continue
        left[0] -= 1
        if left[0] < 0 or not _searched(narrowed, choices, at + 1, left, found):
            return False
        if narrowed == window:  # nothing given up: no other option does better
            break
    return True


def _swept(whole: Window, choices: Choices) -> Iterator[Window]:
    """Along every line on which some window begins: whatever room there is has its left end on one of them."""
    lines = {whole.x0, whole.x1, *(window.x0 for some in choices for window in some)}
    for x in sorted(lines):
        gaps = [(whole.y0, whole.y1)]
        for some in choices:
            free = [(w.y0, w.y1) for w in some if w.x0 <= x <= w.x1]
            gaps = [(max(a, c), min(b, d)) for a, b in gaps for c, d in _joined(free) if max(a, c) <= min(b, d)]
            if not gaps:
                break
        yield from (Window(x, x, low, high) for low, high in gaps)


def _joined(ranges: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Ranges that share a point made one."""
    found: list[tuple[int, int]] = []
    for low, high in sorted(ranges):
        if found and low <= found[-1][1]:
            found[-1] = found[-1][0], max(found[-1][1], high)
        else:
            found.append((low, high))
    return found


def options(spot: Spot, old: Body, new: Body, within: Window) -> list[Window]:
    """Windows within that one in which this spot is no trouble."""
    found = list(_wanted(spot, old, new, within)) if new.spots else []
    x0, x1, y0, y1 = within
    # or the new board lies clear of it, to either side along either edge
    if spot.hi[0] <= x1:
        found.append(Window(max(x0, spot.hi[0]), x1, y0, y1))
    if spot.lo[0] - new.size[0] >= x0:
        found.append(Window(x0, min(x1, spot.lo[0] - new.size[0]), y0, y1))
    if spot.hi[1] <= y1:
        found.append(Window(x0, x1, max(y0, spot.hi[1]), y1))
    if spot.lo[1] - new.size[1] >= y0:
        found.append(Window(x0, x1, y0, min(y1, spot.lo[1] - new.size[1])))
    return found


def _wanted(spot: Spot, old: Body, new: Body, within: Window) -> Iterator[Window]:
    """Those in which it is, or is lost in, what the new board wants."""
    windows = [_within(spot, cut, old, new) for cut in new.by_word.get("cut", ())]
    if spot.word != "cut":
        alike = (other for other in new.by_word.get(spot.word, ()) if spot.word == "hole" or other.faces == spot.faces)
        windows += [_same(spot, other, old, new) for other in alike]
    for window in windows:
        common = window and window.cut(within)
        if common:
            yield common


def _within(spot: Spot, cut: Spot, old: Body, new: Body) -> Window | None:
    """Where the spot, as far as the new board has it, lies within a cut that the new board wants."""
    if spot.lo[2] < cut.lo[2] or spot.hi[2] > cut.hi[2]:
        return None
    x0 = 0 if cut.hi[0] == new.size[0] else spot.hi[0] - cut.hi[0]
    x1 = old.size[0] if cut.lo[0] == 0 else spot.lo[0] - cut.lo[0]
    y0 = 0 if cut.hi[1] == new.size[1] else spot.hi[1] - cut.hi[1]
    y1 = old.size[1] if cut.lo[1] == 0 else spot.lo[1] - cut.lo[1]
    return Window(x0, x1, y0, y1) if x0 <= x1 and y0 <= y1 else None


def _same(spot: Spot, other: Spot, old: Body, new: Body) -> Window | None:
    """Where the spot is the very one that the new board wants, or can be made it by drilling larger or deeper. Both
    are of one kind."""
    if spot.word == "mitre":
        return _same_mitre(spot, other, old, new)
    drilled = other.faces[0][0]
    exact = spot.faces == other.faces and spot.numbers == other.numbers
    if not exact and not widens(spot, other):
        return None
    if drilled != 2 and spot.at[2] != other.at[2]:
        return None
    x, y = spot.at[0] - other.at[0], spot.at[1] - other.at[1]
    return Window(x, x, y, y)


def _same_mitre(spot: Spot, other: Spot, old: Body, new: Body) -> Window | None:
    if spot.faces != other.faces or spot.numbers != other.numbers:
        return None
    (axis, sign), (across, _) = spot.faces
    slack = old.size[0] - new.size[0], old.size[1] - new.size[1]
    ends = [[0, slack[0]], [0, slack[1]]]
    if axis == 2:
        return None
    ends[axis] = [slack[axis]] * 2 if sign > 0 else [0, 0]
    if across != 2:
        if slack[across]:
            return None
        ends[across] = [0, 0]
    return Window(*ends[0], *ends[1])
