"""What no plan can do without, each claim valid for every plan of straight cuts (and for every other plan too).

Areas alone, areas after a dual feasible function has rounded the sides (a function u on [0, C] that keeps the sum of
any sizes that fit in C within u(C)), and items so large that no two share a bin. The functions are the classic ones of
Fekete and Schepers (1997) and of Carlier, Clautiaux and Moukrim (2007). An item that may turn counts as its smaller
product, and as nothing where it fits no bin at all.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from operator import mul

from setout.plan.cutting.search.kinds import Kind, kinds_of
from setout.plan.cutting.search.model import Bin, Bound, Item

Rounding = Callable[[int], int]
LOOKS = 3000  # thresholds tried times kinds, so that 2,000 kinds take no longer than 100


def bound(items: Sequence[Item], bins: Sequence[Bin]) -> Bound:
    """The fewest bins and the least money that hold all items that fit some bin; limits on copies are not looked at,
    except that the bound of a set of limited bins counts the cheapest area first."""
    kinds = [kind for kind in kinds_of(items) if any(fits(kind, spec) for spec in bins)]
    if not kinds:
        return Bound(0, 0)
    width, height = max(spec.width for spec in bins), max(spec.height for spec in bins)
    whole = max(_filled(kinds, width, height), _alone(kinds, width, height))
    return Bound(whole, max(_money(kinds, bins), _cheapest(whole, bins)))


def fits(kind: Kind, spec: Bin) -> bool:
    return any(w <= spec.width and h <= spec.height for w, h in kind.shapes)


def _filled(kinds: Sequence[Kind], width: int, height: int) -> int:
    """Bins of the largest size needed by area, after every pair of roundings."""
    sides = sorted({side for kind in kinds for shape in kind.shapes for side in shape})
    most = max(5, min(30, LOOKS // len(kinds)))
    counts = [kind.count for kind in kinds]
    shapes = [[(w, h) for w, h in kind.shapes if w <= width and h <= height] for kind in kinds]
    one, two = [each[0] for each in shapes], [each[-1] for each in shapes]
    down = [_rounded(u, whole, (w for w, _ in one), (w for w, _ in two)) for u, whole in _roundings(width, sides, most)]
    across = [
        _rounded(v, whole, (h for _, h in one), (h for _, h in two)) for v, whole in _roundings(height, sides, most)
    ]
    turning = one != two
    best = 0
    for whole_u, wide, wide_turned in down:
        for whole_v, high, high_turned in across:
            areas = map(mul, wide, high)
            if turning:
                areas = map(min, areas, map(mul, wide_turned, high_turned))
            best = max(best, -(-sum(map(mul, counts, areas)) // (whole_u * whole_v)))
    return best


def _rounded(u: Rounding, whole: int, sides: Iterable[int], turned: Iterable[int]) -> tuple[int, list[int], list[int]]:
    return whole, [u(side) for side in sides], [u(side) for side in turned]


def _roundings(size: int, sides: Sequence[int], most: int) -> Iterator[tuple[Rounding, int]]:
    yield (lambda x: x), size
    limits = [side for side in sides if 2 * side <= size]
    for limit in _thinned(limits, most):
        yield _large_take_all(size, limit), size
        yield _in_whole_parts(size, limit), 2 * (size // limit)
    for parts in range(1, 6):
        yield _in_steps(size, parts), size * parts


def _thinned(values: Sequence[int], most: int) -> Sequence[int]:
    step = -(-len(values) // most) if values else 1
    return values[::step]


def _large_take_all(size: int, limit: int) -> Rounding:
    """Sides so large that only less than `limit` is left beside them take everything, those under `limit` nothing."""
    return lambda x: size if x > size - limit else x if x >= limit else 0


def _in_whole_parts(size: int, limit: int) -> Rounding:
    """A side counts how many sides of `limit` fit in it, one over the half as what the rest can't take, and the half
    itself as a half."""
    whole = size // limit

    def rounded(x: int) -> int:
        if 2 * x > size:
            return 2 * (whole - (size - x) // limit)
        return whole if 2 * x == size else 2 * (x // limit)

    return rounded


def _in_steps(size: int, parts: int) -> Rounding:
    """A side that is a whole number of the (parts + 1)ths of the size counts as it is, others are rounded down to
    parts.
    """
    return lambda x: x * parts if x * (parts + 1) % size == 0 else x * (parts + 1) // size * size


def _alone(kinds: Sequence[Kind], width: int, height: int) -> int:
    """Items of which no two can share a bin, however they are turned."""
    return sum(kind.count for kind in kinds if all(2 * w > width and 2 * h > height for w, h in kind.shapes))


def _money(kinds: Sequence[Kind], bins: Sequence[Bin]) -> int:
    """The whole area bought at the least money for an area, cheap limited bins first."""
    area = sum(kind.area * kind.count for kind in kinds)
    cost = Fraction(0)
    for spec in sorted(bins, key=lambda spec: Fraction(spec.cost, spec.width * spec.height)):
        size = spec.width * spec.height
        taken = area if spec.copies is None else min(area, size * spec.copies)
        cost += Fraction(taken * spec.cost, size)
        area -= taken
        if not area:
            break
    return -(-cost.numerator // cost.denominator)


def _cheapest(count: int, bins: Sequence[Bin]) -> int:
    """What so many bins cost at least."""
    cost = 0
    for spec in sorted(bins, key=lambda spec: spec.cost):
        taken = count if spec.copies is None else min(count, spec.copies)
        cost += taken * spec.cost
        count -= taken
    return cost
