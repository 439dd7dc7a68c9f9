"""Which length of screw or brad holds and doesn't come out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Bite:
    """`through` what a fastener passes before it bites; `room` the wood it may go into (its margin taken off); `least`
    the share of its length that must bite."""

    through: Fraction
    room: Fraction
    least: Fraction


def holding(lengths: Iterable[Fraction], bite: Bite) -> list[Fraction]:
    """The lengths that bite enough, whether there is room for them or not."""
    share = 1 - bite.least
    return [length for length in lengths if length * share >= bite.through]


def fitting(lengths: Iterable[Fraction], bite: Bite) -> list[Fraction]:
    """The lengths that bite enough and stay in the wood, shortest first."""
    longest = bite.through + bite.room
    return [length for length in holding(lengths, bite) if length <= longest]


def screw_length(lengths: Iterable[Fraction], bite: Bite, best: Fraction, most: Fraction) -> Fraction | None:
    """The longest with a share from `best` to `most` in the second piece; failing that the longest below `most`."""
    fit = [length for length in fitting(lengths, bite) if length - bite.through <= length * most]
    good = [length for length in fit if length - bite.through >= length * best]
    return max(good or fit or fitting(lengths, bite)[:1], default=None)


def brad_length(lengths: Iterable[Fraction], bite: Bite, wanted: Fraction) -> Fraction | None:
    """The shortest of at least the wanted length that fits; failing that the longest that fits."""
    fit = fitting(lengths, bite)
    return min((length for length in fit if length >= wanted), default=max(fit, default=None))
