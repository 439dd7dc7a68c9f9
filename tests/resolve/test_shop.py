"""The shop: racks, whole boards on hand, saws, and what of them makes no sense."""

from __future__ import annotations

from fractions import Fraction

import pytest
from specs import BOX, LATH, PLY, codes, marked, project, resolved

from setout.diagnostics import Severity
from setout.resolve.model import RackBoard

MDF = 'stock mdf "1/2 MDF" { sheet 97 x 49 x 1/2 }\n'


def lying(boards: tuple[RackBoard, ...]) -> list[tuple]:
    return [(b.stock, b.length, b.width, b.grain, b.count) for b in boards]


def rack(text: str) -> list[tuple]:
    return lying(project(PLY + MDF + LATH + f"rack {{ {text} }}").rack)


@pytest.mark.parametrize(
    ("text", "lies"),
    [
        ("ply: 41 x 22-1/2", ("ply", 41, Fraction(45, 2), "length", 1)),
        ("ply: 2 of 11 x 60", ("ply", 60, 11, "width", 2)),
        ("ply: 2 of 60 x 11 grain along 11", ("ply", 60, 11, "width", 2)),
        ("ply: 11 x 60 grain along 60", ("ply", 60, 11, "length", 1)),
        ("ply: 20 x 20", ("ply", 20, 20, "length", 1)),
        ("mdf: 11 x 60", ("mdf", 60, 11, None, 1)),
        ("lath: 1 + 1 of 61", ("lath", 61, None, "length", 2)),
        ("ply: 254mm x lath.wide", ("ply", 10, Fraction(3, 2), "length", 1)),
    ],
)
def test_an_offcut_lies_with_its_longer_side_as_its_length(text, lies):
    """The grain runs along the first number, where nothing else is said and the stock has any."""
    assert rack(text) == [lies]


def test_racks_add_up_and_each_file_has_its_own_unit():
    text = (
        'project "Shelf" { units inch }\n' + PLY + 'rack { ply: 40 x 20 }\ninclude "rack.rod"\nrack { ply: 40 x 20 }\n'
    )
    files = {"rack.rod": 'project "Rack" { units mm }\nrack { ply: 2 of 508 x 254 }\n'}
    found = project(text, files=files).rack
    assert lying(found) == [
        ("ply", 40, 20, "length", 1), ("ply", 20, 10, "length", 2), ("ply", 40, 20, "length", 1),
    ]  # fmt: skip


def test_a_shared_rack_may_hold_what_a_job_has_no_stock_for():
    checked = resolved(PLY + 'include "rack.rod"', {"rack.rod": "rack { mdf: 9 x 9; ply: 9 x 9 }\nrack { mdf: 8 x 8 }"})
    assert [(d.code, d.severity) for d in checked.diagnostics] == [("rod238", Severity.NOTE)]
    assert checked.value is not None and lying(checked.value.rack) == [("ply", 9, 9, "length", 1)]


def test_whole_boards_on_hand_and_to_be_bought():
    one = "stick 2 x 1 long 96; on hand 2; at most 0"
    many = "stick 2 x 1 long 72, 96; on hand 3 of 72; at most 5 of 96; at most 1 of 72"
    made = project(
        "stock a { sheet 96 x 48 x 1/2; on hand 2; at most 4 }\n"
        f"stock b {{ {one} }}\nstock c {{ {many} }}\nstock d {{ sheet 96 x 48 x 1/2 }}"
    ).stocks
    assert (made["a"].on_hand, made["a"].at_most) == (((None, 2),), ((None, 4),))
    assert (made["b"].on_hand, made["b"].at_most) == (((96, 2),), ((96, 0),))
    assert (made["c"].on_hand, made["c"].at_most) == (((72, 3),), ((96, 5), (72, 1)))
    assert (made["d"].on_hand, made["d"].at_most) == ((), ())


def test_a_saw_does_what_its_clauses_say_and_nothing_else():
    text = "saw track { kerf 3/32; breaks down sheets }\n"
    text += 'saw table_saw "the big saw" { kerf 1/8; rips up to 24; crosscuts up to 20; takes up to 30 x 60 }\n'
    text += "saw mitre_saw { kerf 1/8; cuts sticks up to 12 }"
    track, table, mitre = project(PLY + text).saws
    assert (track.title, track.kerf, track.breaks_down, track.takes) == ("track", Fraction(3, 32), True, None)
    assert (track.rips, track.crosscuts, track.sticks) == (None, None, None)
    assert (table.title, table.rips, table.crosscuts, table.takes) == ("the big saw", 24, 20, (60, 30))
    assert (mitre.title, mitre.sticks, mitre.breaks_down) == ("mitre saw", 12, False)


def test_a_spec_without_saws_has_the_usual_shop():
    """Its numbers are rows of the practice table: common practice, no source."""
    rail, table, mitre = project(PLY + "practice { saw_kerf 3/32; table_saw_rips 30 }").saws
    assert rail.breaks_down and rail.takes is None and not table.breaks_down
    assert {s.kerf for s in (rail, table, mitre)} == {Fraction(3, 32)} and table.rips == 30
    assert mitre.sticks == 12 and table.sticks is None


