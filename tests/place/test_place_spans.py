"""Each form of span and position on its own, in an assembly 30 × 40 × 12 with 3/4 boards. Arithmetic: by hand."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

JOB = "size wide 30, high 40, deep 12\n"
SIDES = "part left_side of ply { upright at left }\npart right_side of ply { upright at right }\n"


@pytest.mark.parametrize(
    ("clauses", "expected"),
    [
        ("level at bottom", "0..30 0..3/4 0..12"),
        ("level at top - 1", "0..30 153/4..39 0..12"),
        ("level; top at bottom + 10", "0..30 37/4..10 0..12"),
        ("level centred", "0..30 157/8..163/8 0..12"),
        ("level centred on left_side", "0..30 157/8..163/8 0..12"),
        ("level on left_side; proud top", "0..30 40..163/4 0..12"),
        ("level under right_side; proud bottom", "0..30 -3/4..0 0..12"),
        ("upright against left_side.right", "3/4..3/2 0..40 0..12"),
        ("level at bottom; wide between left_side and right_side", "3/4..117/4 0..3/4 0..12"),
        ("level at bottom; wide between right_side and left_side", "3/4..117/4 0..3/4 0..12"),
        ("level at bottom; wide between left_side and right_side clear 1/16", "13/16..467/16 0..3/4 0..12"),
        ("level at bottom; wide over left_side and right_side", "0..30 0..3/4 0..12"),
        ("level at bottom; wide over left_side and right_side plus 1; proud left, right", "-1..31 0..3/4 0..12"),
        ("level at bottom; wide from left_side.right + 1 to right - 2", "7/4..28 0..3/4 0..12"),
        ("level at bottom; wide 10 from left + 2", "2..12 0..3/4 0..12"),
        ("level at bottom; wide 10 to right - 2", "18..28 0..3/4 0..12"),
        ("level at bottom; wide 10 centred", "10..20 0..3/4 0..12"),
        ("level at bottom; wide 10 centred on left + 8", "3..13 0..3/4 0..12"),
        ("level at bottom, left, back; wide 10; deep 5", "0..10 0..3/4 7..12"),
        ("level at bottom, front + 2", "0..30 0..3/4 2..12"),
        ("level at bottom; wide left_side.high / 2 from left", "0..20 0..3/4 0..12"),
        ("level at bottom; deep from front + ply.thick to back", "0..30 0..3/4 3/4..12"),
        ("level at bottom; wide 3 from 5", "5..8 0..3/4 0..12"),
    ],
)
def test_a_panel_lies_where_its_clauses_say(spans, clauses, expected):
    assert spans(f"{JOB}{SIDES}part board of ply {{ {clauses} }}")["board"] == expected


@pytest.mark.parametrize(
    ("clauses", "expected"),
    [
        ("across level; at bottom, front", "0..30 0..3/4 0..3/2"),
        ("across facing; at top, back", "0..30 77/2..40 45/4..12"),
        ("up upright; at left, front", "0..3/4 0..40 0..3/2"),
        ("up facing; at left, front; high 20 from bottom", "0..3/2 0..20 0..3/4"),
        ("through level; at bottom; centred wide", "57/4..63/4 0..3/4 0..12"),
        ("across level; at bottom, front; rip 1-1/4", "0..30 0..3/4 0..5/4"),
    ],
)
def test_a_stick_lies_as_its_run_and_broad_face_say(spans, clauses, expected):
    assert spans(f"{JOB}part board of lath {{ {clauses} }}")["board"] == expected


def test_a_default_stands_in_for_what_a_part_leaves_out(spans):
    text = JOB + "default deep from front + 1 to back - 1\n"
    made = spans(text + "part a of ply { level at bottom }\npart b of ply { level at top; deep 3 from front }")
    assert made == {"a": "0..30 0..3/4 1..11", "b": "0..30 157/4..40 0..3"}


def test_openings_are_placed_by_the_same_forms(scene):
    made = scene(JOB + SIDES + "opening bay { wide between left_side and right_side; high from 2 to top }")
    box = made.openings["bay"].box
    assert [*map(str, box.lo), *map(str, box.hi)] == ["3/4", "2", "0", "117/4", "40", "12"]


def test_an_opening_can_be_measured_and_built_into(spans):
    bay = SIDES + "opening bay { wide between left_side and right_side }\n"
    made = spans(JOB + bay + "part shelf of ply { level at bottom; wide bay.wide - 1/8 centred on bay }")
    assert made["shelf"] == "13/16..467/16 0..3/4 0..12"


def test_a_repeat_at_a_pitch_counts_from_low_face_to_low_face(spans):
    made = spans(JOB + "part shelf of ply { level; repeat 2 every 10 from bottom + 5 }")
    assert made == {"shelf.1": "0..30 5..23/4 0..12", "shelf.2": "0..30 15..63/4 0..12"}


@given(count=st.integers(0, 20), low=st.fractions(0, 5, max_denominator=64), stock=st.sampled_from(["ply", "thin"]))
@settings(max_examples=40, deadline=None)
def test_a_divided_gap_leaves_exactly_equal_openings(scene, count, low, stock):
    panels = f"part low_panel of ply {{ level at bottom + {low} }}\npart top_panel of ply {{ level at top }}\n"
    made = scene(
        f"{JOB}{panels}part shelf of {stock} {{ level; repeat {count} between low_panel and top_panel }}"
    ).boards
    order = [made["low_panel"], *(made[f"shelf.{i + 1}"] for i in range(count)), made["top_panel"]]
    assert len({above.box.lo[1] - below.box.hi[1] for below, above in pairwise(order)}) == 1


def test_a_repeat_of_none_makes_none_and_its_joint_is_left_out(scene):
    text = SIDES + "part shelf of ply { level; repeat n every 10 from bottom; wide between left_side and right_side }\n"
    made = scene(JOB + "let n = 0\n" + text + "joint shelf to left_side { glue }")
    assert list(made.boards) == ["left_side", "right_side"] and not made.joints


def test_a_loose_part_has_a_size_and_no_place(scene):
    (board,) = scene("part shelf of ply { size 30 x 11-1/4; count 4 }").loose
    assert (board.path, board.count, board.grain) == ("shelf", 4, "length")
    assert (str(board.length), str(board.width)) == ("30", "45/4")


def test_what_a_when_leaves_out_takes_its_joints_with_it(scene):
    text = SIDES + "when n > 0 { part shelf of ply { level at bottom; wide between left_side and right_side } }\n"
    text += "joint shelf to left_side { glue }\n"
    assert "shelf" in scene(JOB + "let n = 1\n" + text).boards
    bare = scene(JOB + "let n = 0\n" + text)
    assert list(bare.boards) == ["left_side", "right_side"] and bare.joints == ()
