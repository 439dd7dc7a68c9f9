"""Worked tables of drawers. Common practice, no source; rows of check-values.md section 7 (C; the sum D)."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from compiling import compiled
from drawer_specs import case, codes, drawers, drawn, steps, the_bank

from setout.geometry import Axis

# Opening 18 x 24, 3/4 fronts inset with 1/16 all round: 24 - 4 x 1/16 = 23-3/4 for fronts; 23-3/4 - 4 - 7 = 12-3/4.
# Box: 18 - 2 x 1/2 = 17 wide (the row "18 -> 17"), front less 1/4 under and 1/4 over high, as long as its slides.
INSET = [  # front high, front low, box high, box low = slide
    (F(4), F("19.9375"), F("3.5"), F("20.1875")),
    (F(7), F("12.875"), F("6.5"), F("13.125")),
    (F("12.75"), F("0.0625"), F("12.25"), F("0.3125")),
]
# The same with fronts over the edges by 1/2 and 1/8 between: 24 + 1 - 2 x 1/8 = 24-3/4; less 4 and 7, 13-3/4. The top
# and bottom boxes keep to the opening: 4 - 1/2 - 1/2 = 3 and 13-3/4 - 1/2 - 1/2 = 12-3/4 high.
OVERLAY = [
    (F(4), F("20.5"), F(3), F("20.75")),
    (F(7), F("13.375"), F("6.5"), F("13.625")),
    (F("13.75"), F("-0.5"), F("12.75"), F("0.25")),
]


@pytest.mark.parametrize(
    ("more", "table", "wide"),
    [
        ("fronts of ply inset reveal 1/16", INSET, F("17.875")),
        ("fronts of ply overlay 1/2 reveal 1/8", OVERLAY, F(19)),
    ],
)
def test_fronts_boxes_and_slides_are_those_of_the_table(more, table, wide):
    bank = the_bank(case(drawers("heights 4, 7, rest", more)))
    assert [(d.front[1], d.front_low, d.box[1], d.box_low) for d in bank.drawers] == table
    assert {(d.front[0], d.box[0], d.box[2]) for d in bank.drawers} == {(wide, F(17), F(20))}
    assert [d.slide for d in bank.drawers] == [row[3] for row in table]
    assert bank.hardware.name == "slide20" and bank.clearance == F(1, 2)


def test_front_and_back_stand_between_the_sides_and_the_bottom_lies_in_its_groove():
    """Front and back: box width less two sides. A groove 1/4 deep in four sides adds 2 x depth - 1/16 to the bottom."""
    plan = compiled(case(drawers("heights 4, 7, rest"))).value
    boards = plan.pieces.joined.drawn.boards
    at = "box.bay.drawer.2."
    assert boards[at + "box_front"].box.sizes == (F("15.75"), F("6.5"), F("0.625"))
    assert boards[at + "left_side"].box.sizes == (F("0.625"), F("6.5"), F(20))
    bottom = boards[at + "bottom_panel"].box
    assert (bottom.size(Axis.WIDE), bottom.size(Axis.DEEP)) == (F("15.75") + F(7, 16), F("18.75") + F(7, 16))


def test_equal_heights_and_shares():
    """24 - 4 x 1/16 = 23-3/4 in three, and as 1 to 2 to 2."""
    equal = the_bank(case(drawers("count 3; heights equal")))
    assert [d.front[1] for d in equal.drawers] == [F(95, 12)] * 3
    shares = the_bank(case(drawers("heights 1 to 2 to 2")))
    assert [d.front[1] for d in shares.drawers] == [F("4.75"), F("9.5"), F("9.5")]


@pytest.mark.parametrize(
    ("deep", "chosen"), [("22", "slide20"), ("20-7/8", "slide20"), ("20-13/16", "slide18"), ("19", "slide18")]
)
def test_the_longest_slides_that_fit_are_taken(deep, chosen):
    """Front 3/4 + setback 1/8 + slide 20 = 20-7/8."""
    assert the_bank(case(drawers("heights 6, rest", slides="slide18, slide20"), deep=deep)).hardware.name == chosen


def test_trays_share_the_opening_and_under_mount_slides_have_their_room_below():
    """24 / 2 = 12 each; 9/16 below, 1/4 above; the slides, 1/2 high, end where the box begins."""
    bank = the_bank(case(drawers("count 2; heights equal", "trays", "under18")))
    assert [(d.box[1], d.box_low, d.slide) for d in bank.drawers] == [
        (F("11.1875"), F("12.5625"), F("12.0625")),
        (F("11.1875"), F("0.5625"), F("0.0625")),
    ]
    assert {d.box[0] for d in bank.drawers} == {F("17.625")}


def test_boxes_that_cannot_be_made_are_told_of_and_no_fault():
    misspelt = drawers("heights 6, rest").replace("box of half", "box of hlaf")
    assert set(codes(compiled(case(misspelt)))) == {"rod170"}


def test_a_dummy_has_a_front_and_nothing_else():
    bank = the_bank(case(drawers("heights 4, 7, rest", "fronts of ply inset; dummy 1")))
    assert bank.drawers[0].front == (F("17.875"), F(4)) and bank.drawers[0].box is None
    assert bank.drawers[0].boards == ("box.bay.drawer.1.front_panel",)
    assert [s.number for s in bank.spacers if s.kind == "slides"] == [3, 2]


def test_blocks_stand_on_the_floor_of_the_opening_and_carry_the_slides():
    bank = the_bank(case(drawers("heights 4, 7, rest")))
    assert [(s.number, s.size, s.count) for s in bank.spacers if s.kind == "slides"] == [
        (3, F("0.3125"), 2),
        (2, F("13.125"), 2),
        (1, F("20.1875"), 2),
    ]
    assert [s.size for s in bank.spacers if s.kind == "fronts"] == [F(1, 16)]


def test_slides_are_drilled_at_the_same_height_in_case_and_box():
    """Screws in the middle of the slide: 20-3/16 + 7/8 above the opening's floor, on all four boards."""
    scene = drawn(case(drawers("heights 4, 7, rest")))
    ours = [f for f in scene.fittings if f.id.startswith("box.bay.drawer.1!")]
    assert [f.board.removeprefix("box.") for f in ours] == [
        "left_side",
        "bay.drawer.1.left_side",
        "right_side",
        "bay.drawer.1.right_side",
    ]
    assert {p[1] for f in ours for p in f.points} == {F("0.75") + F("20.1875") + F("0.875")}
    assert sum(f.count for f in ours) == 1  # a pair is bought once


