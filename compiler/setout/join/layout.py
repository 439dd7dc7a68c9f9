"""Where fasteners sit along a contact: always symmetric about its middle."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

Offsets = tuple[Fraction, ...]


@dataclass(frozen=True)
class Rule:
    """`first` from the end, at most `spacing` apart; one alone below `single_below`; just two up to `two_up_to`."""

    first: Fraction
    spacing: Fraction
    single_below: Fraction
    two_up_to: Fraction | None = None


def row_count(length: Fraction, rule: Rule) -> int:
    """How many fasteners a row of that length takes."""
    if length < rule.single_below:
        return 1
    if rule.two_up_to is not None and length <= rule.two_up_to:
        return 2
    between = ceil((length - 2 * rule.first) / rule.spacing)
    return max(between + 1, 2 if rule.two_up_to is None else 3)


def row(length: Fraction, rule: Rule) -> Offsets:
    """Distances from the low end of the contact. On a short one the first sits a quarter in."""
    count = row_count(length, rule)
    if count == 1:
        return (length / 2,)
    first = min(rule.first, length / 4)
    step = (length - 2 * first) / (count - 1)
    return tuple(first + n * step for n in range(count))
