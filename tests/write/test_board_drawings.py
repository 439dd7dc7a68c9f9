"""Boards' drawings as the packet has them: large enough to drill from."""

from __future__ import annotations

import re
from html import unescape

from compiling import compiled

from setout.write import drawers, drawings, joinery
from setout.write.facts import facts
from setout.write.facts.lines import hole_lines
from setout.write.facts.totals import totals

TALL = """project "Tall" { units inch; mark to 1/32 }
stock ply "3/4 ply" { sheet 96 x 48 x 3/4; grain along 96 }
hardware pin "shelf pin, 5 mm" { hole 5mm depth 10mm }
assembly case "Case" {
  size wide 24, high 74, deep 18
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part top_panel of ply { level at top; wide between left_side and right_side }
  part bottom_panel of ply { level at bottom; wide between left_side and right_side }
  joint top_panel, bottom_panel to left_side, right_side { brads; glue }
  opening bay {
    wide between left_side and right_side
    high between bottom_panel and top_panel
    deep from front to back
  }
  shelves in bay of ply { count 3; pins pin every 32mm from bottom + 6; clear 1/16 }
}
place case { at left, bottom, back }
size wide 24, high 74, deep 18
"""


def test_a_board_with_very_many_holes_is_drawn_as_large_as_a_page_lets_it_be():
    known = facts(compiled(TALL).value, "")
    side = drawings.drawings(known, (), lambda _: "").pieces[known.mark_of["case.left_side"]]
    assert 500 < side.height <= known.height and side.width < known.width / 2 + 100
    said = [unescape(word) for word in re.findall(r">([^<>]+)</text>", side.svg)]
    assert "hole for shelf pin, 5 mm, 2 rows of 53, 32 mm apart" in " ".join(said)
    assert "every 32 mm" in said


def test_bits_sold_in_millimetres_have_one_size_on_every_page_of_a_job_in_inches():
    known = facts(compiled(TALL).value, "")
    side = drawings.drawings(known, (), lambda _: "").pieces[known.mark_of["case.left_side"]]
    said = [unescape(word) for word in re.findall(r">([^<>]+)</text>", side.svg)]
    assert "5 mm" in said and "10 mm" in said
    (holes,) = [one for one in joinery.build(known, {}).set_ups if one.kind == "hardware"]
    assert (holes.across.text, holes.depth.text, holes.across.rounded) == ("5 mm", "10 mm", False)
    assert drawers.build(known, {}).shelves[0].every.text == "32 mm"
    (line,) = [one for one in hole_lines(known, totals(known.plan).bores) if one.kind == "hardware"]
    assert line.diameter.text == "5 mm"
