"""What is told of boards and assemblies, and what isn't."""

from __future__ import annotations

import re

import pytest
from comparing import STOCKS, compared

CASE = """
assembly case "Case" (w = 20) {
  size wide w, high 20, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part floor of ply { level at bottom; wide between left_side and right_side }
  part lid of ply { level at top; wide between left_side and right_side }
  joint floor, lid to left_side, right_side { pockets on bottom }
}
"""
JOB = f"""{STOCKS}{CASE}
size wide 100, high 40, deep 20
place case as a {{ at left, bottom, back }}
place case (w = 24) as b {{ wide from a.right + 2; at bottom, back }}
place case as c {{ wide from b.right + 2; at bottom, back }}
"""


def assemblies(*edits: tuple[str, str]) -> dict[tuple[str | None, str | None], tuple[str, ...]]:
    return {(a.old, a.new): a.how for a in changes(*edits).assemblies}


def boards(*edits: tuple[str, str]) -> dict[tuple[str | None, str | None], tuple[str, ...]]:
    return {(b.old and b.old.path, b.new and b.new.path): b.how for b in changes(*edits).boards}


def changes(*edits: tuple[str, str]):
    text = JOB
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    return compared(JOB, text)


def test_a_board_under_another_name():
    edit = ("floor", "bottom_board")
    assert set(boards(edit).values()) == {("renamed",)}
    assert not changes(edit).steps and not changes(edit).numbers


def test_an_assembly_under_another_name():
    """Its boards and its steps go with it."""
    found = changes(("as c {", "as far_case {"))
    assert [(a.old, a.new, a.how) for a in found.assemblies] == [("c", "far_case", ("renamed",))]
    assert not found.boards and not found.steps


def test_one_of_several_alike_that_is_resized():
    """The others are told to move, and not to be each other."""
    assert assemblies(("place case as a", "place case (w = 21) as a")) == {
        ("a", "a"): ("resized",),
        ("b", "b"): ("moved",),
        ("c", "c"): ("moved",),
    }


def test_two_that_change_places():
    """Each is now what the other was: they were swapped, not resized."""
    assert assemblies(("place case as a", "place case (w = 24) as a"), ("(w = 24) as b", "(w = 20) as b")) == {
        ("a", "b"): ("renamed", "moved"),
        ("b", "a"): ("renamed", "moved"),
    }


def test_one_that_is_left_out():
    edit = ('place case as c { wide from b.right + 2; at bottom, back }\n', "")
    assert assemblies(edit) == {("c", None): ("gone",)}
    assert set(boards(edit).values()) == {("gone",)}
    assert all(step.target.split(".")[0] == "c" for step in changes(edit).steps)


def test_a_board_that_is_trimmed_and_one_that_only_moves():
    found = boards(("level at top; wide", "level at top; deep 10 to back; wide"))
    assert {how for (old, _), how in found.items() if old and old.endswith("lid")} == {("resized", "machined", "moved")}
    found = boards(("level at top; wide", "top at top - 1; level; wide"))
    assert {how for (old, _), how in found.items() if old and old.endswith("lid")} == {("moved",)}


def test_another_joint():
    found = changes(("{ pockets on bottom }", "{ screws }"))
    lid = next(b for b in found.boards if b.new and b.new.path == "a.lid")
    assert lid.how == ("machined", "rejoined")
    assert {m.kind for m in lid.unjoined} == {"pockets"} and {m.kind for m in lid.joined} == {"screws"}


def test_the_other_hand():
    once = JOB.replace("grain high }", "grain high; notch high 3 from bottom, deep 2 from front; show left }")
    found = compared(once, once.replace("place case as c {", "place case mirrored as c {"))
    assert [(a.new, a.how) for a in found.assemblies] == [("c", ("mirrored",))]
    assert {b.how for b in found.boards} <= {("other-hand",), ("marked",)}
    assert all(fate.kind == "right" for fate in found.reuse.fates)  # left and right are both cut


MEASURED = """
measure across "across" expect 20 to 30
measure up "up" expect 3 to 5
size wide 100, high 96, deep 90
assembly box "Box" {
  size wide across + 2, high 20 + up, deep 20
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part shelf of ply { level at bottom + up; wide between left_side and right_side; deep across / 2 from front }
  part lid of ply { level at top; wide between left_side and right_side; deep max(9, 2 * up) to back }
  joint shelf, lid to left_side, right_side { screws }
}
place box { at left, bottom, back }
part strip of ply { size across x up; count 2; grain any }
part short of ply { size 12 x 8; count 2 }
order { assemble box after measure across }
"""


@pytest.mark.parametrize("names", [{"across": "wide_gap"}, {"across": "zz", "up": "a_height"}, {"up": "across_too"}])
def test_a_measure_under_another_name_is_no_change(names):
    """Boards that follow straight lines and those that don't; names that stand in the same order or another."""
    old = new = STOCKS + MEASURED
    for name, other in names.items():
        new = re.sub(rf'(?<!")\b{name}\b(?!")', other, new)
    for one, other in ((old, new), (new, old)):
        changes = compared(one, other)
        assert not changes.changed, (changes.boards, changes.steps, changes.told)
        assert {pair.old for pair in changes.pairs} == {pair.new for pair in changes.pairs}


def test_another_measure_is_a_change():
    changes = compared(STOCKS + MEASURED, STOCKS + MEASURED.replace("across", "along"))
    assert changes.boards and {s.how for s in changes.steps if s.verb == "measure"} >= {"gone", "added"}
