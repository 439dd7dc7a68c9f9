"""A number is marked as not final when, and only when, it is another at the measure's two ends."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from html import unescape

from compiling import compiled

from setout.drawing import Drawing
from setout.write import assemblies, drawers, drawings, installing, job_sheet
from setout.write.build_order.standing import standings
from setout.write.facts import Facts, facts
from setout.write.facts.sizes import Length
from setout.write.joinery.layout import lay_out

SPEC = """project "Niche" { units inch; mark to 1/32 }
stock ply "3/4 ply" { sheet 96 x 48 x 3/4; grain along 96 }
stock thin "1/4 ply" { sheet 96 x 48 x 1/4; grain along 96 }
room "R" { size wide 120, high 96, deep 40 }
measure gap "width between the pipes" expect 30 to 32
hardware slide "slides, 10 in" { slides side; length 10; clearance 1/2; height 1-3/4; screws at 1, 9 }
assembly case "Case" (w = 20, up = 12) {
  size wide w, high 30, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part shelf of ply { level; bottom at bottom + up; wide between left_side and right_side }
  part nailer of ply { facing at back; wide between left_side and right_side; high 4 to top }
  joint shelf to left_side, right_side { pockets on bottom; glue }
  joint nailer to left_side, right_side { pockets on back }
  opening bay {
    wide between left_side and right_side; high from bottom to shelf.bottom; deep from front to nailer.front
  }
  drawers in bay {
    heights 5, rest; slides slide; box of ply; bottom of thin in groove
    fronts of ply inset reveal 1/16; corners pockets
  }
}
place case (w = gap) as one { at left, back; bottom at 40 }
place case as two { left at one.right + 6-1/8; at back; bottom at gap + 5-3/16 }
place case (up = gap - 17) as three { left at two.right + 7; at back; bottom at 40 }
joint one, two, three to room.back { screws; only face }
"""


MOVING_ROW = """project "Held" { units inch }
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96 }
measure gap "skirting" expect 1/2 to 4-1/2
size wide 30, high 30, deep 24
part side of ply { upright at left; high from bottom to lid.bottom; deep 16 to back - gap; grain high }
part side2 mirrors side
part lid of ply { level at top; deep 22 to back }
joint lid to side, side2 { screws through lid every 4 }
part shelf of ply { level at bottom + 5; wide between side and side2; deep 16 to back - gap }
part strip of ply { upright centred; on shelf; high 3; deep 6 + gap from shelf.front }
joint strip to shelf { screws through shelf every 4 }
"""


def numbers(known: Facts) -> Iterator[tuple[str, Length]]:
    """All that is said of what stands where, of sizes of assemblies and drawers, and of lines to pencil."""
    yield from lengths("installing", installing.build(known, {}))
    yield from lengths("standing", tuple(standings(known).values()))
    yield from lengths("overall", job_sheet.build(known, None).overall)
    yield from lengths("things", tuple((t.names, t.sizes) for t in job_sheet.build(known, None).things))
    sheets = assemblies.build(known, assemblies.groups(known), {}).sheets
    yield from lengths("assemblies", tuple(sheet.sizes for sheet in sheets))
    yield from lengths("drawers", drawers.build(known, {}))
    mark_of = known.mark_of
    for board in ("one.left_side", "three.left_side", "two.shelf"):
        yield from lengths(board, lay_out(known, known.piece_by_mark[mark_of[board]], True))


def lengths(name: str, thing: object) -> Iterator[tuple[str, Length]]:
    if isinstance(thing, Length):
        yield name, thing
    elif isinstance(thing, tuple):
        for n, one in enumerate(thing):
            yield from lengths(f"{name}.{n}", one)
    elif is_dataclass(thing) and not isinstance(thing, Drawing):
        for field in fields(thing):
            yield from lengths(f"{name}.{field.name}", getattr(thing, field.name))


def at(gap: str) -> Facts:
    """With the measure taken; the marks are those of the open spec, so that the same boards have the same."""
    made = compiled(SPEC, {"gap": gap} if gap else {})
    assert made.value is not None, made.diagnostics
    return facts(made.value, "")


def test_numbers_are_not_final_when_they_differ_between_the_measure_s_ends_and_only_then():
    told, low, high = (dict(numbers(at(gap))) for gap in ("", "30", "32"))
    assert told.keys() == low.keys() == high.keys()
    moves = {name for name in told if low[name] != high[name]}
    assert {name for name, one in told.items() if one.waits} == moves
    assert moves and moves != told.keys()
    assert {name: replace(one, waits=False) for name, one in told.items()} == high


def test_drawn_numbers_are_marked_likewise():
    """Overall sizes, edges in the room, and on a board's drawing where its pockets are."""
    told, low, high = (written(at(gap)) for gap in ("", "30", "32"))
    for name, words in told.items():
        settled = set(low[name]) & set(high[name])
        marked = {word for word in words if word.startswith("(") or word.endswith("(not final)")}
        plain = [word.removesuffix(" (not final)").strip("()") for word in words]
        assert sorted(plain) == sorted(high[name])
        assert {word.removesuffix(" (not final)").strip("()") for word in marked}.isdisjoint(settled)
        assert {word for word in words if word[0].isdigit()} - marked <= settled
    assert any("(not final)" in word for word in told["front"])
    assert any(word.startswith("(") for word in told["wall"])
    assert any(word.startswith("(") for word in told["shelf"])


def test_a_hole_s_number_is_final_only_where_that_same_hole_stays():
    """Four screws 4 in apart move by 4 in together: three of the numbers are there at both ends, for another screw."""
    made = compiled(MOVING_ROW)
    assert made.value is not None, made.diagnostics
    known = facts(made.value, "")
    pieces = drawings.drawings(known, (), lambda _: "").pieces
    lid, shelf = (numbers_in(pieces[known.mark_of[path]]) for path in ("lid", "shelf"))
    assert {"(15-1/2)", "(11-1/2)", "(7-1/2)", "(3-1/2)", "≈3/8"} <= set(lid)
    assert {"(2)", "(5-1/4)", "(8-1/2)"} <= set(shelf)  # two at one end of the range, three at the other: none is final


def written(known: Facts) -> dict[str, list[str]]:
    views = {side: drawn for side, drawn in drawings.views(known).items() if side == "front"}
    made = {**views, "wall": installing.room_views(known)["front"]}
    made["shelf"] = drawings.drawings(known, (), lambda _: "").pieces[known.mark_of["one.shelf"]]
    return {name: numbers_in(drawing) for name, drawing in made.items()}


def numbers_in(drawing: Drawing) -> list[str]:
    words = (unescape(word) for word in re.findall(r">([^<>]+)</text>", drawing.svg))
    return [word for word in words if re.match(r"\(?≈?\d", word)]
