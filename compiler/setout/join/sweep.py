"""Which of many boxes come near each other, without looking at every pair."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence

from setout.geometry import Box, Vec

Ranked = tuple[tuple[int, int, int], tuple[int, int, int]]


def close_pairs(boxes: Sequence[Box]) -> Iterator[tuple[int, int]]:
    """Indices i < j of the boxes that touch or overlap, at least in a point, in a repeatable order."""
    ranked = _ranked(boxes)
    axis = min(range(3), key=lambda k: _candidates(ranked, k))
    others = [k for k in range(3) if k != axis]
    order = sorted(range(len(boxes)), key=lambda i: (ranked[i][0][axis], i))
    for n, i in enumerate(order):
        lo, hi = ranked[i]
        for j in order[n + 1 :]:
            low, high = ranked[j]
            if low[axis] > hi[axis]:
                break
            if all(low[k] <= hi[k] and lo[k] <= high[k] for k in others):
                yield (i, j) if i < j else (j, i)


def _ranked(boxes: Sequence[Box]) -> list[Ranked]:
    """The boxes with every coordinate replaced by its place among all those of its axis: whole numbers compare fast."""
    places = []
    for k in range(3):
        ends = {end.as_integer_ratio(): end for box in boxes for end in (box.lo[k], box.hi[k])}
        places.append({ratio: n for n, ratio in enumerate(sorted(ends, key=ends.__getitem__))})
    wide, high, deep = places

    def ranks(point: Vec) -> tuple[int, int, int]:
        p, q, r = (end.as_integer_ratio() for end in point)
        return wide[p], high[q], deep[r]

    return [(ranks(box.lo), ranks(box.hi)) for box in boxes]


def _candidates(ranked: list[Ranked], axis: int) -> int:
    """How many pairs a sweep along `axis` would look at."""
    lows = sorted(lo[axis] for lo, _ in ranked)
    return sum(bisect_right(lows, hi[axis]) - bisect_right(lows, lo[axis]) for lo, hi in ranked)
