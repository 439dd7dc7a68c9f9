"""Exact lengths, Fractions of an inch: what a unit is in inches, and how a length, a count or a name is printed."""

from setout.units.factors import inches_per, known_units
from setout.units.printing import Printed, Style, counted, exact, printed, said, say, spoken

__all__ = ["Printed", "Style", "counted", "exact", "inches_per", "known_units", "printed", "said", "say", "spoken"]
