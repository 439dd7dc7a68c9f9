"""Exact lengths: what a unit is in inches, and how a length or a count is printed. Lengths are Fractions of an inch."""

from setout.units.factors import inches_per, known_units
from setout.units.printing import Printed, Style, counted, exact, printed, said, say

__all__ = ["Printed", "Style", "counted", "exact", "inches_per", "known_units", "printed", "said", "say"]
