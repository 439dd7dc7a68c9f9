"""Whole packs: never rounded down."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from setout.resolve.model import Hardware


def packs(need: Fraction, on_hand: Fraction, pack: Fraction) -> int:
    return ceil(max(need - on_hand, Fraction(0)) / pack)


def pack_price(hardware: Hardware) -> Fraction | None:
    """A pack's price: `price` is each, but a `box` has one price."""
    if hardware.price is None or hardware.boxed:
        return hardware.price
    return hardware.price * hardware.pack
