"""What is still to be done once a board is cut out of another."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from setout.compare.reuse.body import Body, Point, Spot

Range = tuple[Point, Point]


def work_left(old: Body, new: Body, offset: tuple[int, int]) -> tuple[tuple[str, int], ...]:
    """Kinds of work with how many, in a settled order. `old` is turned as the new one lies."""
    seen = [moved(spot, offset) for spot in old.spots]
    gone = [(s.lo, s.hi) for s in seen if s.word == "cut"]
    count: Counter[str] = Counter()
    for spot in new.spots:
        if spot.word == "cut":
            if not covered((spot.lo, spot.hi), gone):
                count["enlarged" if any(_has_some_of(spot, box, new) for box in gone) else "cut"] += 1
        else:
            count[_still(spot, seen, old, new, offset)] += 1
    if old.bands or new.bands:
        before, after = Counter(_bands_left(old, new, offset)), Counter(new.bands)
        count["band"] += (after - before).total()
        count["unband"] += (before - after).total()
    return tuple((kind, count[kind]) for kind in _KINDS if count[kind])


_KINDS = ("cut", "enlarged", "hole", "pocket", "widened", "mitre", "band", "unband")


def _has_some_of(cut: Spot, box: Range, new: Body) -> bool:
    """Whether an old cut, as far as it lies in the new board, is part of that one."""
    lo, hi = tuple(max(0, x) for x in box[0]), tuple(map(min, box[1], new.size))
    inside = all(a <= c and d <= b for a, b, c, d in zip(cut.lo, cut.hi, lo, hi))
    return inside and all(a < b for a, b in zip(lo, hi))


def moved(spot: Spot, offset: tuple[int, int]) -> Spot:
    """As it lies in a new board with its low corner there."""

    def point(p: Point) -> Point:
        return p[0] - offset[0], p[1] - offset[1], p[2]

    return Spot(spot.word, spot.faces, point(spot.at), spot.numbers, point(spot.lo), point(spot.hi))


def _still(spot: Spot, seen: Sequence[Spot], old: Body, new: Body, offset: tuple[int, int]) -> str:
    """What is to be done for a spot: "" when it is there."""
    if spot.word == "mitre":
        axis, sign = spot.faces[0]
        flush = offset[axis] == (old.size[axis] - new.size[axis] if sign > 0 else 0) if axis < 2 else False
        there = flush and any(s.word == "mitre" and s.faces == spot.faces and s.numbers == spot.numbers for s in seen)
        return "" if there else "mitre"
    drilled = spot.faces[0][0]
    here = [s for s in seen if s.word == spot.word and s.faces[0][0] == drilled and _over(s, spot, drilled)]
    if any(s.faces == spot.faces and s.numbers == spot.numbers for s in here):
        return ""
    return "widened" if any(widens(s, spot) for s in here) else spot.word


def widens(spot: Spot, other: Spot) -> bool:
    """Whether the hole `spot` is lost in `other`, drilled at the same point larger, deeper or right through."""
    if spot.word != "hole" or spot.numbers[0] > other.numbers[0] or spot.faces[0][0] != other.faces[0][0]:
        return False
    if len(other.numbers) < 2:
        return other.faces[0][0] == 2
    return len(spot.numbers) == 2 and spot.faces == other.faces and spot.numbers[1] <= other.numbers[1]


def _over(spot: Spot, other: Spot, drilled: int) -> bool:
    """Whether both are drilled along one line, and from the same end unless that is a broad face: a hole in an edge
    that was sawn off is gone."""
    edge = drilled < 2 and spot.faces[0][1] != 0
    return all(a == b for k, (a, b) in enumerate(zip(spot.at, other.at)) if edge or k != drilled)


def _bands_left(old: Body, new: Body, offset: tuple[int, int]) -> list:
    """Banding on edges that are not cut away."""
    left = []
    for (axis, sign), name in old.bands:
        slack = old.size[axis] - new.size[axis]
        if axis == 2 or offset[axis] == (slack if sign > 0 else 0):
            left.append(((axis, sign), name))
    return left


def covered(box: Range, by: Sequence[Range]) -> bool:
    """Whether all of the box lies within the others together."""
    lo, hi = box
    if any(a >= b for a, b in zip(lo, hi)):
        return True
    for n, (low, high) in enumerate(by):
        if all(max(a, c) < min(b, d) for a, b, c, d in zip(lo, hi, low, high)):
            return all(covered(rest, by[n + 1 :]) for rest in _around(box, (low, high)))
    return False


def _around(box: Range, hole: Range) -> list[Range]:
    """The box less the hole, in boxes."""
    out: list[Range] = []
    lo, hi = list(box[0]), list(box[1])
    for k in range(3):
        if hole[0][k] > lo[k]:
            out.append(((*lo,), (*hi[:k], hole[0][k], *hi[k + 1 :])))  # type: ignore[arg-type]
            lo[k] = hole[0][k]
        if hole[1][k] < hi[k]:
            out.append(((*lo[:k], hole[1][k], *lo[k + 1 :]), (*hi,)))  # type: ignore[arg-type]
            hi[k] = hole[1][k]
    return out
