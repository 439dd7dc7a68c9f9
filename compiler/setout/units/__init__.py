"""Exact lengths, Fractions of an inch: what a unit is in inches, and how a length, a count or a name is printed."""

from setout.units.factors import inches_per, known_units
from setout.units.printing import (
    Printed,
    Style,
    as_metric,
    counted,
    drilled,
    exact,
    printed,
    said,
    say,
    spoken,
    sunk,
)

__all__ = [
    "Printed",
    "Style",
    "as_metric",
    "counted",
    "drilled",
    "exact",
    "inches_per",
    "known_units",
    "printed",
    "said",
    "say",
    "spoken",
    "sunk",
]
