"""Fasteners by name, screws by gauge, drills by size."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor

from setout.practice import Practice
from setout.units import exact


def named(kind: str, gauge: int | None, length: Fraction | None, diameter: Fraction | None) -> str:
    """The fastener's name, exact, in inches: "pocket screw 1-1/4 in", "screw #8 x 2 in", "dowel 3/8 x 1-1/2 in"."""
    if kind == "glue":
        return "glue"
    assert length is not None
    if kind == "dowels":
        assert diameter is not None
        return f"dowel {exact(diameter)} x {exact(length)} in"
    if kind == "screws":
        return f"screw #{gauge} x {exact(length)} in"
    return f"{'pocket screw' if kind == 'pockets' else 'brad'} {exact(length)} in"


def screw_diameter(practice: Practice, gauge: int) -> Fraction:
    """ASME B18.6.1: D = 0.060 + 0.013 N inches."""
    return practice.value("screw_diameter_first") + gauge * practice.value("screw_diameter_step")


def clearance(practice: Practice, gauge: int) -> Fraction:
    """The drill a screw slips through: the next twist drill up from its diameter."""
    step = practice.value("drill_step")
    return ceil(screw_diameter(practice, gauge) / step) * step


def pilot(practice: Practice, gauge: int) -> Fraction:
    """The drill for the hole a screw bites into: the twist drill nearest to its share of the root."""
    step = practice.value("drill_step")
    root = practice.nearest("screw_root", Fraction(gauge)) * practice.value("pilot_share")
    return floor(root / step + Fraction(1, 2)) * step
