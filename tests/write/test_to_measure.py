"""What stands by a measure: formulas worked by hand. Common practice, no source."""

from __future__ import annotations

from compiling import compiled

from setout.geometry import Axis, Face
from setout.write import to_measure
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


def test_things_that_move_are_named_with_their_formula():
    made = to_measure.build(facts(compiled(SPEC).value, "00000000"))
    sill, nook = ([(s.where[0].names, s.face, s.holder, s.at.held) for s in m.stands] for m in made.measures)
    (box, face, holder, held), (shelf, _, _, bent) = sill
    assert (box, face, holder) == (("box",), "bottom", "room")
    assert (held.start.text, held.terms[0].name, held.low.text, held.high.text) == ("-2", "sill", "32", "36")
    assert (shelf, bent.start) == (("shelf",), None), "no formula where it isn't a straight line"
    assert [(names, face) for names, face, *_ in nook] == [(("box",), "left")]


def test_how_far_is_said_as_the_builder_measures_it():
    holders = ("room", "assembly", "job")
    said = [macro("to_measure/words.html.j2", "how_far", Face(axis, -1).word, h) for axis in Axis for h in holders]
    assert len(set(said)) == 9
    assert "its underside above the floor" in said and "its left side from the left wall" in said
    assert not [one for one in said if "bottom of the room" in one or "left of the room" in one]