@pytest.mark.parametrize(
    ("code", "line", "points_at"),
    [
        ("rod170", "rack { plie: 3 x 4 }", "plie"),
        ("rod174", "let board = 3\nrack { board: 3 x 4 }", "board"),
        ("rod242", "rack { ply: 40 }", "40"),
        ("rod242", "rack { lath: 40 x 2 }", "40 x 2"),
        ("rod195", "rack { ply: 0 x 4 }", "0"),
        ("rod195", "rack { ply: 4 x -1 }", "-1"),
        ("rod195", "rack { lath: 99999 }", "99999"),
        ("rod157", "rack { ply: 1.5 of 3 x 4 }", "1.5"),
        ("rod157", "rack { ply: -1 of 3 x 4 }", "-1"),
        ("rod243", "rack { ply: 0 of 3 x 4 }", "0"),
        ("rod243", "rack { ply: 1000000 of 3 x 4 }", "1000000"),
        ("rod243", "rack { ply: 600 of 3 x 4, 601 of 3 x 5, 602 of 3 x 6 }", "601 of 3 x 5"),
        ("rod244", "rack { lath: 98 }", "98"),
        ("rod244", "rack { ply: 60 x 50 }", "60 x 50"),
        ("rod245", "rack { ply: 3 x 1/8 }", "3 x 1/8"),
        ("rod245", "rack { lath: 1/16 }", "1/16"),
        ("rod245", "stock bead { sheet 96 x 1/8 x 1/16 }", "bead"),
        ("rod245", "practice { edge_trim 24 }", "ply"),
        ("rod196", "rack { ply: 3 x 4 grain along 5 }", "5"),
        ("rod196", "rack { mdf: 3 x 4 grain along 4 }", "4"),
        ("rod196", "rack { lath: 4 grain along 4 }", "4"),
        ("rod160", 'measure gap "a gap" expect 2 to 3\nrack { ply: 30 x gap }', "gap"),
        ("rod171", "saw a { kerf 1/8; rips up to 3 }\nsaw a { kerf 1/8; rips up to 3 }", "a"),
        ("rod195", "saw a { kerf 3; rips up to 3 }", "3"),
        ("rod195", "saw a { kerf -1/8; rips up to 3 }", "-1/8"),
        ("rod195", "saw a { kerf 1/8; rips up to 0 }", "0"),
        ("rod195", "practice { saw_kerf 4 }", "4"),
        ("rod249", "stock s { stick 2 x 1 long 72, 96; at most 3 }", "at most 3"),
        ("rod249", "stock s { stick 2 x 1 long 72, 96; on hand 3 of 80 }", "80"),
        ("rod249", "stock s { sheet 96 x 48 x 1/2; on hand 3 of 96 }", "96"),
        ("rod193", "stock s { sheet 96 x 48 x 1/2; on hand 3; on hand 2 }", "on hand 2"),
        ("rod243", "stock s { sheet 96 x 48 x 1/2; on hand 3000 }", "3000"),
        (
            "rod248",
            "part rail of lath { across facing at front; repeat 2 high every 5 from bottom; in sequence }",
            "in",
        ),
        ("rod248", "part shelf of ply { size 3 x 4; count 4; in sequence }", "in seq"),
        ("rod248", "part shelf of ply { level at bottom; in sequence }", "in seq"),
    ],
)
def test_where_a_mistake_is_pointed_at(code, line, points_at):
    text = PLY + MDF + LATH + BOX + line
    checked = resolved(text)
    assert codes(checked) == [code], checked.diagnostics
    assert marked(checked, text)[0].startswith(points_at)


def test_several_mistakes_are_told_in_one_run_and_what_is_right_stays():
    text = PLY + MDF + "rack { ply: 0 x 4, 30 x 20, 9; mdf: 2 of 30 x 20; plie: 3 x 4 }\nsaw a { takes up to 60 x 30 }"
    checked = resolved(text)
    assert codes(checked) == ["rod246", "rod247", "rod195", "rod242", "rod170"]
    assert checked.value is not None and not checked.value.whole
    assert [b.stock for b in checked.value.rack] == ["ply", "mdf"]


def test_what_hangs_on_a_wrong_stock_is_not_told_again():
    checked = resolved("stock bad { sheet 96 x 0 x 3/4 }\nrack { bad: 30 x 20, 4; bad: bad.thick x 3 }\n" + PLY)
    assert codes(checked) == ["rod195"]


def test_a_knife_has_no_kerf():
    assert project(PLY + "saw knife { kerf 0; breaks down sheets }\nrack { ply: 30 x 1/16 }").saws[0].kerf == 0


def test_a_mirror_of_a_repeated_part_may_be_cut_in_sequence():
    text = "part a of ply { facing at front; high 4; repeat 3 high every 5 from bottom }\n"
    made = project(PLY + BOX + text + "part b mirrors a across deep { in sequence }").job.parts
    assert [p.sequence for p in made] == [False, True]
