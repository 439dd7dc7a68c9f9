"""Exact lengths as whole numbers, and back. A kerf lies beyond every board on both axes: a board w wide counts w +
kerf, and so does what it is cut from."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction
from math import floor, lcm

from setout.resolve.model import Saw


@dataclass(frozen=True)
class Scale:
    """`unit` is how many whole numbers an inch is; `kerf` is counted in them."""

    unit: int
    kerf: int

    def grown(self, length: Fraction) -> int:
        """With the kerf beyond it."""
        return self.whole(length) + self.kerf

    def whole(self, length: Fraction) -> int:
        return floor(length * self.unit)

    def bare(self, grown: int) -> Fraction:
        return Fraction(grown - self.kerf, self.unit)

    def saws(self, saws: Iterable[Saw]) -> tuple[Saw, ...]:
        """With limits that are whole numbers, so that a search may ask them."""
        return tuple(
            replace(
                saw,
                kerf=self.whole(saw.kerf),
                rips=None if saw.rips is None else self.whole(saw.rips),
                crosscuts=None if saw.crosscuts is None else self.whole(saw.crosscuts),
                takes=saw.takes and (self.whole(saw.takes[0]), self.whole(saw.takes[1])),
            )
            for saw in saws
        )


def scale_for(lengths: Iterable[Fraction], kerf: Fraction) -> Scale:
    unit = lcm(kerf.denominator, *(length.denominator for length in lengths))
    return Scale(unit, int(kerf * unit))
