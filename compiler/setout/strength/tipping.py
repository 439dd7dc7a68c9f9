"""When a piece of furniture tips forward. Inches and pounds; exact on Fractions."""

from __future__ import annotations

from setout.strength.panels import CUBIC_FOOT
from setout.strength.tables import Number, figure


def tips(load: Number, overhang: Number, weight: Number, behind: Number) -> bool:
    """Whether a `load`, its middle `overhang` in front of the front feet, tips a piece over whose `weight` has its
    middle `behind` them. Statics; an open drawer's own weight belongs to the load, and to `weight` no more."""
    return load * overhang > weight * behind


def tipping_load(overhang: Number, weight: Number, behind: Number) -> Number | None:
    """The load above which it tips; None where no load there does."""
    return weight * behind / overhang if overhang > 0 else None


def in_tip_over_scope(high: Number, weight: Number, volume: Number, free_standing: bool = True) -> bool:
    """Whether a clothing storage unit falls under ASTM F2057-23: 27 in, 30 lb, 3.2 ft3 enclosed (`volume` in cubic
    inches), free-standing. Shelving, office and dining furniture and built-ins don't, whatever their size."""
    big = high >= figure("tip_high") and volume >= figure("tip_volume") * CUBIC_FOOT
    return free_standing and big and weight >= figure("tip_weight")
