"""Lines to pencil, where things are set and hung, and what is at hand: worked by hand, as a builder would."""

from __future__ import annotations

import re
from fractions import Fraction
from html import unescape

import pytest
from compiling import SPECS, compiled

from setout.write import joinery, write
from setout.write.build_order.making import joints_made, makings
from setout.write.facts import facts
from setout.write.facts.turning import is_turned
from setout.write.joinery.layout import lay_out

HEAD = """project "Case" { units inch; mark to 1/32 }
stock ply "3/4 ply" { sheet 96 x 48 x 3/4; grain along 96 }
stock thin "1/4 ply" { sheet 96 x 48 x 1/4; grain along 96 }
"""
CASE = """assembly case "Case" (w = 20, up = 11-5/8) {
  size wide w, high 30, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part shelf of ply { level at bottom + up; wide between left_side and right_side; deep 10 from front }
  joint shelf to left_side, right_side { pockets on bottom; glue }
}
"""
ROOM = """room "Shop" { size wide 100, high 96, deep 80; studs every 16 from left + 3 }
assembly upper "Upper" (w = 24) {
  size wide w, high 20, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part nailer of ply { facing at back; wide between left_side and right_side; high 4 to top }
  joint nailer to left_side, right_side { pockets on back; glue }
}
place upper as one { wide from left + 12-1/2; bottom at 54; at back }
place upper as two { left at one.right + 30; bottom at 54; at back }
joint one, two to room.back { screws into studs; only face }
"""


def made(text: str):
    checked = compiled(HEAD + text)
    assert checked.value is not None, checked.diagnostics
    return checked.value


def lines(text: str, board: str) -> list[tuple]:
    """Of the piece that the board is: face, zero, from, to, along, marks, names, only."""
    known = facts(made(text), "")
    piece = next(p for p in known.plan.pieces.pieces if board in p.boards)
    return [
        (
            *(g.face.word, g.zero.word),
            *(one.span[0].text, one.span[1].text, along(one)),
            *(len(one.marks), named(one.partners), named(p for o in g.only for p in o.where)),
        )
        for g in lay_out(known, piece, True)
        for one in g.lines
    ]


def along(line) -> str:
    return " to ".join(n.text for n in line.along) + f" from {line.along_zero.word}" if line.along else ""


def named(places) -> str:
    return "; ".join(": ".join(filter(None, (", ".join(p.owners), ", ".join(p.names)))) for p in places)


def words(html: str) -> str:
    """As a reader has them: a tag within a line parts no words."""
    lines = re.sub(r"</?(?:span|b)\b[^>]*>", "", html)
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", lines)))


def page(text: str, document: str) -> str:
    html = write(made(text), frozenset({"html"}))["packet.html"].decode()
    return words(re.search(rf'<section class="document" id="{document}">.*?</section>', html, re.S).group())


def test_a_shelf_is_lined_on_both_sides_of_its_place():
    said = page(CASE + "place case { at left, bottom, back }\nsize wide 20, high 30, deep 12", "joinery")
    shelf = "11-5/8 to 12-3/8 A2 shelf, 0 to 10 from the front edge"
    for face, only in (("right", "left"), ("left", "right")):
        assert f"Lay out the {face} face, from the bottom edge (only case: {only} side) {shelf}" in said


def test_what_equal_copies_share_is_said_once_with_all_partners():
    """Sides alike, shelves of two lengths: both stand in the same place. A left side is a right one turned about, and
    is spoken of as it stands."""
    text = CASE + "place case as a { at left, bottom, back }"
    text += "\nplace case (w = 30) as b { left at a.right + 5; at bottom, back }\nsize wide 60, high 30, deep 12"
    place = ("bottom", "11-5/8", "12-3/8", "0 to 10 from front", 2, "shelf")
    assert lines(text, "a.left_side") == [("right", *place, "a, b: left side"), ("left", *place, "a, b: right side")]


def test_copies_that_meet_others_say_which():
    """The same side with its shelf lower in one of two cases."""
    text = CASE + "place case as a { at left, bottom, back }"
    text += "\nplace case (up = 8) as b { left at a.right + 5; at bottom, back }\nsize wide 60, high 30, deep 12"
    found = {(low, only) for _, _, low, _, _, _, _, only in lines(text, "a.left_side")}
    assert ("11-5/8", "a: left side") in found and ("8", "b: left side") in found


TRIMMED = (
    CASE
    + """place case as a { at left, bottom, back }
place case as b { left at a.right + 5; at bottom, back }
size wide 60, high 30, deep 13
part strip of ply { facing; back at a.front; high 2 to a.top; wide over a and b }
joint strip to a, b { brads }
"""
)


def test_a_line_for_a_copy_that_stands_turned_names_the_sides_as_they_are_there():
    """A dado halfway up, stopped in front: right sides are left ones turned upside down, so that a strip along the tops
    lies at the drawn bottom of these."""
    text = TRIMMED.replace("up = 11-5/8", "up = 14-5/8")
    said = page(text.replace("pockets on bottom", "dado depth 1/4 stopped front 1"), "joinery")
    assert "Lay out the front edge, from the bottom edge (only a, b: left side) 28 to 30 A1 strip" in said
    turned = "(only a, b: right side, where the bottom edge is its top edge) 0 to 2 A1 strip"
    assert f"Lay out the front edge, from the bottom edge {turned}" in said


@pytest.mark.parametrize("how", ["turned 90", "turned 180", "turned 270", "mirrored"])
def test_a_turned_case_reads_as_it_stands_on_the_bench(how):
    text = CASE + f"place case {how} as a {{ at left, bottom, back }}\nsize wide 40, high 30, deep 40"
    face, zero, low, high, _, _, name, _ = lines(text, "a.left_side")[0]
    assert (zero, low, high, name) == ("bottom", "11-5/8", "12-3/8", "shelf")
    assert face in ("left", "right")


