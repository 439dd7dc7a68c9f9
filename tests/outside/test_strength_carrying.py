"""Carrying in, against rectangles that shapely turns: every angle tried, no formula shared."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import box as rectangle

from setout.strength import carried_in, fits_slanting, rise_squared, smallest_section, stands_up, ways_through

SIZES = st.integers(4, 400).map(lambda n: F(n, 4))
BOXES = st.tuples(SIZES, SIZES, SIZES)
DOORWAYS = st.tuples(SIZES, SIZES)
SHARES = st.integers(-12, 12).map(lambda n: 1 + F(n, 200))  # from 6 % too small to 6 % too large
ANGLES = [n / 4 for n in range(361)]  # 0 to 90 degrees
CLOSE = 0.006  # by how much a size may be misjudged between two of those angles: a share


def turned_to_fit(section, doorway, by=1.0) -> bool:
    """Whether the section, made larger `by` a factor, lies within the doorway at one of the angles."""
    shape = rectangle(0, 0, float(section[0]) * by, float(section[1]) * by)
    for angle in ANGLES:
        low_x, low_y, high_x, high_y = affinity.rotate(shape, angle, origin=(0, 0)).bounds
        if high_x - low_x <= float(doorway[0]) + 1e-9 and high_y - low_y <= float(doorway[1]) + 1e-9:
            return True
    return False


def raised(high, foot) -> float:
    """The greatest height on the way from lying to standing, turned about the edge on the floor."""
    lying = rectangle(0, 0, float(high), float(foot))
    return max(affinity.rotate(lying, angle, origin=(0, 0)).bounds[3] for angle in ANGLES)


@st.composite
def close_calls(draw) -> tuple[tuple[F, F], tuple[F, F]]:
    """A section and a doorway that it only just passes, or only just doesn't, at an angle drawn."""
    long, short = draw(st.integers(40, 400)), draw(st.integers(1, 80))
    turned = affinity.rotate(rectangle(0, 0, long / 4, short / 4), draw(st.integers(0, 90)), origin=(0, 0)).bounds
    wide, high = (F(round(64 * (turned[n + 2] - turned[n])), 64) * draw(SHARES) for n in (0, 1))
    return (F(long, 4), F(short, 4)), (wide, high)


@settings(max_examples=150, deadline=None)
@given(st.one_of(st.tuples(DOORWAYS, DOORWAYS), close_calls()))
def test_a_section_in_a_doorway_at_any_angle(case):
    section, doorway = case
    if fits_slanting(section, doorway):
        assert turned_to_fit(section, doorway, 1 - CLOSE)
    else:
        assert not turned_to_fit(section, doorway)


@settings(max_examples=60, deadline=None)
@given(box=BOXES, doorway=DOORWAYS)
def test_a_box_passes_when_one_of_its_three_sections_does(box, doorway):
    sections = [(box[0], box[1]), (box[0], box[2]), (box[1], box[2])]
    if ways_through(box, doorway):
        assert any(turned_to_fit(section, doorway, 1 - CLOSE) for section in sections)
    else:
        assert not any(turned_to_fit(section, doorway) for section in sections)


@given(box=BOXES, doorway=DOORWAYS)
def test_the_smallest_section_decides(box, doorway):
    assert bool(ways_through(box, doorway)) == fits_slanting(smallest_section(box), doorway)


@given(box=BOXES, doorway=DOORWAYS)
def test_straight_ways_need_no_angle(box, doorway):
    for way in ways_through(box, doorway):
        fits = box[way.across] <= doorway[0] and box[way.up] <= doorway[1]
        assert fits != way.tilted and {way.first, way.across, way.up} == {0, 1, 2}
        assert way.upright == (way.up == 1 and not way.tilted)


@settings(max_examples=60, deadline=None)
@given(box=BOXES, near=SHARES)
def test_standing_up_under_a_ceiling(box, near):
    reached = min(raised(box[1], box[0]), raised(box[1], box[2]))
    ceiling = F(reached) * near
    if stands_up(box, ceiling):
        assert reached <= float(ceiling) + 1e-9
    else:
        assert reached > float(ceiling) * (1 - 1e-4)


def test_a_touching_fit_is_a_fit():
    """3-4-5: 72 high on a foot of 54 is raised under 90, not under a hair less; 30 wide passes a 30 in doorway."""
    assert rise_squared((F(60), F(72), F(54))) == 90**2
    assert stands_up((F(60), F(72), F(54)), F(90)) and not stands_up((F(60), F(72), F(54)), F(89999, 1000))
    assert ways_through((F(30), F(78), F(40)), (F(30), F(78)))[0].upright
    assert not ways_through((F(31), F(79), F(31)), (F(30), F(78)))


def test_a_slanting_fit_worked_out():
    """6-8-10: at the angle of 3-4-5 a section 10 x 5 spans 10 x 4/5 + 5 x 3/5 = 11 and 10 x 3/5 + 5 x 4/5 = 10."""
    assert fits_slanting((F(10), F(5)), (F(11), F(10)))
    assert fits_slanting((F(0), F(10)), (F(8), F(6))) and not fits_slanting((F(0), F(10)), (F(8), F(599, 100)))


@pytest.mark.parametrize(
    ("box", "upright", "stands", "possible"),
    [
        (("30", "84", "24"), False, True, True),  # too tall for the doorway, but raised: 87.4 under 90
        (("36", "84", "36"), False, False, False),  # no section is under 30
        (("30", "88", "24"), False, False, False),  # comes in lying, 91.2 under 90: it stays lying
        (("48", "72", "24"), True, True, True),
        (("72", "76", "29"), True, True, True),
        (("60", "77", "29"), True, True, True),
    ],
)
def test_boxes_through_an_ordinary_doorway(box, upright, stands, possible):
    """A doorway 30 x 78, a ceiling of 90 in: common practice, no source."""
    found = carried_in(tuple(map(F, box)), (F(30), F(78)), F(90))
    assert (found.upright, found.stands_up, found.possible) == (upright, stands, possible)


def test_upright_is_told_first():
    first, *_, last = ways_through((F(20), F(30), F(10)), (F(30), F(78)))
    assert first.upright and not last.upright
