"""Screws against the published design tables. Rows: check-values.md, section 5."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from setout.strength import (
    Cleat,
    figure,
    find_species,
    lag_withdrawal,
    lead_hole,
    least_penetration,
    screw_lateral,
    screw_withdrawal,
    screw_withdrawal_ultimate,
    thread_held,
    wall_cleat,
)

DIAMETER = {6: 0.138, 8: 0.164, 10: 0.190, 12: 0.216}  # ASME B18.6.1
GRAVITY = (0.42, 0.50, 0.55, 0.67)


@pytest.mark.parametrize(("gravity", "printed"), [(0.45, 109.7), (0.50, 135)])
def test_withdrawal_as_in_reference_pages(gravity, printed):
    """Gauge 10, lb per inch: two reference pages (row R)."""
    assert screw_withdrawal(gravity, 0.190) == pytest.approx(printed, abs=0.5)


@pytest.mark.parametrize(
    ("gauge", "row"),
    [(6, (69, 98, 119, 177)), (8, (82, 117, 141, 210)), (10, (96, 135, 164, 243)), (12, (109, 154, 186, 276))],
)
def test_withdrawal_of_wood_screws(gauge, row):
    """NDS eq. 12.2-2, W = 2850 G^2 D, lb per inch at G 0.42, 0.50, 0.55, 0.67 (grid: row D)."""
    assert tuple(round(screw_withdrawal(g, DIAMETER[gauge])) for g in GRAVITY) == row


@pytest.mark.parametrize(
    ("gravity", "row"),
    [
        (0.42, (173, 205, 235, 291)),
        (0.50, (225, 266, 305, 378)),
        (0.55, (260, 307, 352, 437)),
        (0.67, (349, 413, 473, 587)),
    ],
)
def test_withdrawal_of_lag_screws(gravity, row):
    """NDS 2018 Table 12.2A, lb per inch: 1/4, 5/16, 3/8, 1/2 in (rows R)."""
    assert tuple(round(lag_withdrawal(gravity, d)) for d in (1 / 4, 5 / 16, 3 / 8, 1 / 2)) == row


@pytest.mark.parametrize(("wood", "pounds"), [("red oak", 1022), ("hard maple", 1022), ("yellow-poplar", 454)])
def test_pulling_a_screw_out(wood, pounds):
    """Wood Handbook eq. 8-10, gauge 8, one inch deep (row D)."""
    assert round(screw_withdrawal_ultimate(find_species(wood).gravity, 0.164, 1)) == pounds


def test_the_metric_constant_is_the_same():
    """Wood Handbook eq. 8-10: 108.25 in newtons and millimetres (factor check 108.248, row D)."""
    newtons = screw_withdrawal_ultimate(1, 1 / 25.4, 1 / 25.4) * 4.448222
    assert newtons == pytest.approx(108.248, abs=0.001)


@pytest.mark.parametrize(("gauge", "inches"), [(8, 0.984), (10, 1.14), (12, 1.30)])
def test_least_penetration(gauge, inches):
    """NDS 12.1.5.6: 6 D (row R)."""
    assert least_penetration(DIAMETER[gauge]) == pytest.approx(inches, abs=0.005)


def test_least_penetration_of_a_lag_screw():
    """NDS 12.1.4.6: 4 D (row R)."""
    assert least_penetration(F(3, 8), lag=True) == F(3, 2)


@pytest.mark.parametrize(("hardwood", "inches"), [(False, "0.0917"), (True, "0.1179")])
def test_lead_holes(hardwood, inches):
    """Wood Handbook ch. 8: 70 % of the root diameter in softwood, 90 % in hardwood (row R); gauge 8, root 0.131."""
    assert lead_hole(F("0.131"), hardwood) == F(inches)


@pytest.mark.parametrize(
    ("wood", "printed"),
    [
        *(("red oak", "0.68"), ("red maple", "0.58"), ("southern pine", "0.55"), ("Douglas-fir", "0.50")),
        *(("eastern white pine", "0.36"), ("beech", "0.71"), ("yellow birch", "0.71")),
    ],
)
def test_specific_gravity_for_design(wood, printed):
    """NDS Table 12.3.3A (row R). The other basis, at 12 % moisture, is lower: safe where no figure is listed."""
    species = find_species(wood)
    assert species.design == F(printed) and species.design >= species.gravity


def test_studs_are_taken_to_be_spruce():
    """NDS Table 12.3.3A: spruce-pine-fir 0.42, the lightest of the usual framing lumber (row R)."""
    assert figure("stud_gravity") == F("0.42")


@pytest.mark.parametrize(
    ("gravity", "constant"), [(0.68, 4800), (0.51, 3960), (0.59, 3960), (0.44, 3240), (0.41, 2520)]
)
def test_lateral_load_of_a_screw_well_in(gravity, constant):
    """p = C D^2 by groups: a handbook of civil engineering formulas, ch. 6 (Douglas-fir 0.51 and southern pine 0.59 in
    group II, western hemlock 0.44 in III, spruce 0.41 in IV); the form is Wood Handbook eq. 8-13 (row R)."""
    assert screw_lateral(gravity, 0.190, 2) == pytest.approx(constant * 0.190**2)


def test_lateral_load_falls_with_the_depth():
    whole = screw_lateral(0.5, 0.2, 2)
    assert screw_lateral(0.5, 0.2, 1.5) == pytest.approx(whole * 0.75) and screw_lateral(0.5, 0.2, 1.1) == 0


def test_thread_in_the_second_piece():
    """Two thirds of the length is thread, the tip is 2 D (row R)."""
    assert thread_held(3, 1.25, 0.19) == pytest.approx(1.75 - 0.38)  # all of what is in the wood
    assert thread_held(3, 0.25, 0.19) == pytest.approx(2 - 0.38)  # no more than there is
    assert thread_held(1, 1, 0.19) == 0


# --- the cleat -------------------------------------------------------------------------------------------------


def cleat(**facts):
    usual = {
        "weight": 100,
        "reach": 6,
        "arm": 24,
        "screws": 4,
        "diameter": 0.19,
        "length": 3,
        "through": 1.25,
        "gravity": 0.42,
    }
    return wall_cleat(Cleat(**{**usual, **facts}))


def test_a_cleat_by_hand():
    """100 lb, 6 in out, 24 in above the edge that bears, four gauge-10 screws 1-3/4 in into spruce studs, by the
    formulas above: 25 lb down and 6.25 lb out on each; 2520 x 0.19^2 x 1.75/1.9
    and 2850 x 0.42^2 x 0.19 x 1.37 allowed."""
    found = cleat()
    assert (found.down, found.out) == (25, 6.25)
    assert found.down_allowed == pytest.approx(83.79, abs=0.01) and found.out_allowed == pytest.approx(130.86, abs=0.01)
    assert found.used == pytest.approx(25 / 83.79 + 6.25 / 130.86, abs=1e-3)


def test_screws_that_are_too_short_hold_nothing():
    assert cleat(length=2).used is None


def test_a_cleat_without_screws_is_our_slip():
    with pytest.raises(ValueError):
        cleat(screws=0)


@given(st.integers(10, 800), st.integers(1, 15), st.integers(2, 60), st.integers(1, 12))
def test_a_cleat_balances(weight, reach, arm, screws):
    """Forces and moments about the lower edge add up; the shares added are never under the interaction formula (NDS
    12.4.1, from memory): R (W cos^2 + Z sin^2) / (W Z) with the load R at its angle to the wood's face."""
    found = cleat(weight=weight, reach=reach, arm=arm, screws=screws)
    assert found.down * screws == pytest.approx(weight)
    assert found.out * screws * arm == pytest.approx(weight * reach)
    load = (found.down**2 + found.out**2) ** 0.5
    cosine, sine = found.down / load, found.out / load
    z, w = found.down_allowed, found.out_allowed
    assert found.used >= load * (w * cosine**2 + z * sine**2) / (w * z) - 1e-9


@given(st.integers(50, 400), st.integers(1, 11))
def test_more_screws_carry_more(weight, screws):
    one, more = cleat(weight=weight, screws=screws), cleat(weight=weight, screws=screws + 1)
    assume(one.used is not None)
    assert more.used < one.used
