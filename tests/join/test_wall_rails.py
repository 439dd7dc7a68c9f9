"""Wall screws and what is in front of the board that they hold. Common practice, no source."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from compiling import compiled

HEAD = """\
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96; density 36 }
stock thin "1/4 plywood" { sheet 96 x 48 x 7/32; grain along 96; density 36 }
room "Hall" { size wide 60, high 96, deep 40; studs every 16 from left + 8 }
assembly box "Box" {
  size wide 36, high 30, deep 14
  default deep from front to back_panel.front
  part back_panel of thin { facing at back; grain wide }
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part top_panel of ply { level at top; wide between left_side and right_side }
  joint top_panel to left_side, right_side { pockets on top; glue }
  joint back_panel to left_side, right_side, top_panel { brads }
RAIL}
place box { at left, back; bottom at 50 }
"""
RAIL = """\
  part rail of ply {
    facing against back_panel.front
    wide between left_side and right_side
    high 4 to top_panel.bottom
  }
  joint rail to left_side, right_side { pockets on front; glue }
  joint rail to top_panel, back_panel { glue }
"""
HUNG = "joint box to room.back { screws into studs }\n"


def looked_at(rail: str, joint: str = HUNG):
    checked = compiled(HEAD.replace("RAIL", rail) + joint)
    assert checked.value is not None, [d.message for d in checked.diagnostics]
    codes = [d.code for d in checked.diagnostics if d.code in ("rod356", "rod358", "rod390", "rod558")]
    scene = checked.value.pieces.joined.drawn
    return codes, scene, checked.value.inspected.hung


def test_screws_go_through_the_rail_and_the_thin_back_and_only_there():
    codes, scene, (hung,) = looked_at(RAIL)
    (held,) = [f for f in scene.fastenings if "room" in f.contact]
    bores = {p: [b for b in scene.boards[f"box.{p}"].bores if b.source == held.contact] for p in ("back_panel", "rail")}
    assert not codes and not hung.thin and hung.boards == ("box.rail", "box.back_panel")
    assert held.also == ("box.rail",) and held.count == 4  # two a stud in a rail of this height
    assert held.length == 3 >= F(23, 32) + F(7, 32) + F(1, 2) + F(3, 2)
    rail = scene.boards["box.rail"].box
    for path, front in (("back_panel", rail.hi[2]), ("rail", rail.lo[2])):
        assert len(bores[path]) == held.count and {b.at[2] for b in bores[path]} == {front}
        assert all(rail.lo[1] < b.at[1] < rail.hi[1] and b.depth is None for b in bores[path])


def test_a_rail_is_joined_to_the_wall_through_the_back_that_it_is_joined_to():
    codes, scene, _ = looked_at(RAIL, HUNG.replace("joint box", "joint box.rail"))
    (held,) = [f for f in scene.fastenings if "room" in f.contact]
    _, whole, _ = looked_at(RAIL)
    assert not codes and (held.driven, held.also, held.count) == ("box.back_panel", ("box.rail",), 4)
    assert [b.at for b in scene.boards["box.rail"].bores] == [b.at for b in whole.boards["box.rail"].bores]
    apart = HEAD.replace("RAIL", RAIL.replace(", back_panel { glue", " { glue"))
    found = compiled(apart + HUNG.replace("box to", "box.rail to")).diagnostics
    (told,) = [d for d in found if d.code == "rod356"]
    assert "`joint rail to back_panel { glue }`" in told.help


def test_a_thin_back_alone_is_told_of():
    codes, _, (hung,) = looked_at("")
    assert codes == ["rod558"] and hung.thin


def test_the_load_table_counts_both_thicknesses():
    _, _, (railed,) = looked_at(RAIL)
    thick = HEAD.replace("part back_panel of thin", "part back_panel of ply").replace("RAIL", "")
    (whole,) = compiled(thick + HUNG).value.inspected.hung
    assert railed.length == whole.length == 3
    into = [3 - F(1, 2) - F(23, 32) - more for more in (F(7, 32), 0)]
    assert railed.estimate.out_allowed / whole.estimate.out_allowed == pytest.approx(float(into[0] / into[1]), rel=0.05)
    assert railed.estimate.out_allowed < whole.estimate.out_allowed


def test_a_place_under_the_edge_of_a_divider_is_left_out():
    divider = """\
  part divider of ply {
    upright; left at left + 8 - 3/8
    high 20 to top_panel.bottom; deep from front to rail.front
  }
  joint divider to rail { glue }
"""
    _, scene, _ = looked_at(RAIL + divider)
    (held,) = [f for f in scene.fastenings if "room" in f.contact]
    assert held.count == 2
    assert {b.at[0] for b in scene.boards["box.rail"].bores if b.source == held.contact} == {24}
