"""How many inches each unit makes. The common ones are constants; the rest come, once each, from pint."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

# Exact by definition: the inch is 25.4 mm (NIST SP 811, appendix B.8).
_INCHES = {
    "in": Fraction(1),
    "ft": Fraction(12),
    "mm": Fraction(5, 127),
    "cm": Fraction(50, 127),
    "m": Fraction(5000, 127),
}
# What a spec may say besides, with pint's name for it. Nothing else is ever handed to pint.
_THROUGH_PINT = {"yd": "yard", "dm": "decimeter"}

known_units: tuple[str, ...] = (*_INCHES, *_THROUGH_PINT)


def inches_per(unit: str) -> Fraction:
    """How many inches one `unit` makes, exactly. KeyError for a unit that is not in `known_units`."""
    return _INCHES[unit] if unit in _INCHES else _from_pint(_THROUGH_PINT[unit])


@cache
def _from_pint(name: str) -> Fraction:
    from pint import UnitRegistry  # late: it takes longer to import than a spec takes to compile

    registry: UnitRegistry = UnitRegistry(non_int_type=Fraction, cache_folder=None)
    return Fraction(registry.Quantity(Fraction(1), name).to("inch").magnitude)
