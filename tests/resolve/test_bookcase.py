"""The whole of specs/bookcase.rod, bound."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from specs import project

from setout.geometry import Axis, Face
from setout.resolve.model import FaceRef, Lit, Op, ParamRef, PositionDef, SpanDef

SPEC = Path(__file__).parents[2] / "specs" / "bookcase.rod"
LEFT, RIGHT, BACK = Face(Axis.WIDE, -1), Face(Axis.WIDE, 1), Face(Axis.DEEP, 1)


@pytest.fixture(scope="module")
def bookcase():
    return project(SPEC.read_text("utf-8"), name="specs/bookcase.rod")


def part(bookcase, name: str):
    return next(p for p in bookcase.assemblies["bookcase"].body.parts if p.name == name)


def test_the_heading_and_the_constants(bookcase):
    assert (bookcase.title, bookcase.metric, bookcase.mark, bookcase.paper) == (
        "Bookcase",
        False,
        Fraction(1, 32),
        "letter",
    )
    ply = bookcase.stocks["ply"]
    assert (ply.long, ply.short, ply.thick, ply.grain) == (96, 48, Fraction(23, 32), "long")
    assert ply.prices == ((None, Fraction(68)),)
    assert bookcase.lets["toe"] == Lit(Fraction(3), 0, Fraction(1), "3", bookcase.lets["toe"].span)
    assert bookcase.room.sizes == {Axis.WIDE: 120, Axis.HIGH: 96, Axis.DEEP: 130}
    assert bookcase.whole


def test_the_assembly(bookcase):
    assembly = bookcase.assemblies["bookcase"]
    assert list(assembly.parameters) == ["w", "h", "d", "shelves"]
    assert assembly.parameters["d"].amount == Fraction(45, 4)
    assert [type(assembly.body.size[axis]) for axis in Axis] == [ParamRef] * 3
    default = assembly.body.defaults[Axis.DEEP]
    assert (default.kind, default.b.thing, default.b.face) == ("from_to", ("back_panel",), Face(Axis.DEEP, -1))
    assert [p.name for p in assembly.body.parts] == [
        *("left_side", "right_side", "top_panel", "bottom_panel", "shelf", "kick", "back_panel")
    ]


def test_a_panel_in_its_place(bookcase):
    side = part(bookcase, "left_side")
    assert (side.stock, side.thick, side.run, side.grain, side.show) == ("ply", Axis.WIDE, None, Axis.HIGH, LEFT)
    assert side.positions == (
        PositionDef(LEFT, Axis.WIDE, FaceRef((), LEFT, side.positions[0].target.span), side.positions[0].span),
    )
    bottom = part(bookcase, "bottom_panel")
    target = bottom.positions[0].target
    assert isinstance(target, Op) and target.op == "+" and bottom.positions[0].face == Face(Axis.HIGH, -1)
    between = bottom.spans[0]
    assert between == SpanDef(Axis.WIDE, "between", ("left_side",), ("right_side",), None, between.span)


def test_a_mirror_and_a_repeat(bookcase):
    mirror = part(bookcase, "right_side")
    assert (mirror.mirror, mirror.stock, mirror.thick) == (("left_side", Axis.WIDE), None, None)
    repeat = part(bookcase, "shelf").repeat
    assert (repeat.axis, repeat.between) == (Axis.HIGH, (("bottom_panel",), ("top_panel",)))
    assert repeat.count.name == "shelves"


def test_joints_places_and_the_order(bookcase):
    joint = next(j for j in bookcase.assemblies["bookcase"].body.joints if j.methods[0].kind == "dado")
    assert [path for path, _ in joint.entering] == [("bottom_panel",), ("shelf",)]
    assert [path for path, _ in joint.receiving] == [("left_side",), ("right_side",)]
    assert (joint.methods[0].depth.amount, joint.methods[1].kind) == (Fraction(1, 4), "glue")
    (place,) = bookcase.job.places
    assert (place.name, place.assembly) == ("bookcase", "bookcase")
    assert [p.face for p in place.positions] == [LEFT, Face(Axis.HIGH, -1), BACK]
    assert [line.scope for line in bookcase.order] == [""]
