"""What screws hold. Inches and pounds; G is specific gravity, D the shank's diameter.

Everything here is for dry wood, screws in side grain. What hangs on a wall over people's heads is for local codes and
licensed practice to settle: print `CAUTION` wherever an estimate is printed.
"""

from __future__ import annotations

from dataclasses import dataclass

from setout.strength.tables import Number, figure

CAUTION = (
    "An estimate by published formulas, for sound dry wood and screws driven into its side grain. It is no design: the "
    "wall, its studs and its covering are not known here. Local codes and licensed practice govern."
)
LATERAL_GROUPS = (1, 2, 3)  # densest first; what is lighter than all of them is group 4


def screw_withdrawal(gravity: Number, diameter: Number) -> float:
    """Design withdrawal of a wood screw, lb per inch of thread in the wood: W = 2850 G^2 D, NDS eq. 12.2-2."""
    return float(figure("screw_withdrawal")) * float(gravity) ** 2 * float(diameter)


def screw_withdrawal_ultimate(gravity: Number, diameter: Number, depth: Number) -> float:
    """Load in lb at which it pulls out: p = 15700 G^2 D L, G at 12 % moisture, Wood Handbook eq. 8-10. Five and a half
    times the design value: to say how a screw fails, never what it may carry."""
    return float(figure("screw_withdrawal_ultimate")) * float(gravity) ** 2 * float(diameter) * float(depth)


def lag_withdrawal(gravity: Number, diameter: Number) -> float:
    """Design withdrawal of a lag screw, lb per inch of thread, tip not counted: W = 1800 G^1.5 D^0.75, NDS 12.2.1."""
    return float(figure("lag_withdrawal")) * float(gravity) ** 1.5 * float(diameter) ** 0.75


def screw_lateral(gravity: Number, diameter: Number, depth: Number) -> float:
    """Allowable lateral load of a wood screw, lb: C D^2 by the wood's group, in the rules before 1991 (the form is Wood
    Handbook eq. 8-13); whole from 10 D deep, in proportion down to 6 D, nothing below."""
    if depth < least_penetration(diameter):
        return 0.0
    share = min(1.0, float(depth) / (float(figure("screw_penetration_full")) * float(diameter)))
    return float(figure(f"lateral_group_{_group(gravity)}")) * float(diameter) ** 2 * share


def least_penetration(diameter: Number, lag: bool = False) -> Number:
    """How deep a screw must go into the second piece: 6 D, a lag screw 4 D. NDS 12.1.5.6, 12.1.4.6."""
    return figure("lag_penetration" if lag else "screw_penetration") * diameter


def lead_hole(root: Number, hardwood: bool) -> Number:
    """Diameter of the hole for the thread: 70 % of the root in softwood, 90 % in hardwood. Wood Handbook, ch. 8."""
    return figure("lead_hardwood" if hardwood else "lead_softwood") * root


def thread_held(length: Number, through: Number, diameter: Number) -> float:
    """Inches of full thread in the second piece of a wood screw that first goes `through` something.

    The thread is two thirds of the length; the tip, 2 D, is left out, on the safe side.
    """
    thread = min(float(figure("screw_thread")) * float(length), float(length) - float(through))
    return max(0.0, thread - float(figure("screw_tip")) * float(diameter))


@dataclass(frozen=True)
class Cleat:
    """A cleat or rail that holds a box on a wall.

    `weight` of box and contents; `reach`, from the wall to the middle of that weight; `arm`, from the line on which the
    box bears below up to the screws; `screws` into studs; their diameter and length; `through`, what they pass before
    the stud (rail and wall covering together); `gravity` of the studs.
    """

    weight: Number
    reach: Number
    arm: Number
    screws: int
    diameter: Number
    length: Number
    through: Number
    gravity: Number


@dataclass(frozen=True)
class CleatEstimate:
    """Pounds on each screw, down and out, and what the published formulas allow it.

    `used`: the two shares added, never less than by the interaction formula of NDS 12.4.1; above 1 is too much. None:
    the screws hold nothing.
    """

    down: float
    out: float
    down_allowed: float
    out_allowed: float
    used: float | None


def wall_cleat(cleat: Cleat) -> CleatEstimate:
    """An estimate of a cleat's screws, all taken to carry alike; see `CAUTION`.

    The weight turns the box about its lower edge, and the screws, `arm` above it, hold against that: out = weight x
    reach / arm. ValueError without screws or arm.
    """
    if cleat.screws < 1 or cleat.arm <= 0:
        raise ValueError("a cleat has screws, above the edge that bears")
    weight, screws = float(cleat.weight), cleat.screws
    down, out = weight / screws, weight * float(cleat.reach) / float(cleat.arm) / screws
    depth = cleat.length - cleat.through
    down_allowed = screw_lateral(cleat.gravity, cleat.diameter, depth)
    held = thread_held(cleat.length, cleat.through, cleat.diameter) if down_allowed else 0.0
    out_allowed = screw_withdrawal(cleat.gravity, cleat.diameter) * held
    used = down / down_allowed + out / out_allowed if down_allowed and out_allowed else None
    return CleatEstimate(down, out, down_allowed, out_allowed, used)


def _group(gravity: Number) -> int:
    reached = (group for group in LATERAL_GROUPS if gravity >= float(figure(f"lateral_group_{group}_from")))
    return next(reached, len(LATERAL_GROUPS) + 1)
