"""What single documents are built from."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
import sample
from compiling import compiled
from cutting_sample import planned
from sample import plan

from setout.geometry import face_named
from setout.plan.order.model import Order, Reason, StepId
from setout.write import assemblies, build_order, cautions, drawings, job_sheet, joinery, to_measure
from setout.write.facts import facts
from setout.write.render import macro, render


@pytest.fixture(scope="module")
def about():
    return facts(plan(), "00000000")


def test_alike_assemblies_share_a_sheet_and_the_job_comes_last(about):
    found = assemblies.groups(about)
    assert [group.paths for group in found] == [("left", "right"), ("",)]


def test_a_joint_is_said_from_within_its_assembly(about):
    case = assemblies.build(about, assemblies.groups(about), {}).sheets[0]
    shelf, bottom = case.joints
    assert [(place.owners, place.names) for place in shelf.receiving.where] == [((), ("left side", "right side"))]
    assert (shelf.places, shelf.glued, shelf.housings[0].kind) == (2, True, "dado")
    assert [(f.kind, f.count.low) for f in bottom.fasteners] == [("pockets", 4)]


def test_overall_is_with_feet_and_banding():
    """By hand: 12 high on feet of 1; 20 wide of which 1/32 a side is tape; 10 deep and 1/8 of lipping put on top."""
    known = facts(compiled("""
stock ply "p" { sheet 96 x 48 x 3/4; grain along 96 }
hardware foot "foot" { raises 1 }
hardware tape "tape" { edging 13/16 x 1/32 long 300 }
hardware lipping "lipping" { edging 13/16 x 1/8 long 300 }
size wide 20, high 12, deep 10
part base of ply { level at bottom; band left, right with tape; band front with lipping added }
part post of ply { upright at left + 3; high from base.top to top; deep 5 to back }
fit 4 foot { under base; at corners; inset 2 }
""").value, "00000000")
    assert [one.text for one in job_sheet.build(known, None).overall] == ["20", "13", "10-1/8"]
    drawn = {word for view in drawings.views(known).values() for word in re.findall(r">([^<>]+)</text>", view.svg)}
    assert {"20 wide", "13 high", "10-1/8 deep"} <= drawn


def test_the_diagonal_is_that_of_the_front(about):
    square = assemblies.build(about, assemblies.groups(about), {}).sheets[0].square
    assert (square.side, len(square.sizes)) == ("front", 2)
    assert (square.diagonal.text, square.diagonal.rounded, square.tolerance.text) == ("38-13/32", True, "1/16")


def test_nothing_drilled_milled_or_laid_out_is_no_joinery():
    """A cleat that goes to studs nobody has found yet is screwed, where on site they are."""
    text = """project "T" { units inch }
    stock ply "p" { sheet 96 x 48 x 3/4 }
    room { size wide 120, high 96, deep 40 }
    part cleat of ply { facing at back; high 3 from bottom + 40; wide 40 from left + 8; grain wide }
    joint cleat to room.back { screws into studs }
    """
    assert joinery.build(facts(compiled(text).value, "00000000"), {}) is None


def test_what_is_measured_for_squareness_is_named():
    """A drawer's box, and what lies flat, from above; one board by itself is as square as it is sawn. By hand: a box 21
    wide (22 less 1/2 a side) by 10 long; a top 24 by 10."""
    known = facts(compiled("""
