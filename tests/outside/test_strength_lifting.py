"""Lifting and tipping as published. Rows: check-values.md, section 9."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setout.strength import (
    Lift,
    figure,
    in_tip_over_scope,
    lifting_index,
    one_person_limit,
    recommended_weight,
    tipping_load,
    tips,
)

# NIOSH 94-110 (rev. 9/2021), p. 46, example 4, package inspection: both ends of the lift (rows R; the inputs D)
ORIGIN = Lift(reach=10, height=22, travel=37, per_minute=3, grip="fair")
DESTINATION = replace(ORIGIN, reach=20, height=59)


@pytest.mark.parametrize(
    ("end", "rounded", "printed"),
    [(ORIGIN, True, "34.9"), (DESTINATION, True, "15.2"), (ORIGIN, False, "34.8"), (DESTINATION, False, "15.3")],
)
def test_the_package_inspection(end, rounded, printed):
    assert f"{float(recommended_weight(end, rounded)):.1f}" == printed


def test_the_index_of_the_package_inspection():
    """The same, p. 20: the weight over the recommended weight."""
    assert lifting_index(26, ORIGIN) == pytest.approx(26 / 34.81, abs=0.001)


def test_at_its_best_one_person_lifts_the_load_constant():
    """The same, p. 7: 51 lb (23 kg)."""
    best = Lift(reach=10, height=30, travel=10, grip="good")
    assert recommended_weight(best) == 51 and round(51 * 0.45359237) == 23
    assert recommended_weight(replace(best, reach=4, travel=2)) == 51  # nearer and shorter counts as that


@pytest.mark.parametrize("past", [{"reach": 26}, {"height": 71}, {"height": -1}, {"travel": 71}, {"twist": 136}])
def test_beyond_the_limits_nothing_is_lifted(past):
    """The same, p. 7: H to 25, V 0 to 70, D to 70 in, A to 135 degrees."""
    lift = replace(ORIGIN, **past)
    assert recommended_weight(lift) == 0 and lifting_index(10, lift) is None


@pytest.mark.parametrize(
    ("grip", "low", "high"), [("good", "1.00", "1.00"), ("fair", "0.95", "1.00"), ("poor", "0.90", "0.90")]
)
def test_grip(grip, low, high):
    """The same, Table 7: hands below 30 in, and from 30 in."""
    best = Lift(reach=10, height=30, travel=10, grip=grip)
    assert recommended_weight(best) == 51 * F(high)
    assert recommended_weight(replace(best, height=29)) == 51 * F(low) * (1 - F("0.0075"))


@pytest.mark.parametrize(
    ("per_minute", "multiplier"),
    [("0.1", "1"), ("0.2", "1"), ("0.5", ".97"), ("1", ".94"), ("2", ".91"), ("3", ".88"), ("4", ".84"), ("5", ".80")],
)
def test_how_often(per_minute, multiplier):
    """The same, Table 5, up to an hour."""
    lift = Lift(reach=10, height=30, travel=10, per_minute=F(per_minute), grip="good")
    assert recommended_weight(lift) == 51 * F(multiplier)


def test_between_two_rows_the_lower_weight_counts():
    lift = Lift(reach=10, height=30, travel=10, grip="good")
    assert recommended_weight(replace(lift, per_minute=F(3, 2))) == recommended_weight(replace(lift, per_minute=2))
    with pytest.raises(ValueError):
        recommended_weight(replace(lift, per_minute=6))


@given(st.integers(2, 40), st.integers(0, 70), st.integers(0, 70))
def test_a_deeper_box_is_never_lifted_more_easily(deep, low, high):
    limit = one_person_limit(deep, low, high)
    assert 0 <= one_person_limit(deep + 1, low, high) <= limit <= 51
    assert limit == one_person_limit(deep, high, low)


def test_a_box_too_deep_to_reach_round():
    """8 in to its near side and half its depth (NIOSH 94-110, ch. 1, from memory), 25 in at most (p. 7)."""
    assert one_person_limit(34, 30, 40) > 0 and one_person_limit(35, 30, 40) == 0


# --- tipping ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("high", "pounds", "cubic_feet", "free", "falls"),
    [
        ("27", "30", "3.2", True, True),
        ("26-31/32", "30", "3.2", True, False),
        ("27", "29.9", "3.2", True, False),
        ("27", "30", "3.19", True, False),
        ("60", "120", "20", False, False),
    ],
)
def test_the_scope_of_the_tip_over_standard(high, pounds, cubic_feet, free, falls):
    """ASTM F2057-23, scope; 16 CFR 1261: free-standing, 27 in, 30 lb, 3.2 ft3 (row R)."""
    tall = sum(map(F, high.split("-")), F(0))
    assert in_tip_over_scope(tall, F(pounds), F(cubic_feet) * 1728, free) == falls


def test_the_load_of_the_test():
    """60 lb on an open drawer: 88 FR 28403 (row R)."""
    assert figure("tip_drawer_load") == 60


@given(st.integers(1, 30), st.integers(1, 300), st.integers(0, 30))
def test_it_tips_just_above_the_tipping_load(overhang, pounds, behind):
    """Statics (row D): load x overhang against weight x distance of its middle behind the front feet."""
    most = tipping_load(F(overhang), F(pounds), F(behind))
    assert not tips(most, F(overhang), F(pounds), F(behind))
    assert tips(most + F(1, 100), F(overhang), F(pounds), F(behind))


def test_a_load_behind_the_feet_tips_nothing():
    assert tipping_load(F(-1), F(50), F(8)) is None and not tips(10**6, F(-1), F(50), F(8))
