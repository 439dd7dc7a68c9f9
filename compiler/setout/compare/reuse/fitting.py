"""Whether one cut board can be made another: laid over it, whatever was done to the old one must come to lie in what
is cut away, or exactly where the new one wants it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setout.compare.reuse.body import Body, Lay, lays
from setout.compare.reuse.leftover import work_left
from setout.compare.reuse.windows import Window, windows


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
    for lay, laid, look in overlays(old, new):
        for window in windows(laid, new):
            found = _fit(lay, laid, new, window, look)
            if best is None or found.effort < best.effort:
                best = found
        if best is not None and best.effort == 0:
            return best
    return best


def overlays(old: Body, new: Body) -> Iterator[tuple[Lay, Body, tuple[str, ...]]]:
    """The ways to lay the old board so that the new one is within it, grain and good face as they should be, with what
    is to be looked at first."""
    plain = not (new.spots or new.show or new.bands)
    for lay in lays(old)[:: 4 if plain else 1]:  # a plain board is the same whichever end or face is turned about
        long, wide, thick = lay[0]
        if old.size[long] < new.size[0] or old.size[wide] < new.size[1] or old.size[thick] != new.size[2]:
            continue
        if new.grain == old.grain == "length" and long != 0:
            continue
        laid = old.laid(lay)
        look = _looks(laid, new)
        if look is not None:
            yield lay, laid, look


def can_hold(old: Body, new: Body) -> bool:
    if old.stock != new.stock or old.kind != new.kind:
        return False
    return all(a >= b for a, b in zip(sorted(old.size), sorted(new.size)))


def _looks(laid: Body, new: Body) -> tuple[str, ...] | None:
    """What must be looked at first; None when the good face forbids it."""
    look = []
    if new.grain == "length" and laid.grain != "length":
        look.append("grain")
    if new.show is not None and laid.show != new.show:
        if laid.show is not None and laid.show[0] == new.show[0]:
            return None
        look.append("face")
    return tuple(look)


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
