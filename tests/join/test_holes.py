"""The spec's holes and hardware's, and what hits what inside a board."""

from __future__ import annotations

from fractions import Fraction

from carcase import carcase, shelf_names
from hypothesis import given, settings
from hypothesis import strategies as st
from joinscenes import board, codes, fitting, frac, hole, joined, joint, method, mirrored, notch, placed, scene

from setout.geometry import Axis
from setout.join import join

T = Fraction(3, 4)


def panel(*features):
    return board("panel", (0, 20), (0, "3/4"), (0, 12), *features)


def test_holes_become_bores_and_other_features_stay():
    cut = notch((0, 2), (0, "3/4"), (0, 2))
    joined_scene, told = joined(
        [panel(cut, hole("top", (5, "3/4", 5), "1/2", "1/4"))],
        fittings=[fitting("panel", "bottom", [(4, 0, 4), (16, 0, 4)], "5/16")],
    )
    bores = joined_scene.boards["panel"].bores
    assert [(b.kind, b.at[0], b.depth, b.source) for b in bores] == [
        ("hole", 5, frac("1/4"), ""),
        ("hardware", 4, None, "fit#1"),
        ("hardware", 16, None, "fit#1"),
    ]
    assert joined_scene.boards["panel"].features == (cut,) and not codes(told)


def test_holes_need_wood():
    cut = notch((0, 2), (0, "3/4"), (0, 2))
    assert codes(joined([panel(cut, hole("top", (1, "3/4", 1), "1/2"))])[1]) == ["rod394"]
    assert codes(joined([panel()], fittings=[fitting("panel", "bottom", [(25, 0, 4)], "5/16")])[1]) == ["rod394"]
    assert codes(joined([panel(hole("top", (5, "3/4", 5), "1/2", "3/4"))])[1]) == ["rod395"]


def test_two_holes_that_cut_into_each_other_are_told_once():
    holes = [hole("top", (at, "3/4", 5), "1/2") for at in (5, "5-1/4")]
    _, told = joined([panel(*holes)])
    assert codes(told) == ["rod390"] and "more place" not in told[0].message


def test_a_dado_over_a_hole_is_warned_of():
    shelf = board("shelf", (8, "8-3/4"), ("3/4", 20), (0, 12))
    drilled = panel(hole("bottom", ("8-1/4", 0, 6), "1/4"))
    assert codes(joined([drilled, shelf], joint("shelf", "panel", "dado"))[1]) == ["rod390"]
    assert codes(joined([panel(hole("bottom", (4, 0, 6), "1/4")), shelf], joint("shelf", "panel", "dado"))[1]) == []


def test_screws_of_one_joint_hit_dowels_of_the_same():
    side = board("side", (0, T), (0, 30), (0, 24))
    shelf = board("shelf", (T, 20), (10, 10 + T), (0, 1), thick="high")
    assert codes(joined([side, shelf], joint("shelf", "side", "screws", "dowels"))[1]) == ["rod390"]


# --- a mirrored job ----------------------------------------------------------------------------------------------

sizes = st.integers(48, 160).map(lambda n: Fraction(n, 4))


@settings(max_examples=25, deadline=None)
@given(sizes, sizes, st.integers(8, 60).map(lambda n: Fraction(n, 4)), st.integers(1, 3), st.integers(1, 12))
def test_a_mirrored_job_gives_mirrored_holes(wide, high, deep, shelves, every):
    boards = carcase(wide, high, deep, "3/4", "1/4", shelves)
    shelf = shelf_names(shelves)
    joints = [
        joint("bottom", ["left", "right"], method("pockets", on="bottom", every=every), "dowels"),
        joint(shelf, ["left", "right"], method("screws", every=every)),
        joint("back", ["left", "right"], method("rabbet", depth="3/8"), "screws"),
    ]
    one, told = joined(boards, *joints)
    other, also = joined([mirrored(b) for b in boards], *joints)
    assert codes(told) == codes(also)
    for path, b in one.boards.items():
        turned = {(bore.kind, -bore.at[0], *bore.at[1:], bore.diameter, bore.depth) for bore in b.bores}
        assert turned == {(bore.kind, *bore.at, bore.diameter, bore.depth) for bore in other.boards[path].bores}
        assert b.box.size(Axis.WIDE) == other.boards[path].box.size(Axis.WIDE)


# --- measures -----------------------------------------------------------------------------------------------------


def test_what_fails_at_one_end_of_a_measure_names_its_value():
    side = board("side", (0, T), (0, 30), (0, 24))

    def at(bed):
        shelf = board("shelf", (T, 20), (bed, bed + frac("3/4")), (0, 12))
        other = board("other", (T, 20), ("9", "9-3/4"), (0, 12))
        joins = (joint("shelf", "side", "glue"), joint("other", "side", "glue"))
        return scene([side, shelf, other], *joins, taken={"bed": frac(bed)})

    checked = join(placed(at(2), at(9), measures=["bed"]))
    assert codes(checked.diagnostics) == ["rod350"]
    assert "(when bed = 9 in)" in checked.diagnostics[0].message
    assert codes(join(placed(at(2), at(5), measures=["bed"])).diagnostics) == []
    both = join(placed(at(9), at(9), measures=["bed"]))
    assert "when" not in both.diagnostics[0].message
