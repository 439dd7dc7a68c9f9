"""Whether one cut board can be made another: laid over it, whatever was done to the old one must come to lie in what
is cut away, or exactly where the new one wants it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setout.compare.reuse.body import Body, Lay, Spot
from setout.compare.reuse.leftover import widens, work_left

MOST = 400
"""Tries a pair of boards. A board is then called unfit that a longer search might have fitted, never the reverse."""


@dataclass(frozen=True)
class Window:
    """Where the new board's low corner may lie in the old one: ranges along length and width."""

    x0: int
    x1: int
    y0: int
    y1: int

    def cut(self, other: Window) -> Window | None:
        x0, x1 = max(self.x0, other.x0), min(self.x1, other.x1)
        y0, y1 = max(self.y0, other.y0), min(self.y1, other.y1)
        return Window(x0, x1, y0, y1) if x0 <= x1 and y0 <= y1 else None


@dataclass(frozen=True)
class Fit:
    """`offset` in units; `cuts` the trims as (axis, sign, how much); `tasks` what is left to do, by kind."""

    lay: Lay
    offset: tuple[int, int]
    cuts: tuple[tuple[int, int, int], ...]
    tasks: tuple[tuple[str, int], ...]
    look: tuple[str, ...]

    @property
    def effort(self) -> int:
        """Looking first is least welcome, then sawing, then the rest. The lay and place settle what is left."""
        return 100 * len(self.look) + 10 * len(self.cuts) + min(99, sum(count for _, count in self.tasks))


def fit(old: Body, new: Body) -> Fit | None:
    """The easiest way to make `new` of `old`; None when there is none."""
    if not can_hold(old, new):
        return None
    best: Fit | None = None
    for lay, laid in old.lays:
        look = _looks(old, laid, new, lay)
        if look is None or laid.size[0] < new.size[0] or laid.size[1] < new.size[1] or laid.size[2] != new.size[2]:
            continue
        for window in _windows(laid, new):
            found = _fit(lay, laid, new, window, look)
            if best is None or found.effort < best.effort:
                best = found
        if best is not None and best.effort == 0:
            return best
    return best


def can_hold(old: Body, new: Body) -> bool:
    if old.stock != new.stock or old.kind != new.kind:
        return False
    return all(a >= b for a, b in zip(sorted(old.size), sorted(new.size)))


def _looks(old: Body, laid: Body, new: Body, lay: Lay) -> tuple[str, ...] | None:
    """What must be looked at first; None when grain or good face forbid it."""
    look = []
    if new.grain == "length":
        if old.grain == "length" and lay[0][0] != 0:
            return None
        if old.grain != "length":
            look.append("grain")
    if new.show is not None and laid.show != new.show:
        if laid.show is not None and laid.show[0] == new.show[0]:
            return None
        look.append("face")
    return tuple(look)


# --- where the new board may lie -------------------------------------------------------------------------


def _windows(old: Body, new: Body) -> list[Window]:
    """Windows in which all that was done to the old board is in the waste or wanted there."""
    slack = old.size[0] - new.size[0], old.size[1] - new.size[1]
    whole = Window(0, slack[0], 0, slack[1])
    options = [tuple(_options(spot, old, new, slack)) for spot in old.spots]
    if not all(options):
        return []
    options.sort(key=len)  # first what has least choice
    left = [MOST]
    return list(dict.fromkeys(_search(whole, options, 0, left)))


def _search(window: Window, options: list[tuple[Window, ...]], at: int, left: list[int]) -> Iterator[Window]:
    if at == len(options):
        yield window
        return
    for option in options[at]:
        left[0] -= 1
        if left[0] < 0:
            return
        narrowed = window.cut(option)
        if narrowed is not None:
            yield from _search(narrowed, options, at + 1, left)
            if narrowed == window:  # nothing given up: no other option does better
                return


def _options(spot: Spot, old: Body, new: Body, slack: tuple[int, int]) -> Iterator[Window]:
    sx, sy = slack
    whole = Window(0, sx, 0, sy)
    outs = (
        Window(spot.hi[0], sx, 0, sy),
        Window(0, spot.lo[0] - new.size[0], 0, sy),
        Window(0, sx, spot.hi[1], sy),
        Window(0, sx, 0, spot.lo[1] - new.size[1]),
    )
    for other in new.spots:
        wanted = _within(spot, other, old, new) if other.word == "cut" else _same(spot, other, old, new)
        if wanted is not None:
            narrowed = wanted.cut(whole)
            if narrowed is not None:
                yield narrowed
    for out in outs:
        narrowed = out.cut(whole)
        if narrowed is not None:
            yield narrowed


def _within(spot: Spot, cut: Spot, old: Body, new: Body) -> Window | None:
    """Where the spot, as far as the new board has it, lies within a cut that the new board wants."""
    if spot.lo[2] < cut.lo[2] or spot.hi[2] > cut.hi[2]:
        return None
    ends = []
    for k in (0, 1):
        low = 0 if cut.hi[k] == new.size[k] else spot.hi[k] - cut.hi[k]
        high = old.size[k] if cut.lo[k] == 0 else spot.lo[k] - cut.lo[k]
        ends += [low, high]
    return Window(*ends)


def _same(spot: Spot, other: Spot, old: Body, new: Body) -> Window | None:
    """Where the spot is the very one that the new board wants, or can be made it by drilling larger or deeper."""
    if spot.word != other.word:
        return None
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


# --- the choice within a window --------------------------------------------------------------------------


def _fit(lay: Lay, old: Body, new: Body, window: Window, look: tuple[str, ...]) -> Fit:
    slack = old.size[0] - new.size[0], old.size[1] - new.size[1]
    x = _edge(window.x0, window.x1, slack[0])
    y = _edge(window.y0, window.y1, slack[1])
    cuts = []
    for axis, low, all_of in ((0, x, slack[0]), (1, y, slack[1])):
        cuts += [(axis, -1, low)] if low else []
        cuts += [(axis, 1, all_of - low)] if all_of > low else []
    if new.show in [(axis, sign) for axis, sign, _ in cuts] and "face" not in look:
        look = (*look, "face")
    return Fit(lay, (x, y), tuple(cuts), work_left(old, new, (x, y)), look)


def _edge(low: int, high: int, slack: int) -> int:
    """At an edge of the old board where possible: that saves a cut."""
    return slack if high == slack and low else low
