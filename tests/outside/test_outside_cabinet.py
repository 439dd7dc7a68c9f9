"""A base cabinet worked by hand. Layout rules: common practice, no source (check-values.md section 7):

pocket holes 2 in from the ends, two of them up to 6 in, then at most 8 in apart; screws 2 in from the ends and at most
8 in apart, two rows on a contact wider than 3 in; brads 1 in from the ends and at most 6 in apart; on a short contact
the first fastener sits a quarter in. A screw leaves 1/8 to the mouth of a pocket in its way, the ends of its row set
in by quarters of an inch. The rest is subtraction, from 30 x 34-1/2 x 24, plywood 23/32 and 7/32.
"""

from __future__ import annotations

import csv
import io
from itertools import product
from pathlib import Path

import pytest
from compiling import sound
from taping import cut_list, diagonals, fasteners, held_by, holes, inch, stands

from setout.write import write


@pytest.fixture(scope="module")
def cabinet():
    return sound((Path(__file__).parent / "cabinet.rod").read_text("utf-8"))


def places(first: str, second: str) -> list:
    """Every pair of the numbers of two lines."""
    return sorted(product(map(inch, first.split()), map(inch, second.split())))


def test_the_cut_list(cabinet):
    assert cut_list(cabinet) == {
        names: (count, *map(inch, sizes.split(" x ")))
        for names, count, sizes in (
            # handed: the notch and the good face make a left one and a right one; 24 - 7/32 deep
            ("left_side", 1, "34-1/2 x 23-25/32 x 23/32"),
            ("right_side", 1, "34-1/2 x 23-25/32 x 23/32"),
            # 30 - 2 x 23/32 = 30 - 1-7/16
            ("bottom_panel shelf.1", 2, "28-9/16 x 23-25/32 x 23/32"),
            ("front_rail back_rail", 2, "28-9/16 x 4 x 23/32"),
            ("kick", 1, "30 x 4 x 23/32"),
            ("back_panel", 1, "30-1/2 x 30 x 7/32"),  # 34-1/2 - 4 high; the grain runs up
            ("worktop", 1, "31 x 25 x 23/32"),
            ("wall_rail", 1, "48 x 1-1/2 x 3/4"),
        )
    }


@pytest.mark.parametrize(
    ("board", "axis", "low", "high"),
    [
        ("base.bottom_panel", "high", "4", "4-23/32"),
        # opening: 34-1/2 - 23/32 (rail) - 4-23/32 = 29-1/16; less the shelf 28-11/32; half of it 14-11/64
        ("base.shelf.1", "high", "18-57/64", "19-39/64"),  # 4-23/32 + 14-11/64; and 33-25/32 - 14-11/64
        ("base.front_rail", "high", "33-25/32", "34-1/2"),
        ("base.back_rail", "deep", "19-25/32", "23-25/32"),
        ("base.kick", "deep", "2-9/32", "3"),
        ("base.right_side", "wide", "29-9/32", "30"),
    ],
)
def test_where_boards_stand(cabinet, board, axis, low, high):
    assert stands(cabinet, board, axis) == (inch(low), inch(high))


def test_pocket_holes(cabinet):
    # 23-25/32 less 2 at both ends is 19-25/32: three steps of at most 8, 6-19/32 each
    deep = "2 8-19/32 15-3/16 21-25/32"
    for board in ("base.bottom_panel", "base.shelf.1"):
        assert holes(cabinet, board, "pocket") == {
            ("bottom", "left"): places("0", deep),
            ("bottom", "right"): places("28-9/16", deep),
        }
    # 4 is no more than 6: two, and a quarter of 4 is nearer the end than 2
    for board in ("base.front_rail", "base.back_rail"):
        assert holes(cabinet, board, "pocket") == {
            ("bottom", "left"): places("0", "1 3"),
            ("bottom", "right"): places("28-9/16", "1 3"),
        }
    # two boards with 4 + 4, two rails with 2 + 2; a 3/4 board takes 1-1/4 in screws
    assert fasteners(cabinet)["pockets", 8, inch("1-1/4"), None] == 2 * 8 + 2 * 4


