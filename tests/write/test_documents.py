"""What single documents are built from."""

from __future__ import annotations

from dataclasses import replace

import pytest
import sample
from cutting_sample import planned
from sample import plan

from setout.geometry import face_named
from setout.plan.order.model import Order, Reason, StepId
from setout.write import assemblies, build_order, cautions, joinery, to_measure
from setout.write.facts import facts
from setout.write.render import render


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


def test_the_diagonal_is_that_of_the_front(about):
    square = assemblies.build(about, assemblies.groups(about), {}).sheets[0].square
    assert (square.diagonal.text, square.diagonal.rounded, square.tolerance.text) == ("38-13/32", True, "1/16")


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