stock ply "p" { sheet 96 x 48 x 3/4; grain along 96 }
hardware slide "slides, 10 in" { slides side; length 10; clearance 1/2; height 1-3/4; screws at 1, 9 }
assembly chest "Chest" {
  size wide 23-1/2, high 20, deep 16
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part floor_panel of ply { level at bottom; wide between left_side and right_side }
  joint floor_panel to left_side, right_side { pockets on bottom; glue }
  opening bay { wide between left_side and right_side; high from floor_panel.top to top; deep from front to back }
  drawers in bay {
    heights 5, rest; slides slide; box of ply; bottom of ply in groove
    fronts of ply inset reveal 1/16; corners pockets
  }
}
assembly seat "Seat" { size wide 24, high 3/4, deep 10; part board of ply { level at bottom } }
assembly two "Top" {
  size wide 24, high 3/4, deep 10
  part one of ply { level at bottom; deep 5 from front }
  part other of ply { level at bottom; deep 5 to back }
  joint one to other { glue }
}
size wide 100, high 40, deep 20
place chest { at left, bottom, front }
place seat { left at chest.right + 1; at bottom, front }
place two { left at seat.right + 1; at bottom, front }
""").value, "00000000")
    sheets = assemblies.build(known, assemblies.groups(known), {}).sheets
    squares = {sheet.names[0]: sheet.square for sheet in sheets if sheet.names}
    drawer, top = squares["chest bay drawer 1"], squares["two"]
    assert [(s.side, s.box, [one.text for one in s.sizes]) for s in (drawer, top)] == [
        ("above", True, ["21", "10"]), ("above", False, ["24", "10"])]  # fmt: skip
    assert (top.diagonal.text, drawer.diagonal.text) == ("26", "23-1/4")
    assert squares["seat"] is None and squares["chest"].side == "front"
    said = [macro("assemblies/words.html.j2", "measured", one) for one in (drawer, top, squares["chest"])]
    assert [re.sub("<[^>]+>", "", one) for one in said] == [
        "of the box seen from above (21 × 10)",
        "as seen from above (24 × 10)",
        "of the front (23-1/2 × 20)",
    ]


def test_pieces_are_gathered_under_the_setting_of_the_machine(about):
    made = joinery.build(about, {})
    assert [(s.kind, s.total) for s in made.set_ups] == [("cutout", 1), ("dado", 4), ("pocket", 8)]
    pockets = made.set_ups[-1]
    assert (pockets.stop.text, pockets.screw.text) == ("3/4", "1-1/4")
    assert [(r.mark, r.face, r.each, r.toward) for r in pockets.rows] == [
        ("B4", "bottom", 4, (("left", 2), ("right", 2)))
    ]


def test_what_follows_from_a_measure_is_a_formula(about):
    (measure,) = to_measure.build(about).measures
    (size,) = measure.follows
    held = size.size.held
    assert (size.mark, size.side, held.start.text) == ("A2", "width", "12")
    assert [(term.sign, term.factor, term.name) for term in held.terms] == [("−", "", "bed")]
    assert (held.low.text, held.high.text) == ("7", "10")


def test_boards_that_the_saw_leaves_for_later_are_named_with_their_step():
    made = build_order.build(facts(planned(), "00000000"), ())
    assert made.sawn and [(one.number, one.marks, one.measured, one.others) for one in made.later] == [
        (2, ("A2",), True, True)
    ]
    first, cut, *rest = plan().order.steps
    told = replace(cut, reasons=(Reason(StepId("step", "Paint the insides"), "declared", sample.HERE),))
    made = build_order.build(facts(replace(plan(), order=Order((first, told, *rest))), "00000000"), ())
    assert not made.sawn and [(one.marks, one.measured) for one in made.later] == [(("A1", "A2"), False)]


def test_tall_boxes_that_stand_free_are_named(about):
    """ASTM F2057-23: 27 in and up; check-values section 9, row R."""
    assert cautions.build(about).tall == ("left", "right")


def test_a_job_without_drawers_is_not_warned_of_loaded_ones(about):
    for drawers in (False, True):
        told = replace(cautions.build(about), drawers=drawers)
        page = render("cautions/page.html.j2", d=told, metric=False, title="Job")
        assert ("a loaded drawer pulled out or" in page) == drawers
    assert not cautions.build(about).drawers


def test_a_box_joined_to_a_wall_is_not():
    made = plan()
    joined = made.pieces.joined
    to_wall = replace(joined.drawn.contacts[0], b=None, a="left.shelf", face_a=face_named("back"))
    fixed = replace(joined.drawn, contacts=(*joined.drawn.contacts, to_wall))
    pieces = replace(made.pieces, joined=replace(joined, scenes=(*joined.scenes[:-1], fixed)))
    said = cautions.build(facts(replace(made, pieces=pieces), "00000000"))
    assert (said.on_wall, said.tall) == (("left",), ("right",))
