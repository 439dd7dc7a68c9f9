"""Wood and the air's moisture: what it takes up, and how much that moves it across the grain.

Moisture in per cent of ovendry weight; sizes in any unit of length, the answer in the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeVar

from setout.strength.tables import Number, figure

Size = TypeVar("Size", float, Fraction)


@dataclass(frozen=True)
class Movement:
    """What a board does over the year, both as sizes of 0 or more. `beyond`: its moisture leaves the range in which the
    coefficients hold, 6 to 14 %, so that the figures are rough."""

    grows: Number
    shrinks: Number
    beyond: bool


def moisture_content(humidity: Number, fahrenheit: Number = 70) -> float:
    """Per cent of moisture that wood comes to in air of so much relative humidity (per cent): Wood Handbook eq. 4-5."""
    t, h = (float(fahrenheit) - 32) / 1.8, float(humidity) / 100
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    kh = k * h
    return 1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2))


def change(size: Size, coefficient: Size, start: Size, end: Size) -> Size:
    """How much a size across the grain changes from one moisture to another: D C (Mf - Mi), Wood Handbook eq. 13-2."""
    return size * coefficient * (end - start)


def movement(
    size: Number,
    coefficient: Number,
    now: Number | None = None,
    driest: Number | None = None,
    wettest: Number | None = None,
) -> Movement:
    """Over the year, for wood worked at moisture `now`. What isn't given: furniture indoors, 8 % and 6 to 10 %."""
    now = figure("indoor_moisture") if now is None else now
    driest = figure("indoor_driest") if driest is None else driest
    wettest = figure("indoor_wettest") if wettest is None else wettest
    known = figure("coefficient_driest") <= min(now, driest) and max(now, wettest) <= figure("coefficient_wettest")
    grows, shrinks = (size * coefficient * (far - now) for far in (wettest, driest))
    return Movement(max(grows, 0), max(-shrinks, 0), not known)


def gap_to_leave(size: Number, coefficient: Number, now: Number | None = None, wettest: Number | None = None) -> Number:
    """Room to leave beside a board on the day it is fitted, so that at its wettest it just touches."""
    return movement(size, coefficient, now, wettest=wettest).grows


def change_coefficient(shrinkage: Fraction) -> Fraction:
    """Change per 1 % of moisture, from the shrinkage in per cent from green to ovendry.

    (S / 30) / (1 - 20 S / 30): wood shrinks evenly from 30 % down, and the coefficient refers to its size at 10 %. To
    five places, as Wood Handbook Table 13-5 prints them; it reproduces that table from Table 4-3.
    """
    saturation = figure("fibre_saturation")
    share = shrinkage / 100 / saturation
    return round(share / (1 - share * (saturation - figure("midrange_moisture"))), 5)
