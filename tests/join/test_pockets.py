"""Pocket holes. Spacings and screws: common practice, no source (check-values.md section 7); layouts worked by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest
from joinscenes import board, codes, frac, hole, joined, joint, method, notch

T = Fraction(23, 32)
SIDE = board("side", (0, T), (0, 30), (0, 24))


def shelf(length, *features, show="top", thick=T, start=0):
    """A shelf whose end meets the side over `length`, from deep `start`."""
    return board(
        "shelf", (T, 20), (10, 10 + thick), (start, frac(start) + frac(length)), *features, show=show, thick="high"
    )


def pockets(length, *features, on="bottom", practice=None, every=None, **more):
    joins = joint("shelf", "side", method("pockets", on=on, every=every))
    scene, told = joined([SIDE, shelf(length, *features, **more)], joins, practice=practice or {})
    return [b for b in scene.boards["shelf"].bores if b.kind == "pocket"], scene, codes(told)


@pytest.mark.parametrize(
    ("length", "deep"),
    [
        ("1-1/4", ["5/8"]),  # under 1-1/2: one, in the middle
        (2, ["1/2", "1-1/2"]),  # two, a quarter in
        (6, ["1-1/2", "4-1/2"]),  # a quarter of 6 is nearer than 2
        (7, ["1-3/4", "3-1/2", "5-1/4"]),  # over 6: three; a quarter of 7 in
        ("11-1/4", ["2", "5-5/8", "9-1/4"]),
        (20, ["2", "10", "18"]),  # 16 between the outer two: two steps of 8
        (21, ["2", "7-2/3", "13-1/3", "19"]),  # 17 between: three steps of 5-2/3
    ],
)
def test_holes_along_the_contact(length, deep):
    holes, _, told = pockets(length)
    assert [h.at[2] for h in holes] == [frac(d) for d in deep] and not told


def test_a_pocket_lies_on_the_drilled_face_at_the_edge_it_comes_out_of():
    (first, *_), scene, _ = pockets(12)
    assert (first.face.word, first.toward.word) == ("bottom", "left")
    assert first.at == (T, 10, 2)
    assert (first.diameter, first.fastener) == (frac("3/8"), "pocket screw 1-1/4 in")
    held = scene.fastenings[0]
    assert (held.count, held.length, held.setting, held.driven) == (3, frac("1-1/4"), frac("3/4"), "shelf")


@pytest.mark.parametrize(
    ("thick", "screw", "setting"),
    [
        ("1/2", "1", "1/2"),
        ("15/32", "1", "1/2"),
        ("3/4", "1-1/4", "3/4"),
        ("1", "1-1/2", "1"),
        ("1-1/2", "2-1/2", "1-1/2"),
    ],
)
def test_screw_and_drill_stop_follow_from_the_thickness(thick, screw, setting):
    side = board("side", (0, T), (0, 30), (0, 24)) if frac(thick) < 1 else board("side", (0, 2), (0, 30), (0, 24))
    part = board("shelf", (side.box.hi[0], 20), (10, 10 + frac(thick)), (0, 12), thick="high")
    scene, _ = joined([side, part], joint("shelf", "side", method("pockets", on="bottom")))
    assert (scene.fastenings[0].length, scene.fastenings[0].setting) == (frac(screw), frac(setting))


def test_spacing_can_be_said_in_the_joint_or_as_practice():
    assert len(pockets(20, every=4)[0]) == 5
    assert len(pockets(20, practice={"pocket_spacing": "4"})[0]) == 5
    assert pockets(20, every="1/100")[2] == ["rod388"]


def test_an_endless_contact_makes_no_endless_row():
    side = board("side", (0, T), (0, 30), (0, 10**9))
    far = board("shelf", (T, 20), (10, 10 + T), (0, 10**9), thick="high")
    _, told = joined([side, far], joint("shelf", "side", method("pockets", on="bottom"), "screws", "brads", "dowels"))
    assert codes(told) == ["rod388"] * 4


def test_the_screw_stays_in_the_receiver():
    # 1-1/4 in screw in 23/32: 3/4 lies in the shelf, 1/2 beyond the edge, 0.483 deep at 15 degrees.
    # That leaves 0.236 of a 23/32 side; the margin is 1/8.
    assert pockets(12)[2] == []

    def into(receiver):
        side = board("side", (0, receiver), (0, 30), (0, 24), thick="wide")
        part = board("shelf", (side.box.hi[0], 20), (10, 10 + T), (0, 12), thick="high")
        return codes(joined([side, part], joint("shelf", "side", method("pockets", on="bottom")))[1])

    assert into(frac("18") * Fraction(5, 127)) == []  # 18 mm
    assert into("5/8") == []  # 0.142 left
    assert into("19/32") == ["rod384"]  # 0.111 left
    assert into("31/64") == ["rod384"]  # 0.001 left
    assert into("0.483") == ["rod383"]
    assert into("1/4") == ["rod383"]


def test_the_wood_is_measured_where_the_screw_is():
    # a dado for another shelf on the far side of the divider, right behind the screws, leaves 23/32 - 1/4 = 15/32
    other = board("other", (-20, 0), (10, 10 + T), (0, 12), thick="high")
    scene = [SIDE, shelf(12), other]
    dado = joint("other", "side", method("dado", depth="1/4"))
    joints = [joint("shelf", "side", method("pockets", on="bottom")), dado]
    assert "rod383" in codes(joined(scene, *joints)[1])


def test_no_hole_where_a_notch_leaves_no_contact():
    gap = notch((T, 20), (10, 10 + T), (9, 15))
    holes, scene, told = pockets(24, gap)
    assert len(scene.contacts) == 2 and not told
    assert [h.at[2] for h in holes] == [2, frac("4-1/2"), 7, 17, frac("19-1/2"), 22]  # two contacts, each 9 long


def test_faces_that_can_be_drilled_are_named():
    _, _, told = pockets(12, on="left")
    assert told == ["rod380"]
    _, told = joined([SIDE, shelf(12)], joint("shelf", "side", method("pockets", on="front")))
    assert "bottom and top" in told[0].others[0].text
    assert pockets(12, on=None)[0][0].face.word == "bottom"  # the face that isn't shown
    assert pockets(12, on=None, show=None)[2] == ["rod380"]


def test_pockets_need_an_edge_and_a_board_of_fitting_thickness():
    _, told = joined([SIDE, shelf(12)], joint("side", "shelf", method("pockets", on="left")))
    assert codes(told) == ["rod381"]
    assert pockets(12, thick=frac("1/4"))[2] == ["rod382"]
    assert pockets(12, thick=frac("2"))[2] == ["rod382"]


def test_too_little_contact_is_warned_of_and_not_drilled():
    holes, scene, told = pockets(12, start="23-1/2")
    assert not holes and not scene.fastenings and told == ["rod387"]


def test_shelves_on_both_sides_of_a_divider_hit_each_other():
    other = board("other", (-20, 0), (10, 10 + T), (0, 12), thick="high")
    joints = [joint(["shelf", "other"], "side", method("pockets", on="bottom"))]
    # 2 x 0.483 is more than 23/32
    assert codes(joined([SIDE, shelf(12), other], *joints)[1]) == ["rod390"]
    higher = board("other", (-20, 0), (12, 12 + T), (0, 12), thick="high")
    assert codes(joined([SIDE, shelf(12), higher], *joints)[1]) == []


def test_a_pocket_reaches_as_far_as_the_end_of_its_mouth():
    """A 3/8 bit at 15 degrees from the middle of a 23/32 edge leaves the face up to 2.065 from that edge (0.359375 /
    tan 15 + 0.1875 / sin 15)."""
    told = {at: pockets("1-1/4", hole("bottom", (T + frac(at), 10, "5/8"), "1/8"))[2] for at in (2, "2-1/4")}
    assert told == {2: ["rod390"], "2-1/4": []}


def test_pockets_make_room_for_a_hole_of_the_spec_and_stay_in_the_middle():
    in_the_way = hole("bottom", (T + 2, 10, 2), "5/16")
    assert [h.at[2] for h in pockets(12)[0]] == [2, 6, 10]
    assert [h.at[2] for h in pockets(12, in_the_way)[0]] == [frac("2-1/2"), 6, frac("9-1/2")]
    far = hole("bottom", (T + 4, 10, 2), "5/16")
    assert [h.at[2] for h in pockets(12, far)[0]] == [2, 6, 10]
