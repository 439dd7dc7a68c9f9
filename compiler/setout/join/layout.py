"""Where fasteners sit along a contact: always symmetric about its middle."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor

Offsets = tuple[Fraction, ...]

MOST_SHIFTS = 32


@dataclass(frozen=True)
class Rule:
    """`first` from the end, at most `spacing` apart; one alone below `single_below`; just two up to `two_up_to`.

    `shift`: how much farther in the outermost two are set, when something else is in the way where they belong.
    """

    first: Fraction
    spacing: Fraction
    single_below: Fraction
    two_up_to: Fraction | None = None
    shift: Fraction = Fraction(0)


def row_count(length: Fraction, rule: Rule) -> int:
    """How many fasteners a row of that length takes."""
    if length < rule.single_below:
        return 1
    if rule.two_up_to is not None and length <= rule.two_up_to:
        return 2
    between = ceil((length - 2 * (rule.first + rule.shift)) / rule.spacing)
    return max(between + 1, 2 if rule.two_up_to is None else 3)


def row(length: Fraction, rule: Rule) -> Offsets:
    """Distances from the low end of the contact. On a short one the first sits a quarter in."""
    count = row_count(length, rule)
    if count == 1:
        return (length / 2,)
    first = min(rule.first, length / 4) + rule.shift
    step = (length - 2 * first) / (count - 1)
    return tuple(first + n * step for n in range(count))


def shifted(length: Fraction, rule: Rule, step: Fraction, apart: Fraction) -> Iterator[Rule]:
    """The rule, then the same with the row's ends farther in by one `step` more each time: by half the spacing at most,
    no two closer than `apart`, and not more than `MOST_SHIFTS` times."""
    yield rule
    first = min(rule.first, length / 4)
    most = min(rule.spacing, length - 2 * first - apart) / 2
    for n in range(1, min(floor(most / step), MOST_SHIFTS) + 1 if row_count(length, rule) > 1 else 1):
        made = replace(rule, shift=n * step)
        if (length - 2 * (first + made.shift)) / (row_count(length, made) - 1) >= apart:
            yield made
