"""Weights, loads and sags as text: pounds and inches, or kilograms and millimetres. None of them decides a size."""

from __future__ import annotations

from fractions import Fraction

from setout.resolve.wood import LB_PER_FT2
from setout.units import Style
from setout.write.facts.sizes import MM, decimal

KILOGRAMS = Fraction(45359237, 100000000)  # in a pound, exactly


def heavy(pounds: Fraction | float, style: Style) -> str:
    """`41 lb`, `18.6 kg`; to a tenth below ten pounds and in kilograms."""
    amount = Fraction(pounds)
    if style.metric:
        return f"{decimal(amount * KILOGRAMS, 1)} kg"
    return f"{decimal(amount, 0 if amount >= 10 else 1)} lb"


def spread(pounds_a_foot: Fraction, style: Style) -> str:
    """A load on each square foot or metre, without its unit."""
    each = pounds_a_foot / LB_PER_FT2 if style.metric else pounds_a_foot
    return decimal(Fraction(each), 0)


def fine(inches: Fraction | float, style: Style) -> str:
    """A sag or a movement: to a hundredth of an inch or a tenth of a millimetre, without its unit."""
    amount = Fraction(inches)
    return decimal(amount * MM, 1) if style.metric else decimal(amount, 2)
