"""What is in the way where a board is large enough and still not to be used."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from setout.compare.reuse.body import Body
from setout.compare.reuse.fitting import overlays
from setout.compare.reuse.windows import Window, options, whole

_LIKELY = 3
"""Besides the corners, so many places where most of the work comes to lie where it is wanted."""


def obstacles(old: Body, new: Body) -> tuple[tuple[str, int], ...]:
    """The fewest things done to the old board, by kind, that would show or clash in the new one. Looked for at likely
    places alone: with more patience there may be fewer."""
    found = [_in_the_way(laid, new) for _, laid, _ in overlays(old, new)]
    best = min(found, key=lambda count: count.total(), default=Counter())
    return tuple(sorted(best.items()))


def _in_the_way(old: Body, new: Body) -> Counter[str]:
    all_ = whole(old, new)
    choices = [(spot.word, options(spot, old, new, all_)) for spot in old.spots]
    counts = [
        Counter(word for word, windows in choices if not any(w.holds(x, y) for w in windows))
        for x, y in _places(all_, [windows for _, windows in choices])
    ]
    return min(counts, key=lambda count: count.total())


def _places(within: Window, choices: Sequence[Sequence[Window]]) -> Iterator[tuple[int, int]]:
    yield from within.corners
    points = Counter((w.x0, w.y0) for windows in choices for w in windows if w.x0 == w.x1 and w.y0 == w.y1)
    yield from (place for place, _ in points.most_common(_LIKELY))
