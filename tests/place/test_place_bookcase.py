"""The bookcase of specs/, worked out by hand: 32 × 48 × 11-1/4, ply 23/32, back 7/32; the room is 130 deep."""

from __future__ import annotations

from fractions import Fraction as F
from itertools import pairwise

import pytest

from setout.geometry import Axis
from setout.place import place
from setout.read import read
from setout.resolve import resolve
from setout.source import Source

PLY, THIN = F(23, 32), F(7, 32)
BACK = F(130)
FRONT = BACK - F(45, 4)
INNER = (PLY, 32 - PLY)  # between the sides
OPENING = ((48 - PLY) - (3 + PLY) - 3 * PLY) / 4  # four equal ones, three shelves between bottom and top panel


@pytest.fixture(scope="module")
def bookcase(repo):
    path = repo / "specs" / "bookcase.rod"
    project = resolve(read(Source("bookcase.rod", path.read_text("utf-8"))).value, lambda _: None, {})
    checked = place(project.value)
    assert not checked.diagnostics
    return checked.value.drawn


def shelf(n):
    low = 3 + PLY + n * OPENING + (n - 1) * PLY
    return INNER, (low, low + PLY), (FRONT, BACK - THIN)


@pytest.mark.parametrize(
    ("name", "wide", "high", "deep"),
    [
        ("left_side", (F(0), PLY), (F(0), F(48)), (FRONT, BACK)),
        ("right_side", (32 - PLY, F(32)), (F(0), F(48)), (FRONT, BACK)),
        ("top_panel", INNER, (48 - PLY, F(48)), (FRONT, BACK - THIN)),
        ("bottom_panel", INNER, (F(3), 3 + PLY), (FRONT, BACK - THIN)),
        ("shelf.1", *shelf(1)),
        ("shelf.2", *shelf(2)),
        ("shelf.3", *shelf(3)),
        ("kick", INNER, (F(0), F(3)), (FRONT + 2, FRONT + 2 + PLY)),
        ("back_panel", INNER, (F(3), F(48)), (BACK - THIN, BACK)),
    ],
)
def test_every_board_is_where_a_person_would_work_it_out(bookcase, name, wide, high, deep):
    box = bookcase.boards[f"bookcase.{name}"].box
    assert [(box.lo[a], box.hi[a]) for a in Axis] == [wide, high, deep]


def test_clear_openings_are_exactly_equal(bookcase):
    order = ["bottom_panel", "shelf.1", "shelf.2", "shelf.3", "top_panel"]
    boxes = [bookcase.boards[f"bookcase.{name}"].box for name in order]
    assert {above.lo[1] - below.hi[1] for below, above in pairwise(boxes)} == {OPENING}


def test_a_shelf_says_how_its_length_came_about(bookcase):
    why = bookcase.boards["bookcase.shelf.2"].why[Axis.WIDE]
    assert (why.kind, why.text, why.amount) == ("rule", "gap between left_side and right_side", 32 - 2 * PLY)
    assert sorted(leaves(why)) == ["32", "thickness of ply", "thickness of ply"]


def test_grain_and_good_face_follow_the_board(bookcase):
    boards = bookcase.boards
    assert boards["bookcase.left_side"].grain == Axis.HIGH
    assert boards["bookcase.shelf.1"].grain == Axis.WIDE  # unsaid: the longer side
    assert boards["bookcase.left_side"].show.word == "left"
    assert boards["bookcase.right_side"].show.word == "right"


def test_a_repeat_in_a_joint_stands_for_all_its_members(bookcase):
    sides = {side.text: side for joint in bookcase.joints for side in (*joint.entering, *joint.receiving)}
    assert sides["shelf"].boards == tuple(f"bookcase.shelf.{n}" for n in (1, 2, 3))
    assert sides["left_side"].boards == ("bookcase.left_side",)


def leaves(trace):
    return [text for part in trace.parts for text in leaves(part)] if trace.parts else [trace.text]