def test_screws_through_the_worktop(cabinet):
    # The rails' pockets lie in the same lines, 1 and 3 in of 4. A 3/8 bit at 15 degrees through the middle of the end
    # leaves the face 23/64 / tan 15 + 3/16 / sin 15 = 2.07 from it; 1/8 and half a no. 8 screw more: 2.27, so 2-1/2.
    # Along 28-9/16, less 2-1/2 at both ends, 23-9/16: three steps of at most 8, 7-41/48 each.
    along = "2-1/2 10-17/48 18-5/24 26-1/16"
    for rail in ("base.front_rail", "base.back_rail"):
        assert holes(cabinet, rail, "pilot") == {("top", ""): places(along, "1 3")}
    # The worktop is flush at the left and 1 in over the front: 23/32 more from its left, 1 more from its front.
    # The back rail begins 19-25/32 behind the cabinet's front.
    assert holes(cabinet, "worktop", "clearance") == {
        ("top", ""): places("3-7/32 11-7/96 18-89/96 26-25/32", "2 4 21-25/32 23-25/32")
    }
    # 23/32 through, and 23/32 less 1/8 for the tip to go into: 1-1/4 is the longest that stays inside
    assert fasteners(cabinet)["screws", 8, inch("1-1/4"), None] == 16


def test_brads(cabinet):
    # 30-1/2 less 1 at both ends: five steps of at most 6. 28-9/16: 26-9/16, five steps as well. 4: one step.
    assert held_by(cabinet, "brads") == {
        "back_panel left_side": 6, "back_panel right_side": 6, "back_panel bottom_panel": 6, "back_panel shelf.1": 6,
        "back_panel back_rail": 6, "kick left_side": 2, "kick right_side": 2, "kick bottom_panel": 6,
    }  # fmt: skip
    # three times 7/32 is 21/32: 3/4 in. Three times 23/32 is 2-5/32: 2 in is the longest on sale
    assert fasteners(cabinet)["brads", None, inch("3/4"), None] == 30
    assert fasteners(cabinet)["brads", None, inch("2"), None] == 10


def test_screws_into_the_studs(cabinet):
    """Rail 3/4, wallboard 1/2, 1-1/2 into the stud: 2-3/4, buy 3 (section 7: common practice, arithmetic D)."""
    # studs at 5, 21, 37 and 53; the rail ends at 48
    assert holes(cabinet, "wall_rail", "clearance") == {("front", ""): places("5 21 37", "3/4")}
    assert fasteners(cabinet)["screws", 10, inch("3"), None] == 3


def test_the_list_as_printed(cabinet):
    rows = list(csv.DictReader(io.StringIO(write(cabinet, frozenset({"csv"}))["cutlist.csv"].decode())))
    assert [(r["mark"], r["count"], r["length"], r["width"], r["thick"], r["grain"]) for r in rows] == [
        ("A1", "1", "31 in", "25 in", "23/32 in", "length"),
        ("A2", "1", "48 in", "1-1/2 in", "3/4 in", "length"),
        ("B1", "1", "34-1/2 in", "23-25/32 in", "23/32 in", "length"),
        ("B2", "1", "34-1/2 in", "23-25/32 in", "23/32 in", "length"),
        ("B3", "2", "28-9/16 in", "23-25/32 in", "23/32 in", "length"),
        ("B4", "2", "28-9/16 in", "4 in", "23/32 in", "length"),
        ("B5", "1", "30 in", "4 in", "23/32 in", "length"),
        ("B6", "1", "30-1/2 in", "30 in", "7/32 in", "length"),
    ]


def test_nothing_else_is_driven_or_drilled(cabinet):
    assert sum(fasteners(cabinet).values()) == 24 + 16 + 40 + 3
    bores = [bore.kind for board in cabinet.pieces.joined.drawn.boards.values() for bore in board.bores]
    assert len(bores) == 24 + 2 * 16 + 3


def test_the_diagonal(cabinet):
    # 30² + 34-1/2² = 2090-1/4; 45-23/32² = 2090.2041; 45-3/4² = 2093.06
    assert diagonals(cabinet) == [("Base cabinet", "45-23/32", True)]
