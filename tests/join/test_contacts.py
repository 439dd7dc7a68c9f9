"""Where boards touch and overlap. Oracle: shapely, on 2D projections of generated boards."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st
from joinscenes import board, codes, joined, joint, notch, rest
from shapely import box as flat
from shapely import union_all

from setout.geometry import Axis, Box
from setout.join.solid import Solid, touch
from setout.join.sweep import close_pairs

_ends = st.tuples(st.integers(0, 6), st.integers(1, 4)).map(lambda p: (p[0], p[0] + p[1]))
boxes = st.tuples(_ends, _ends, _ends).map(
    lambda p: Box(tuple(Fraction(a) for a, _ in p), tuple(Fraction(b) for _, b in p))
)


def projected(box: Box, axis: int):
    u, v = (k for k in range(3) if k != axis)
    return flat(float(box.lo[u]), float(box.lo[v]), float(box.hi[u]), float(box.hi[v]))


def area_of(meeting) -> float:
    return projected(meeting.area, meeting.face.axis).area


@given(st.lists(boxes, max_size=7))
def test_the_sweep_finds_every_pair_that_comes_near(some):
    near = {(i, j) for i, j in combinations(range(len(some)), 2) if some[i].shared(some[j]) is not None}
    found = list(close_pairs(some))
    assert set(found) == near and len(found) == len(near)


@given(boxes, boxes)
def test_plain_boards_touch_as_their_projections_say(a, b):
    how = touch(Solid(a), Solid(b))
    overlap = all(projected(a, k).intersection(projected(b, k)).area > 0 for k in range(3))
    assert (how.shared is not None) == overlap
    for axis in Axis:
        meets = a.hi[axis] == b.lo[axis] or b.hi[axis] == a.lo[axis]
        common = projected(a, axis).intersection(projected(b, axis)).area if meets else 0
        assert sum(area_of(m) for m in how.meetings if m.face.axis == axis) == common


plates = st.tuples(boxes, st.lists(boxes, max_size=2))


def plate(drawn, low: int) -> tuple[Solid, object]:
    """A board 1 thick at deep `low`, its notches cut right through, and its outline."""
    body, notches = drawn
    flattened = [b.with_span(Axis.DEEP, Fraction(low), Fraction(low + 1)) for b in (body, *notches)]
    outline = projected(body, Axis.DEEP).difference(union_all([projected(n, Axis.DEEP) for n in notches]))
    return Solid(flattened[0], tuple(flattened[1:])), outline


@settings(max_examples=200)
@given(plates, plates)
def test_notched_boards_in_one_plane_touch_along_their_outlines(first, second):
    (a, outline_a), (b, outline_b) = plate(first, 0), plate(second, 0)
    how = touch(a, b)
    common = outline_a.intersection(outline_b)
    assert (how.shared is not None) == (common.area > 0)
    if how.shared is None:
        assert sum(area_of(m) for m in how.meetings) == common.length
    else:
        areas = union_all([part for part in getattr(common, "geoms", [common]) if part.area])
        assert tuple(map(float, how.shared.lo[:2] + how.shared.hi[:2])) == areas.bounds


@settings(max_examples=200)
@given(plates, plates)
def test_notched_boards_on_each_other_touch_where_both_have_wood(first, second):
    (a, outline_a), (b, outline_b) = plate(first, 0), plate(second, 1)
    how = touch(a, b)
    assert sum(area_of(m) for m in how.meetings) == outline_a.intersection(outline_b).area
    for one, other in combinations(how.meetings, 2):
        assert projected(one.area, 2).intersection(projected(other.area, 2)).area == 0


# --- what a joint makes of it --------------------------------------------------------------------------------

LEFT = board("left", (0, "3/4"), (0, 30), (0, 12))
SHELF = board("shelf", ("3/4", 20), (10, "10-3/4"), (0, 12))


def kinds(scene):
    return [(c.a, c.b, c.face_a.word, c.kind) for c in scene.contacts]


def test_the_way_two_parts_meet_is_read_off():
    scene, told = joined([LEFT, SHELF], joint("shelf", "left", "glue"))
    assert kinds(scene) == [("shelf", "left", "left", "butt")] and not told
    scene, _ = joined([LEFT, SHELF], joint("left", "shelf", "glue"))
    assert kinds(scene) == [("left", "shelf", "right", "lap")]


def test_a_kick_board_across_two_toe_notches_is_right():
    cut = notch((0, "3/4"), (0, 3), (0, "3/4"))
    side = board("side", (0, "3/4"), (0, 30), (0, 12), cut)
    kick = board("kick", (0, 20), (0, 3), (0, "3/4"))
    scene, told = joined([side, kick], joint("kick", "side", "screws"))
    assert codes(told) == []
    assert {(c.face_a.word, c.kind) for c in scene.contacts} == {("back", "lap"), ("top", "edge")}
    assert [f.driven for f in scene.fastenings] == ["kick"]  # screwed through its face alone


def test_a_contact_wholly_inside_a_notch_is_none():
    side = board("side", (0, "3/4"), (0, 30), (0, 12), notch((0, "3/4"), (9, 12), (0, 12)))
    _, told = joined([side, SHELF], joint("shelf", "side", "glue"))
    assert codes(told) == ["rod351"]


def test_named_parts_must_touch_and_the_gap_is_told():
    away = board("away", (1, 20), (10, "10-3/4"), (0, 12))
    _, told = joined([LEFT, away], joint("away", "left", "glue"))
    assert codes(told) == ["rod351"]
    assert "1/4 in apart on wide" in told[0].message and "its left is 1/4 in short" in told[0].label.text


def test_of_an_assembly_every_touching_board_is_a_contact():
    far = board("far", (30, 40), (0, 1), (0, 9))
    boards = [LEFT, SHELF, board("shelf2", ("3/4", 20), (20, "20-3/4"), (0, 12)), far]
    scene, told = joined(boards, joint(("shelf", "shelf2", "far"), "left", "glue"))
    assert [c.a for c in scene.contacts] == ["shelf", "shelf2"] and not codes(told)
    _, told = joined(boards, joint(("far",), "left", "glue"))
    assert codes(told) == ["rod352"]
    _, told = joined(boards, joint(("shelf",), "left", "glue", only="face"))
    assert codes(told) == ["rod353"]


def test_parts_that_overlap_are_an_error_with_the_amount_and_nothing_follows_from_it():
    into = board("into", ("1/2", 20), (10, "10-3/4"), (0, 12))
    _, told = joined([LEFT, into], joint("into", "left", "screws", "glue"))
    assert codes(told, notes=True) == ["rod350"] and "1/4 in of it on wide" in told[0].message


def test_touching_with_nothing_said_is_pointed_out_once_for_parts_alike():
    shelves = [board(f"shelf.{n}", ("3/4", 20), (n, f"{n}-3/4"), (0, 12), at=9) for n in (5, 10, 15)]
    _, told = joined([LEFT, *shelves])
    assert codes(told, notes=True) == ["rod354"] and "2 more places" in told[0].message
    _, told = joined([LEFT, *shelves], rests=[rest(f"shelf.{n}", "left") for n in (5, 10, 15)])
    assert not told


def test_three_hundred_boards_on_one_are_all_found():
    boards = [board("deck", (0, 400), (0, 1), (0, 100), thick="high")]
    for n in range(300):
        x, z = n % 30 * 12, n // 30 * 10
        boards.append(board(f"b{n}", (x, x + 1 if n % 2 else x + 12), (1, 9), (z, z + 10), thick="wide"))
    scene, _ = joined(boards, joint(tuple(f"b{n}" for n in range(300)), "deck", "glue"))
    assert len(scene.contacts) == 300
