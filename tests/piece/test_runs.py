"""Boards cut in sequence: who stands in a run, in which order, and which of their sizes adds to it."""

from __future__ import annotations

from setout.join import join
from setout.piece import Register, piece
from setout.piece.model import Pieces
from setout.place import place
from setout.read import read
from setout.resolve import resolve
from setout.source import Source

HEAD = """
stock ply "3/4 plywood" { sheet 96 x 48 x 3/4; grain along 96 }
stock mdf "3/4 MDF" { sheet 97 x 49 x 3/4 }
size wide 60, high 40, deep 40
"""
CASE = """
assembly case "Case" (body = ply) {
  size wide 12, high 30, deep 14
  part front_panel of body { facing at front; high 7; grain wide; repeat 3 high every 8 from bottom; in sequence }
}
"""


def pieces(text: str) -> Pieces:
    tree = read(Source("spec.rod", HEAD + text))
    project = resolve(tree.value, lambda path: None, {})
    assert not project.diagnostics, project.diagnostics
    return piece(join(place(project.value).value).value, Register(())).value


def runs(text: str) -> dict[str, list[tuple[str, str]]]:
    return {run.name: [(m.board, m.along) for m in run.members] for run in pieces(text).runs}


def test_members_adjoin_as_they_do_in_place():
    row = "repeat 2 wide every 10 from left; in sequence"
    assert runs(
        f"part door of ply {{ facing at front; wide 9; high 30 from bottom; grain high; {row} }}\n"
        f"part lid of ply {{ level at top; wide 9; deep 7 from front; grain wide; {row} }}"
    ) == {
        "door": [("door.1", "width"), ("door.2", "width")],
        "lid": [("lid.1", "length"), ("lid.2", "length")],
    }  # fmt: skip


def test_members_one_behind_another_lie_side_by_side_across_their_length():
    text = (
        "part shelf of ply { level; wide 20 from left; deep 9 from front; repeat 2 every 9 from bottom; in sequence }"
    )
    assert runs(text) == {"shelf": [("shelf.1", "width"), ("shelf.2", "width")]}


def test_every_placing_has_its_own_run_however_it_is_turned():
    text = CASE + "place case as a { at left, bottom, front }\nplace case turned 90 as b { at right, bottom, back }"
    made = pieces(text)
    assert [run.name for run in made.runs] == ["a.front_panel", "b.front_panel"]
    assert all([m.board[-1] for m in run.members] == ["1", "2", "3"] for run in made.runs)
    assert {m.along for run in made.runs for m in run.members} == {"width"}
    assert {m.mark for run in made.runs for m in run.members} == {made.pieces[0].mark}


def test_members_that_are_machined_unlike_keep_their_places():
    post = "part post of ply { upright at left; deep 9 from front_panel.2.back; high 5 from front_panel.2.bottom }\n"
    post += "joint post to front_panel.2 { screws }"
    made = pieces(CASE.replace("sequence }", f"sequence }}\n{post}") + "place case as a { at left, bottom, front }")
    (run,) = made.runs
    assert [m.board for m in run.members] == [f"a.front_panel.{i}" for i in (1, 2, 3)]
    assert [m.mark == run.members[0].mark for m in run.members] == [True, False, True]


def test_a_run_of_one_is_none():
    assert runs("part door of ply { facing at front; wide 9; repeat 1 wide every 10 from left; in sequence }") == {}


def test_what_may_be_turned_freely_says_so():
    text = "part a of ply { size 9 x 3; grain any }\npart b of mdf { size 9 x 3 }\npart c of ply { size 3 x 9 }\n"
    made = {p.boards[0]: (p.grain, p.length.amount) for p in pieces(text).pieces}
    assert made == {"a": ("any", 9), "b": (None, 9), "c": ("length", 3)}
