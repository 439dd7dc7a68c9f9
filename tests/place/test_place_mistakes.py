"""What a builder gets wrong: told once, at the place, several at a time, and never as an exception."""

from __future__ import annotations

import re

import pytest

from setout.diagnostics import Severity
from setout.place import place
from setout.read import read
from setout.resolve import resolve
from setout.source import Source

JOB = "size wide 30, high 40, deep 12\n"


def cases(repo):
    return sorted(p for p in (repo / "tests" / "errors").glob("rod*") if "rod250" <= p.name <= "rod349")


def test_every_case_of_this_stage_has_its_code_and_no_other(repo):
    wrong = {}
    for case in cases(repo):
        tree = read(Source("spec.rod", (case / "spec.rod").read_text("utf-8")))
        project = resolve(tree.value, lambda _: None, {})
        found = (*tree.diagnostics, *project.diagnostics, *place(project.value).diagnostics)
        if [d.code for d in found] != [case.name]:
            wrong[case.name] = [d.code for d in found]
    assert wrong == {}


def test_a_loop_is_shown_link_by_link(checked):
    text = JOB + "part a of ply { level on b }\npart b of ply { level on c }\npart c of ply { level on a }\n"
    (found,) = checked(text).diagnostics
    assert found.code == "rod250"
    assert len((found.label, *found.others)) == 3
    assert re.fullmatch(r".*a\.top -> .*", found.help.split(":")[0]) and found.help.count("->") >= 3


def test_a_count_that_hangs_on_its_own_members_is_a_loop(codes):
    text = JOB + "part low of ply { level at bottom }\npart high_one of ply { level at top }\n"
    text += "part shelf of ply { level; repeat floor(shelf.1.top / 6in) between low and high_one }\n"
    assert codes(text) == ["rod250"]


def test_ends_that_don_t_hang_on_one_another_are_no_loop(spans):
    text = "part a of ply { level at bottom; wide from left to b.left }\n"
    made = spans(JOB + text + "part b of ply { level at top; wide from left + 5 to a.right + 9 }")
    assert made["a"].startswith("0..5 ") and made["b"].startswith("5..14 ")


def test_several_mistakes_are_told_in_one_run_and_their_consequences_are_not(codes):
    text = (
        JOB
        + """
    part a of ply { level at bottom; deep 13 from front }
    part b of ply { level at bottom + 5; wide from right to left }
    part c of ply { level at bottom + 9; wide b.wide from left }
    part d of ply { level at bottom + 12; wide c.wide + 1 from left }
    part e of ply { upright at left; high 3 }
    joint b to e { glue }
    """
    )
    assert sorted(codes(text)) == ["rod255", "rod258", "rod263"]


def test_a_mistake_in_an_assembly_is_told_once_however_often_it_is_placed(codes):
    text = "assembly box { size wide 5, high 5, deep 5; part lid of ply { level at top; wide 6 from left } }\n"
    assert codes(text + "place box { at bottom, back; repeat 4 wide every 6 from left }\n" + JOB) == ["rod263"]


def test_what_stands_out_says_by_how_much_and_where(checked):
    (found,) = checked(JOB + "part a of ply { level at bottom - 1/4; deep 12-1/2 from front }").diagnostics
    assert found.label.text == "by 1/4 in at the bottom, 1/2 in at the back"


def test_an_assembly_that_stands_out_of_the_one_around_it(codes):
    text = "assembly box { size wide 5, high 5, deep 5; part lid of ply { level at top } }\nplace box { at left, bottom"
    assert codes(f"{JOB}{text}; deep from front + 8 }}") == ["rod263"]
    assert codes(f"{JOB}{text}; deep from front + 7 }}") == []


def test_warnings_leave_the_job_placed(checked):
    made = checked("size wide 100, high 40, deep 12\npart shelf of ply { level at bottom }")
    assert [d.severity for d in made.diagnostics] == [Severity.WARNING] and made.value.drawn.boards


@pytest.mark.parametrize(
    ("grain", "found"), [("grain wide", []), ("grain deep", ["rod277"]), ("grain any", []), ("", [])]
)
def test_grain_decides_whether_a_sheet_is_large_enough(codes, grain, found):
    assert codes(f"size wide 90, high 9, deep 40\npart shelf of ply {{ level at bottom; {grain} }}") == found


