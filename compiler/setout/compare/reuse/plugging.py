"""A board that keeps its own place with old holes left in it, plugged, where nobody sees them.

Only holes that don't go through, and pockets, in the face behind the good one. They must be clear of whatever is still
to be done to the board, and of its new edges, with a little wood between. The board is trimmed at one end of its
length and width at the most.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from setout.compare.reuse.body import Body, Spot
from setout.compare.reuse.fitting import Fit, can_hold, fit_at, overlays
from setout.compare.reuse.leftover import moved
from setout.compare.reuse.windows import options, whole

Place = tuple[int, int]


def plugged(old: Body, new: Body, between: int) -> Fit | None:
    """The easiest way to make `new` of `old` with holes plugged; None when there is none. `between`: how much wood is
    to be left between an old hole and new work."""
    if new.show is None or new.show[0] != 2 or not can_hold(old, new):
        return None
    found = (
        replace(fit, tasks=(("plug", plugs), *fit.tasks))
        for lay, laid, look in overlays(old, new)
        for place, plugs in _places(laid, new, between)
        for fit in (fit_at(place, lay, laid, new, look),)
    )
    return min(found, key=lambda fit: fit.effort, default=None)


def _places(old: Body, new: Body, between: int) -> Iterator[tuple[Place, int]]:
    """Where the new board may lie in the old one, with how many holes are then to be plugged."""
    all_ = whole(old, new)
    choices = [(spot, options(spot, old, new, all_)) for spot in old.spots]
    for place in all_.corners:
        left = [moved(spot, place) for spot, some in choices if not any(w.holds(*place) for w in some)]
        if all(map(_is_hidden, left, [new] * len(left))) and _is_clear(left, old, new, place, between):
            yield place, len(left)


def _is_hidden(spot: Spot, new: Body) -> bool:
    assert new.show is not None
    return (spot.word == "pocket" or len(spot.numbers) == 2) and spot.faces[:1] == ((2, -new.show[1]),)


def _is_clear(left: list[Spot], old: Body, new: Body, place: Place, between: int) -> bool:
    there = [moved(spot, place) for spot in old.spots]
    work = [spot for spot in new.spots if spot not in there]
    return all(
        _is_within(spot, old, new, place, between) and all(_apart(spot, one, between) for one in work) for spot in left
    )


def _is_within(spot: Spot, old: Body, new: Body, place: Place, between: int) -> bool:
    """Clear of the edges that are sawn; the others it has already."""
    return all(
        (not low or spot.lo[axis] >= between)
        and (low + new.size[axis] == old.size[axis] or spot.hi[axis] + between <= new.size[axis])
        for axis, low in enumerate(place)
    )


def _apart(one: Spot, other: Spot, between: int) -> bool:
    return any(a - d >= between or c - b >= between for a, b, c, d in zip(one.lo, one.hi, other.lo, other.hi))
