"""Layings in whole numbers: the same cuts in a quarter of the time, to try things out with."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache
from math import lcm

from setout.plan.cutting.scale import Scale
from setout.plan.cutting.sequence.model import Blank, Job, Laying, Limits


def unit_of(layings: Sequence[Laying]) -> int:
    """What an inch has to be, for every size to be a whole number."""
    return lcm(*{length.denominator for one in layings for length in _lengths(one)})


def whole(laying: Laying, unit: int) -> Laying:
    """`laying` with every inch counted as `unit`."""
    source = laying.source
    return Laying(
        replace(source, length=_n(source.length, unit), width=_n(source.width, unit)),
        _tree(laying.job, unit),
        _n(laying.trim, unit),
        _limits(laying.limits, unit),
    )


def _n(length: Fraction, unit: int) -> int:
    return length.numerator * (unit // length.denominator)


def _tree(of: Job | Blank, unit: int):
    sizes = {"dx": _n(of.dx, unit), "dy": _n(of.dy, unit)}
    if isinstance(of, Blank):
        return replace(of, **sizes)
    return replace(of, **sizes, parts=tuple(_tree(part, unit) for part in of.parts))


def _limits(limits: Limits, unit: int) -> Limits:
    @cache
    def heavy(dx: int, dy: int) -> bool:
        return limits.heavy(Fraction(dx, unit), Fraction(dy, unit))

    @cache
    def keep(dx: int, dy: int) -> bool:
        return limits.keep(Fraction(dx, unit), Fraction(dy, unit))

    kerf = _n(limits.kerf, unit)
    return Limits(Scale(unit, kerf).saws(limits.saws), kerf, heavy, keep)


def _lengths(laying: Laying) -> Iterator[Fraction]:
    yield from (laying.source.length, laying.source.width, laying.trim, laying.limits.kerf)
    for saw in laying.limits.saws:
        yield saw.kerf
        yield from (n for n in (saw.rips, saw.crosscuts, *(saw.takes or ())) if n is not None)
    waiting: list[Job | Blank] = [laying.job]
    while waiting:
        one = waiting.pop()
        yield from (one.dx, one.dy)
        if isinstance(one, Job):
            waiting.extend(one.parts)
