"""Screws, brads, dowels, glue, walls. Layouts worked by hand; rules of thumb: common practice, no source."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from compiling import compiled
from joinscenes import board, codes, frac, joined, joint, method

from setout.geometry import Box
from setout.join.layout import Rule, row, shifted
from setout.join.methods.names import clearance, pilot, screw_diameter
from setout.practice import standard
from setout.resolve.model import Room

T = Fraction(23, 32)
SIDE = board("side", (0, T), (0, 30), (0, 24))
SHELF = board("shelf", (T, 20), (10, 10 + T), (0, 12))


def only(scene, kind):
    return next(f for f in scene.fastenings if f.kind == kind)


@pytest.mark.parametrize(("gauge", "diameter"), [(6, ".138"), (8, ".164"), (10, ".190"), (12, ".216"), (14, ".242")])
def test_screw_diameters(gauge, diameter):
    """ASME B18.6.1: D = 0.060 + 0.013 N (check-values.md section 5)."""
    assert screw_diameter(standard(), gauge) == Fraction(diameter)


@pytest.mark.parametrize(("gauge", "clear", "lead"), [(6, "9/64", "3/32"), (8, "11/64", "7/64"), (10, "13/64", "1/8")])
def test_drills(gauge, clear, lead):
    """Clearance: the next 1/64 above D. Pilot: 70 to 90 % of the root (Wood Handbook ch. 8), to the nearest 1/64."""
    assert (clearance(standard(), gauge), pilot(standard(), gauge)) == (frac(clear), frac(lead))
    root = standard().nearest("screw_root", Fraction(gauge))
    assert Fraction(7, 10) * root <= pilot(standard(), gauge) <= Fraction(9, 10) * root


def test_a_butt_joint_is_screwed_through_the_receiver():
    scene, told = joined([SIDE, SHELF], joint("shelf", "side", "screws"))
    assert not codes(told)
    held = only(scene, "screws")
    # 2 in: 1-9/32 of it, 64 %, in the shelf. 2-1/4 would have 68 %.
    assert (held.driven, held.face.word, held.count, held.gauge, held.length) == ("side", "left", 2, 8, 2)
    heads, pilots = scene.boards["side"].bores, scene.boards["shelf"].bores
    assert [b.at for b in heads] == [(0, 10 + T / 2, 2), (0, 10 + T / 2, 10)]
    assert {b.depth for b in heads} == {None} and {b.kind for b in heads} == {"clearance"}
    assert [b.at for b in pilots] == [(T, 10 + T / 2, 2), (T, 10 + T / 2, 10)]
    assert {(b.kind, b.depth, b.face.word) for b in pilots} == {("pilot", 2 - T, "left")}


def test_a_lap_is_screwed_through_the_entering_board_and_through_says_otherwise():
    scene, _ = joined([SIDE, SHELF], joint("side", "shelf", "screws"))
    assert only(scene, "screws").driven == "side"
    _, told = joined([SIDE, SHELF], joint("shelf", "side", method("screws", through=["shelf"])))
    assert codes(told) == ["rod386"]  # through 19 in of shelf
    _, told = joined([SIDE, SHELF], joint("shelf", "side", method("screws", through=["door"])))
    assert codes(told) == ["rod389"]


def test_a_lamination_gets_a_grid_through_the_thinner_board():
    thin = board("thin", (0, 20), (0, 12), (0, "1/2"))
    thick = board("thick", (0, 20), (0, 12), ("1/2", "1-1/2"))
    scene, told = joined([thick, thin], joint("thick", "thin", "screws"))
    held = only(scene, "screws")
    # half-inch board: gauge 6, 1-1/2 long, a full inch (2/3) in the other, but that is all it has: 1-1/4, 3/4 (60 %) in
    assert (held.driven, held.gauge, held.length, held.count) == ("thin", 6, frac("1-1/4"), 6)
    assert sorted({b.at[0] for b in scene.boards["thin"].bores}) == [2, 10, 18]
    assert sorted({b.at[1] for b in scene.boards["thin"].bores}) == [2, 10]
    assert not codes(told)


def rail(wide, *methods):
    """Where the screws through a rail 4 deep go, its ends held by two pockets each, and what is told."""
    left, right = board("left", (-T, 0), (0, 30), (0, 4)), board("right", (wide, wide + T), (0, 30), (0, 4))
    part = board("rail", (0, wide), (30 - T, 30), (0, 4))
    top = board("top", (0, wide), (30, 30 + T), (0, 4), at=5)
    held = joint("rail", ["left", "right"], method("pockets", on="bottom"))
    scene, told = joined([left, right, part, top], held, joint("top", "rail", *methods))
    return sorted({bore.at[0] for bore in scene.boards["rail"].bores if bore.kind == "clearance"}), told


def test_screws_keep_clear_of_the_mouths_of_pockets():
    """The mouths end 2.065 from the ends of the rail; a no. 8 screw 2 in from them would come up in them."""
    through = method("screws", through=["rail"])
    places, told = rail(34, through)
    assert places == [frac("2-1/2"), frac("9-3/4"), 17, frac("24-1/4"), frac("31-1/2")] and not codes(told)


def test_a_row_that_finds_no_room_stays_where_the_rule_sets_it():
    places, told = rail(5, method("screws", through=["rail"]))
    assert places == [frac("1-1/4"), frac("3-3/4")] and codes(told) == ["rod390"]


def test_no_screw_comes_out():
    thin = board("thin", (0, 20), (0, 12), (0, "1/4"))
    for back, code in (("1/4", ["rod385"]), ("3/8", []), ("5/8", [])):
        other = board("other", (0, 20), (0, 12), ("1/4", frac("1/4") + frac(back)))
        scene, told = joined([thin, other], joint("thin", "other", "screws"))
        assert codes(told) == code
        for held in scene.fastenings:
            assert held.length - frac("1/4") <= frac(back) - frac("1/8")


def test_an_edge_too_narrow_for_screws_is_warned_of():
    thin = board("shelf", (T, 20), (10, "10-1/4"), (0, 12))
    scene, told = joined([SIDE, thin], joint("shelf", "side", "screws", "glue"))
    assert codes(told) == ["rod387"] and [f.kind for f in scene.fastenings] == ["glue"]


@pytest.mark.parametrize(("named", "warned"), [("box", False), ("box.back_panel", True)])
def test_of_an_assembly_some_boards_may_hardly_meet_the_other(named, warned):
    text = f"""stock ply "p" {{ sheet 96 x 48 x 3/4 }}
    stock thin "t" {{ sheet 96 x 48 x 1/4 }}
    assembly box "Box" {{ size wide 20, high 16, deep 12
      part side of ply {{ upright at right; grain high; deep from front to back_panel.front }}
      part back_panel of thin {{ facing at back }}
      joint back_panel to side {{ brads }} }}
    size wide 40, high 18, deep 12
    place box {{ at left, bottom, back }}
    part shelf of ply {{ level; bottom at bottom + 6; wide 12 from box.right; deep 12 from front }}
    joint shelf to {named} {{ pockets on bottom }}
    """
    assert any(d.code == "rod387" for d in compiled(text).diagnostics) == warned


def test_brads_go_through_the_thin_piece_three_times_its_thickness():
    back = board("back", (0, 20), (0, 30), (12, "12-7/32"))
    rail = board("rail", (0, 20), (0, T), (0, 12))
    scene, told = joined([back, rail], joint("back", "rail", method("brads", every=6)))
    held = only(scene, "brads")
    # 3 x 7/32 = 21/32: 3/4 is the next on sale; 20 long, 1 from the ends: 18 in three steps
    assert (held.driven, held.length, held.count) == ("back", frac("3/4"), 4)
    assert not scene.boards["back"].bores and not codes(told)


def test_a_rabbeted_back_is_nailed_into_the_cheek():
    back = board("back", (T, 20), (0, 30), (24 - Fraction(7, 32), 24))
    scene, told = joined([SIDE, back], joint("back", "side", method("rabbet", depth="3/8"), "brads"))
    held = only(scene, "brads")
    assert (held.driven, held.face.word) == ("back", "back") and not codes(told)


def test_screws_through_a_dadoed_side_start_from_what_is_left():
    scene, told = joined([SIDE, SHELF], joint("shelf", "side", method("dado", depth="1/4"), "screws"))
    # 23/32 - 1/4 = 15/32 to pass: gauge 6; 1-1/4 has 25/32 (63 %) in the shelf
    held = only(scene, "screws")
    assert (held.gauge, held.length) == (6, frac("1-1/4")) and not codes(told)
    assert {b.at[0] for b in scene.boards["shelf"].bores} == {T - Fraction(1, 4)}


def test_dowels_are_drilled_in_both_boards():
    scene, told = joined([SIDE, SHELF], joint("shelf", "side", "dowels"))
    held = only(scene, "dowels")
    # half of 23/32 is 0.359: 5/16 dowels, 1-1/2 long. The side takes 23/32 - 1/8 - 1/16 = 17/32 of it.
    assert (held.diameter, held.length, held.count) == (frac("5/16"), frac("1-1/2"), 3)
    assert {b.depth for b in scene.boards["side"].bores} == {frac("17/32") + frac("1/16")}
    assert {b.depth for b in scene.boards["shelf"].bores} == {frac("1-1/2") - frac("17/32") + frac("1/16")}
    assert [b.at for b in scene.boards["side"].bores] == [b.at for b in scene.boards["shelf"].bores]
    assert not codes(told)


def test_dowels_find_room_or_are_refused():
    thin = board("side", (0, "1/2"), (0, 30), (0, 24))
    part = board("shelf", ("1/2", 20), (10, 10 + T), (0, 12))
    assert codes(joined([thin, part], joint("shelf", "side", "dowels"))[1]) == ["rod385"]


def test_glue_is_counted_by_area_with_the_cheeks_of_a_dado():
    scene, _ = joined([SIDE, SHELF], joint("shelf", "side", "glue"))
    assert only(scene, "glue").area == 12 * T
    scene, _ = joined([SIDE, SHELF], joint("shelf", "side", method("dado", depth="1/4"), "glue"))
    assert only(scene, "glue").area == 12 * T + 2 * 12 * Fraction(1, 4)


# --- walls -----------------------------------------------------------------------------------------------------

ROOM = Box((Fraction(0),) * 3, (Fraction(120), Fraction(96), Fraction(100)))
STUDS = Room("Study", {}, (Fraction(16), Fraction(3)), None)


def cleat(lo, hi, high="1-1/2", *methods, studs=STUDS):
    part = board("cleat", (lo, hi), (30, 30 + frac(high)), (100 - T, 100), thick="deep")
    how = methods or [method("screws", studs=True)]
    return joined([part], joint("cleat", "room.back", *how), room=ROOM, room_of=studs)


def test_a_cleat_is_screwed_to_its_studs():
    scene, told = cleat(10, 58)
    held = only(scene, "screws")
    # studs at 19, 35, 51; 23/32 + 1/2 drywall + 1-1/2 into the stud = 2-23/32: 3 in (check-values.md section 7)
    assert (held.count, held.length, held.gauge) == (3, 3, 10) and not codes(told)
    assert [b.at for b in scene.boards["cleat"].bores] == [(n, frac("30-3/4"), 100 - T) for n in (19, 35, 51)]
    assert only(cleat(10, 58, 6)[0], "screws").count == 6


def test_screws_at_a_stud_move_up_and_down_to_keep_clear_of_pockets():
    """A stud at 19, 1-1/2 from the rail's end: the pockets there, 1 and 3 up, reach 2.065 in. The screws leave 1/8."""
    post = board("post", ("17", "17-1/2"), (0, 60), (90, 100), thick="wide")
    part = board("cleat", ("17-1/2", 58), (30, 34), (100 - T, 100), thick="deep")
    held = joint("cleat", "post", method("pockets", on="back"))
    into = joint("cleat", "room.back", method("screws", studs=True))
    scene, told = joined([post, part], held, into, room=ROOM, room_of=STUDS)
    heights = {b.at[1] for b in scene.boards["cleat"].bores if b.kind == "clearance"}
    assert heights == {frac("31-1/2"), frac("32-1/2")} and "rod390" not in codes(told)


