"""What stands by a measure: formulas worked by hand. Common practice, no source."""

from __future__ import annotations

import csv

from compiling import compiled

from setout.geometry import Axis, Face
from setout.write import cutlist, job_sheet, to_measure
from setout.write.facts import facts
from setout.write.render import macro

SPEC = """stock ply "p" { sheet 96 x 48 x 3/4; grain along 96 }
room "R" { size wide 100, high 96, deep 40 }
measure sill "height of the sill" expect 34 to 38
measure nook "width of the nook" expect 20 to 24
assembly box "Box" (h = 10) {
  size wide 20, high h, deep 10
  part a of ply { upright at left; grain high }
}
place box { left at nook; bottom at bottom + sill - 2; at back }
part shelf of ply { level; top at bottom + min(sill, 36); wide 10 from right - 10; deep 6 to back }
"""

HELD_HOLES = """project "Held" { units inch }
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96 }
measure gap "skirting" expect 1/2 to 4-1/2
size wide 30, high 30, deep 24
part side of ply { upright at left; high from bottom to lid.bottom; deep 20 - gap to back - gap; grain high }
part side2 mirrors side
part lid of ply { level at top; deep 22 to back }
joint lid to side, side2 { screws through lid every 4 }
"""


def test_things_that_move_are_named_with_their_formula():
    made = to_measure.build(facts(compiled(SPEC).value, "00000000"))
    sill, nook = ([(s.where[0].names, s.face, s.holder, s.at.held) for s in m.stands] for m in made.measures)
    (box, face, holder, held), (shelf, _, _, bent) = sill
    assert (box, face, holder) == (("box",), "bottom", "room")
    assert (held.start.text, held.terms[0].name, held.low.text, held.high.text) == ("-2", "sill", "32", "36")
    assert (shelf, bent.start) == (("shelf",), None), "no formula where it isn't a straight line"
    assert [(names, face) for names, face, *_ in nook] == [(("box",), "left")]


def test_what_waits_is_told_apart_a_size_from_holes():
    """The lid's holes move with the gap, the sides get shorter by it."""
    known = facts(compiled(HELD_HOLES).value, "00000000")
    measure = to_measure.build(known).measures[0]
    side, lid = (known.mark_of[path] for path in ("side", "lid"))
    assert ([f.mark for f in measure.follows], measure.drilled) == ([side], (lid,))
    sheet = job_sheet.build(known, None).to_measure[0]
    assert (sheet.sized, sheet.worked) == ((side,), (lid,))
    rows = {row["mark"]: row for row in csv.DictReader(cutlist.build(known).splitlines())}
    assert (rows[side]["waits_for"], rows[side]["reserve"] != "") == ("gap", True)
    assert (rows[lid]["waits_for"], rows[lid]["reserve"]) == ("", "")


def test_how_far_is_said_as_the_builder_measures_it():
    holders = ("room", "assembly", "job")
    said = [macro("to_measure/words.html.j2", "how_far", Face(axis, -1).word, h) for axis in Axis for h in holders]
    assert len(set(said)) == 9
    assert "its underside above the floor" in said and "its left side from the left wall" in said
    assert not [one for one in said if "bottom of the room" in one or "left of the room" in one]
