"""Exact lengths: what a unit is in inches, and how a length is printed. Lengths are Fractions of an inch."""

from setout.units.factors import inches_per, known_units
from setout.units.printing import Printed, Style, exact, printed, said, say

__all__ = ["Printed", "Style", "exact", "inches_per", "known_units", "printed", "said", "say"]