def test_a_chain_of_thousands_is_followed(scene):
    n = 3000
    chain = "".join(f"part p{i} of thin {{ level on p{i - 1} }}\n" for i in range(1, n))
    made = scene(f"size wide 9, high {n}, deep 9\n{chain}part p0 of thin {{ level at bottom }}")
    assert made.boards[f"p{n - 1}"].box.lo[1] == (n - 1) / 4


def test_a_ring_of_thousands_is_told_in_a_few_lines(checked):
    n = 2000
    ring = "".join(f"part p{i} of thin {{ level on p{(i + 1) % n} }}\n" for i in range(n))
    (found,) = checked(f"size wide 9, high 9, deep 9\n{ring}").diagnostics
    assert found.code == "rod250" and len(found.others) < 20 and len(found.help) < 500


@pytest.mark.parametrize(
    "text",
    [
        "part a of ply { level; repeat 900 every 1 from bottom; "
        + "notch deep 1/8 from front, high 1/8 from bottom; " * 300
        + "}",
        "assembly a { size wide 1, high 1, deep 1; place b { at left, bottom; repeat 900 deep every 1 from front } }\n"
        "assembly b { size wide 1, high 1, deep 1; place c { at left, bottom; repeat 900 deep every 1 from front } }\n"
        "assembly c { size wide 1, high 1, deep 1; part p of thin { level at top } }\nplace a { at left, top, back }",
        "".join(f'measure m{i} "m" expect 1 to 2\n' for i in range(200))
        + "part p of thin { level at top; wide m1 from left }",
    ],
)
def test_a_job_beyond_any_bound_is_refused(checked, text):
    found = checked(
        "size wide 9999, high 9999, deep 9999\n"
        + text.replace("notch deep 1/8 from front, high", "notch deep 1/8 from front, wide")
    )
    assert "rod268" in [d.code for d in found.diagnostics]


def test_amounts_are_told_in_the_units_of_the_spec(checked):
    text = 'project "T" { units mm }\nstock board "18 mm plywood" { sheet 2440 x 1220 x 18 }\n'
    text += "size wide 800, high 800, deep 300\n"
    text += "part low of board { level at bottom }\npart high_one of board { level at top }\n"
    (found,) = checked(text + "part shelf of board { level; repeat low.wide between low and high_one }\n").diagnostics
    assert found.code == "rod157" and "800 mm" in found.label.text


def test_a_loose_part_is_left_out_with_the_assembly_it_belongs_to(checked):
    text = "assembly rack {\n  size wide 10, high 10, deep 10\n  part spare of ply { size 20 x 10; count 3 }\n}\n"
    found = checked(JOB + text + "place rack { left at other.left; at bottom, back }\n"
                    "place rack as other { left at rack.left; at bottom, back }")  # fmt: skip
    assert [d.code for d in found.diagnostics] == ["rod250"]
    assert not found.value.drawn.loose and "rack" not in found.value.drawn.instances


def test_nothing_is_told_to_stand_proud_of_a_room(checked):
    part = "part shelf of ply { level at bottom; wide 31 from left; deep 12 from front }"
    for job, proud in ((JOB, True), ('room "Study" { size wide 30, high 96, deep 130 }\n', False)):
        (found,) = checked(job + part).diagnostics
        assert found.code == "rod263" and ("proud right" in found.help) == proud


@pytest.mark.parametrize(("width", "told"), [("1/2", True), ("11/16", True), ("3/4", False), ("13/16", False)])
def test_banding_narrower_than_the_edge_is_warned_of_once(checked, width, told):
    tape = f'hardware tape "birch edging" {{ edging {width} x 1/32 long 300 }}\n'
    part = "part shelf of ply { level; repeat 3 high between floor and lid; band front, left with tape }\n"
    ends = "part floor of ply { level at bottom }\npart lid of ply { level at top }\n"
    found = checked(JOB + tape + ends + part).diagnostics
    assert [(d.code, d.severity) for d in found] == ([("rod287", Severity.WARNING)] if told else [])