def test_a_housing_is_not_lined_out_as_well():
    text = CASE.replace("pockets on bottom; glue", "dado depth 1/4; glue")
    assert lines(text + "place case { at left, bottom, back }\nsize wide 20, high 30, deep 12", "case.left_side") == []


def test_tongues_count_where_a_board_is_measured():
    """The shelf is 1/4 longer at each end than it shows; the divider 9 from the side's face stands 9-1/4 along it."""
    text = CASE.replace("pockets on bottom; glue", "dado depth 1/4; glue").replace(
        "\n}\n",
        """
  part divider of ply { upright; left at left_side.right + 9; high from bottom to shelf.bottom; deep 10 from front }
  joint divider to shelf { brads }
}
""",
    )
    found = lines(text + "place case { at left, bottom, back }\nsize wide 20, high 30, deep 12", "case.shelf")
    assert [one[:4] for one in found] == [("bottom", "left", "9-1/4", "10")]


def test_what_waits_for_a_measure_stands_in_brackets():
    text = 'measure sill "height of the sill" expect 8 to 9\n' + CASE.replace("bottom + up", "bottom + sill")
    said = page(text + "place case { at left, bottom, back }\nsize wide 20, high 30, deep 12", "joinery")
    assert "(9 to 9-3/4) A2 shelf, 0 to 10 from the front edge (waits to be measured)" in said


@pytest.mark.parametrize("name", ["sewing_wall", "potting_bench"])
def test_printed_numbers_are_the_exact_ones_rounded_once(name):
    """Of the demos' boards that are drawn as they stand, every footprint's ends are among the numbers printed."""
    known = facts(compiled((SPECS / f"{name}.rod").read_text("utf-8")).value, "")
    unit, near = Fraction(5, 127) if known.style.metric else 1, known.style.mark / 2
    for piece in known.plan.pieces.pieces:
        if piece.exemplar is None or is_turned(known.scene.instances[piece.exemplar.board.owner].motion):
            continue
        lines = [one for group in lay_out(known, piece, True) for one in group.lines]
        said = [(value(n.text) * unit, n.rounded) for one in lines for n in (*one.span, *(one.along or ()))]
        box = piece.exemplar.box
        for one in known.footprints.get(piece.exemplar.board.path, ()):
            for axis in (axis for axis in range(3) if axis != one.face.axis):
                for off in (one.area.lo[axis] - box.lo[axis], one.area.hi[axis] - box.lo[axis]):
                    assert off in (0, box.size(axis)) or any(
                        at == off if not rounded else 0 < abs(at - off) <= near for at, rounded in said
                    )


def value(text: str) -> Fraction:
    whole, _, part = text.rpartition("-")
    return Fraction(part) + (int(whole) if whole else 0)


def test_a_hung_case_says_how_high_and_from_where():
    said = page(ROOM, "build-order")
    assert "Its underside 54 above the floor, its left side 12-1/2 from the left wall, back against the wall." in said
    assert "its left side 66-1/2 from the left wall (30 clear of one on its left), back against the wall." in said
    # studs at 3, 19, 35, 51, 67, 83: two behind each nailer
    assert "into studs: 4 screws at 19, 35 along the wall" in said


def test_a_case_that_stands_on_the_floor_says_so():
    room = 'room "Shop" { size wide 60, high 96, deep 60 }\n'
    said = page(room + CASE + "place case { at left, bottom, back }", "build-order")
    assert "On the floor, against the left wall, back against the wall." in said


def test_joints_come_in_the_order_of_making_with_what_holds_each():
    text = CASE.replace(
        "\n}\n",
        """
  part back_panel of thin { facing front at back; proud back }
  joint back_panel to left_side, right_side { brads every 6 }
}
""",
    )
    plan = made(text + "place case { at left, bottom, back }\nsize wide 20, high 30, deep 13")
    known = facts(plan, "")
    step = next(step for step in plan.order.steps if step.id.verb == "assemble")
    told = makings(known, joints_made(known, step))
    found = [(one.entering, one.receiving, [f.kind for f in one.fasteners], one.glued) for one in told]
    assert found == [
        (("shelf",), ("left side", "right side"), ["pockets"], True),
        (("back panel",), ("left side", "right side"), ["brads"], False),
    ]


def test_lines_on_a_banded_board_count_from_its_sawn_edge():
    """They are pencilled before the banding is put on: 12 deep less 1/4 of tape, and a rail 3 deep from the front."""
    banded = CASE.replace("left_side of ply { upright at left; grain high }",
                          "left_side of ply { upright at left; grain high; band front with tape }")  # fmt: skip
    banded = banded.replace("  joint shelf", """
  part rail of ply { level at top; wide between left_side and right_side; deep 3 from front }
  part floor_panel of ply { level at bottom; wide between left_side and right_side }
  joint rail, floor_panel to left_side, right_side { pockets on bottom; glue }
  joint shelf""")
    tape = 'hardware tape "tape" { edging 13/16 x 1/4 long 300 }\n'
    text = tape + banded + "size wide 40, high 40, deep 12\nplace case { at left, bottom, front }\n"
    found = lines(text, "case.left_side")
    assert [line[2:5] + line[6:7] for line in found[:3]] == [
        ("0", "3/4", "", "floor panel"),
        ("11-5/8", "12-3/8", "0 to 9-3/4 from front", "shelf"),
        ("29-1/4", "30", "0 to 2-3/4 from front", "rail"),
    ]
    assert joinery.build(facts(made(text), ""), {}).banded
