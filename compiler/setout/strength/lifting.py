"""What one person may lift: the revised NIOSH equation, publication 94-110. Inches, pounds, degrees."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Literal

from setout.strength.tables import Number, figure

Grip = Literal["good", "fair", "poor"]
OFTEN = (  # lifts a minute, at most, and the figure's name
    *((Fraction(1, 5), "often_0_2"), (Fraction(1, 2), "often_0_5"), (Fraction(1), "often_1"), (Fraction(2), "often_2")),
    *((Fraction(3), "often_3"), (Fraction(4), "often_4"), (Fraction(5), "often_5")),
)


@dataclass(frozen=True)
class Lift:
    """Where the hands are at one end of a lift: `reach` out from the ankles, `height` above the floor; `travel`, how
    far up or down the whole lift goes; `twist` of the body; lifts a minute, within an hour."""

    reach: Number
    height: Number
    travel: Number
    twist: Number = 0
    per_minute: Number = Fraction(1, 5)
    grip: Grip = "poor"


def recommended_weight(lift: Lift, rounded: bool = False) -> Fraction:
    """Pounds; 0 for what nobody should lift. `rounded`: multipliers to two places and the weight to one, as in the
    manual's own examples (p. 29). ValueError above 5 lifts a minute, which is no furniture."""
    if _out_of_bounds(lift):
        return Fraction(0)
    weight = figure("lift_load")
    for multiplier in _multipliers(lift):
        weight *= _to(multiplier, 2) if rounded else multiplier
    return _to(weight, 1) if rounded else weight


def lifting_index(weight: Number, lift: Lift) -> float | None:
    """Weight over the recommended weight: at most 1 is the goal, above 3 many people are hurt. None where that is 0."""
    most = recommended_weight(lift)
    return float(weight) / float(most) if most else None


def one_person_limit(deep: Number, low: Number, high: Number, grip: Grip = "poor") -> Fraction:
    """Pounds that one person may lift now and then of a box `deep` from near to far side, hands going from `low` to
    `high`: the lesser weight of the lift's two ends. 0 for a box too deep to reach round."""
    travel = max(low, high) - min(low, high)
    return min(recommended_weight(Lift(_reach(deep, end), end, travel, grip=grip)) for end in (low, high))


def _multipliers(lift: Lift) -> tuple[Fraction, ...]:
    reach = max(Fraction(lift.reach), figure("lift_near"))
    travel = max(Fraction(lift.travel), figure("lift_least_travel"))
    return (
        figure("lift_near") / reach,
        1 - figure("lift_height_loss") * abs(Fraction(lift.height) - figure("lift_best_height")),
        min(Fraction(1), figure("lift_travel_base") + figure("lift_travel_part") / travel),
        1 - figure("lift_twist_loss") * Fraction(lift.twist),
        _often(lift.per_minute),
        figure(f"grip_{lift.grip}" + ("_high" if lift.height >= figure("lift_best_height") else "")),
    )


def _out_of_bounds(lift: Lift) -> bool:
    within = 0 <= lift.height <= figure("lift_highest") and lift.travel <= figure("lift_highest")
    return not within or lift.reach > figure("lift_far") or not 0 <= lift.twist <= figure("lift_most_twist")


def _often(per_minute: Number) -> Fraction:
    """The row at or above: never more weight than between the rows would be right."""
    for most, name in OFTEN:
        if per_minute <= most:
            return figure(name)
    raise ValueError("more than 5 lifts a minute")


def _reach(deep: Number, height: Number) -> Fraction:
    """How far out the hands are under the middle of a box."""
    near = "reach_low" if height < figure("reach_low_below") else "reach_high"
    return figure(near) + Fraction(deep) / 2


def _to(value: Fraction, places: int) -> Fraction:
    """To the nearest, a half upwards."""
    return Fraction(floor(value * 10**places + Fraction(1, 2)), 10**places)
