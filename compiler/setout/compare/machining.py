"""Work on a board before and after, laid over each other as well as it goes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from itertools import product

from setout.compare.known import Item, Known
from setout.compare.model import Machined

KINDS = ("hole", "pocket", "cut", "mitre", "band")
Shift = tuple[Fraction, Fraction, Fraction]
_NO = Fraction(0)


def machined(old: Known, new: Known) -> tuple[Machined, ...]:
    """The kinds of work that changed. A board that grew is laid at either end, or in the middle, wherever most of its
    work stays: a hole that is 2 in from the top edge still is when the board gets shorter below."""
    if not old.items and not new.items:
        return ()
    before, after = max(_ways(old, new), key=lambda way: sum((way[0] & way[1]).values()))
    kept, gone, added = before & after, before - after, after - before
    moved = _alike(gone) & _alike(added)
    counts = [[_of_kind(some, kind) for some in (gone, added, moved, kept)] for kind in KINDS]
    changed = ((kind, *four) for kind, four in zip(KINDS, counts) if four[0] or four[1])
    return tuple(Machined(kind, a - same, b - same, same, keep) for kind, a, b, same, keep in changed)


def _alike(items: Counter) -> Counter:
    """The same without the places."""
    count: Counter = Counter()
    for (word, faces, _, numbers, reach), n in items.items():
        count[word, faces, numbers, reach] += n
    return count


def _of_kind(items: Counter, kind: str) -> int:
    return sum(count for key, count in items.items() if key[0].split(" ")[0] == kind)


def _ways(old: Known, new: Known):
    differ = [b - a for a, b in zip(old.drawn, new.drawn)]
    after = Counter(_key(item, new.drawn, (_NO, _NO, _NO)) for item in new.items)
    for shift in product(*([_NO, d, d / 2] if d else [_NO] for d in differ)):
        yield Counter(_key(item, old.drawn, shift) for item in old.items), after


def _key(item: Item, sizes: Sequence[Fraction], shift: Shift) -> tuple:
    points = tuple(tuple(map(_coordinate, point, sizes, shift)) for point in item.points)
    reach = tuple(map(_reach, *item.points, sizes)) if len(item.points) == 2 else ()
    return item.word, item.faces, points, tuple(number.as_integer_ratio() for number in item.numbers), reach


def _coordinate(value: Fraction, size: Fraction, shift: Fraction) -> tuple:
    """What lies on an edge stays on that edge. Ratios, since whole numbers are counted fast."""
    if not value or value == size:
        return "edge", bool(value)
    return "inside", (value + shift if shift else value).as_integer_ratio()


def _reach(low: Fraction, high: Fraction, size: Fraction) -> tuple[int, int] | str:
    """How far a cut goes along an axis: so much, or from edge to edge."""
    return "through" if not low and high == size else (high - low).as_integer_ratio()