def test_walls_take_screws_and_want_studs():
    assert codes(cleat(20, 34)[1]) == ["rod392"]
    assert codes(cleat(10, 58, "1-1/2", "screws")[1]) == ["rod393"]
    assert codes(cleat(10, 58, "1-1/2", "glue")[1]) == ["rod391"]
    scene, told = cleat(10, 58, studs=None)
    assert only(scene, "screws").count == 3 and not scene.boards["cleat"].bores and not codes(told)
    away = board("cleat", (10, 58), (30, 32), (90, 91))
    assert codes(joined([away], joint("cleat", "room.back", "screws"), room=ROOM)[1]) == ["rod356"]
    assert codes(joined([SIDE, SHELF], joint("shelf", "side", method("screws", studs=True)))[1]) == ["rod396"]


def test_of_several_alike_each_is_told_of():
    text = """stock ply "p" { sheet 96 x 48 x 3/4 }
    size wide 40, high 40, deep 12
    part side of ply { upright at left; grain high; high 24-3/16 from bottom }
    part shelf of ply { level; wide from side.right to right; repeat 3 every 12 from bottom }
    joint shelf to side { pockets on bottom }
    """
    (told,) = [d for d in compiled(text).diagnostics if d.code == "rod387"]
    assert "`shelf.3`" in told.message


def test_a_row_that_is_set_in_keeps_its_fasteners_apart():
    rule = Rule(Fraction(2), Fraction(8), Fraction(1), two_up_to=Fraction(6))
    apart = Fraction(1, 2)
    for length in (Fraction(n, 4) for n in range(4, 100)):
        for made in list(shifted(length, rule, Fraction(1, 4), apart))[1:]:
            offsets = row(length, made)
            assert all(b - a >= apart for a, b in pairwise(offsets)) and offsets[0] == length - offsets[-1]
    assert len(list(shifted(Fraction(90), rule, Fraction(1, 100_000), apart))) < 50


@pytest.mark.parametrize(("deep", "offered"), [(17, False), (2, True)])
def test_screws_in_a_good_face_are_driven_from_the_other_side_where_they_reach(deep, offered):
    seat = board("seat", (0, 30), (17, 17 + T), (0, 12), thick="high", show="top")
    side = board("side", (0, T), (17 - deep, 17), (0, 12), thick="wide")
    _, told = joined([seat, side], joint("seat", "side", "screws"))
    (found,) = [d for d in told if d.code == "rod399"]
    assert ("from the other side (`through side`)" in found.help) == offered and "plug the heads" in found.help