def test_packers_bring_the_slides_flush_with_the_opening():
    narrow = """
  opening bay2 { wide from left_side.right + 1 to right_side.left - 1; high between floor and lid; deep 22 from front }
  drawers in bay2 {
    heights 4, rest; slides slide20; packers of ply; box of half; bottom of thin; fronts of ply inset
  }"""
    scene = drawn(case(narrow))
    bank = scene.banks[0]
    assert bank.gaps == (1, 1) and len(bank.packers) == 4
    for path in bank.packers:
        assert scene.boards[path].box.sizes == (F(1), F(3, 4), F(20))
    assert {f.board for f in scene.fittings if "!case" in f.id} == set(bank.packers)


@pytest.mark.parametrize("turned", ["", " turned 90", " turned 180", " mirrored", " turned 270 mirrored"])
def test_a_turned_case_has_the_same_drawers(turned):
    text = case(drawers("heights 4, 7, rest")).replace("place box", f"place box{turned}")
    plain, other = the_bank(case(drawers("heights 4, 7, rest"))), the_bank(text)
    assert other.drawers == plain.drawers and other.spacers == plain.spacers


def test_fronts_go_on_last_and_slides_go_on_before_the_case_is_set():
    said = steps(case(drawers("heights 4, rest")))
    at = said.index
    assert at("fit box.slide20") < at("set box") < at("set box.drawers") < at("set box.fronts")
    assert at("cure box.drawers") < at("set box.drawers")


@pytest.mark.parametrize("corners", ["pockets", "rabbet", "dado", "screws"])
@pytest.mark.parametrize("bottom", ["bottom of thin", "bottom of thin in groove"])
@pytest.mark.parametrize(
    "front", ["fronts of ply inset", "fronts of ply overlay 1/2", "fronts of ply integral", "trays"]
)
def test_every_way_of_building_a_drawer_can_be_built(corners, bottom, front):
    inside = f"drawers in bay {{ heights 5, rest; slides slide20; box of half; {bottom}; {front}; corners {corners} }}"
    checked = compiled(
        case(inside if front != "trays" else inside.replace("heights 5, rest", "count 2; heights equal"))
    )
    assert not checked.diagnostics, [(d.code, d.message) for d in checked.diagnostics]


def test_several_mistakes_are_told_in_one_run():
    text = case(
        "drawers in bay { heights 4, 7; slides slide20; box of half; bottom of thin; fronts of ply inset; load 90 }",
        deep=19,
    )
    assert codes(compiled(text)) == ["rod293", "rod294", "rod302"]
