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
    def plugs(self) -> int:
        """Old holes that stay in the board and are filled."""
        return sum(count for kind, count in self.tasks if kind == "plug")

    @property
    def effort(self) -> int:
        """Plugging is least welcome, then looking first, then sawing, then the rest. The lay and place settle what is
        left."""
        plugs = self.plugs
        rest = sum(count for _, count in self.tasks) - plugs
        plugging = _PLUGGING + 10 * plugs if plugs else 0
        return plugging + 100 * len(self.look) + A_CUT * len(self.cuts) + min(99, rest)


A_CUT = 10
_PLUGGING = 1000


def fit(old: Body, new: Body, tape: int = 1) -> Fit | None:
    """The easiest way to make `new` of `old`; None when there is none. `tape`: units in what a tape is read to."""
    if not can_hold(old, new):
        return None
    best: Fit | None = None
    cramped: set[tuple[int, int, int]] = set()
    for lay, laid, look in overlays(old, new):
        if lay[0] in cramped:
            continue
        room = windows(laid, new)
        if not room and not _have_like_work(old, new):
            cramped.add(lay[0])  # only sizes count, and they are the same whichever end or face is turned about
        for window in room:
            found = fit_at(_place(window, laid, new, tape), lay, laid, new, look)
            if best is None or found.effort < best.effort:
                best = found
        if best is not None and best.effort == 0:
            return best
    return best


def overlays(old: Body, new: Body) -> Iterator[tuple[Lay, Body, tuple[str, ...]]]:
    """The ways to lay the old board so that the new one is within it, grain and good face as they should be, with what
    is to be looked at first."""
    plain = old.plain or new.plain
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


def _have_like_work(old: Body, new: Body) -> bool:
    """Whether anything done to the old board might be wanted on the new one."""
    return any(word in new.by_word for word in ("cut", *old.by_word))


def fewest_cuts(old: Body, new: Body) -> int:
    """However it lies in the old one, at least so many: one for each of its sizes that the old one has not."""
    sizes = list(new.size)
    for size in old.size:
        if size in sizes:
            sizes.remove(size)
    return len(sizes)


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


def _place(window: Window, old: Body, new: Body, tape: int) -> tuple[int, int]:
    slack = old.size[0] - new.size[0], old.size[1] - new.size[1]
    return _edge(window.x0, window.x1, slack[0], tape), _edge(window.y0, window.y1, slack[1], tape)


def _edge(low: int, high: int, slack: int, tape: int) -> int:
    """At an edge of the old board where possible: that saves a cut. Else in the middle of what is free, well away from
    old work, where a tape reads even."""
    if low == 0 or high == slack:
        return slack if low else 0
    middle, step = (low + high) // 2, max(tape, 1)
    while step:
        near = (middle + step // 2) // step * step
        if low <= near <= high:
            return near
        step //= 2
    return middle


def fit_at(place: tuple[int, int], lay: Lay, old: Body, new: Body, look: tuple[str, ...]) -> Fit:
    """The new board in the old one, which is laid so already, with its low corner there."""
    cuts = []
    for axis, low in enumerate(place):
        high = old.size[axis] - new.size[axis] - low
        cuts += [(axis, -1, low)] if low else []
        cuts += [(axis, 1, high)] if high else []
    if new.show in [(axis, sign) for axis, sign, _ in cuts] and "face" not in look:
        look = (*look, "face")
    return Fit(lay, place, tuple(cuts), work_left(old, new, place), look)
