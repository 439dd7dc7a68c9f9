"""Dados, grooves, rabbets. Numbers are worked by hand in the comments."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise, product

from carcase import carcase, shelf_names
from hypothesis import given, settings
from hypothesis import strategies as st
from joinscenes import board, codes, frac, joined, joint, method

from setout.geometry import Box

T = Fraction(23, 32)
SIDES = ["left", "right"]


def bookcase(shelves: int = 2, depth="1/4", gap=None):
    boards = carcase(32, 48, "11-1/4", "23/32", "7/32", shelves)
    joints = [
        joint(["bottom", shelf_names(shelves)], SIDES, method("dado", depth=depth, gap=gap), "glue"),
        joint("back", SIDES, method("rabbet", depth="3/8"), method("brads", every=6)),
        joint("back", ["bottom", shelf_names(shelves)], method("brads", every=6)),
    ]
    return joined(boards, *joints)


def test_a_shelf_grows_by_both_dados():
    scene, told = bookcase()
    assert codes(told, notes=True) == []
    # 32 - 2 x 23/32 = 30-9/16 clear; + 2 x 1/4 = 31-1/16
    assert scene.boards["shelf.1"].box.size(0) == frac("31-1/16")
    # 30-9/16 + 2 x 3/8 = 31-5/16
    assert scene.boards["back"].box.size(0) == frac("31-5/16")
    assert scene.boards["shelf.1"].box.sizes[1:] == (T, frac("11-1/4") - frac("7/32"))


def test_the_cavity_runs_right_through_and_is_as_wide_as_the_shelf():
    scene, _ = bookcase()
    dado = scene.boards["left"].cuts[0]
    assert (dado.kind, dado.face.word, dado.for_board, dado.run.word) == ("dado", "right", "bottom", "deep")
    assert dado.box == Box((T - frac("1/4"), Fraction(3), Fraction(0)), (T, 3 + T, frac("11-1/4")))
    assert (dado.depth, dado.width) == (frac("1/4"), T)
    rabbet = scene.boards["right"].cuts[-1]
    # the rabbet takes the back's 7/32 off the rear, 3/8 in from the face, the whole height
    assert rabbet.box == Box((32 - T, 0, frac("11-1/32")), (32 - T + frac("3/8"), 48, frac("11-1/4")))


def test_a_gap_shortens_the_tongue_and_not_the_cavity():
    scene, told = bookcase(gap="1/32")
    # 30-9/16 + 2 x (1/4 - 1/32) = 31
    assert scene.boards["shelf.1"].box.size(0) == 31 and not codes(told)
    assert scene.boards["left"].cuts[0].depth == frac("1/4")


def test_a_housing_deeper_than_usual_is_told_to_the_64th_and_joined_all_the_same():
    def glued(depth):
        scene, told = bookcase(depth=depth)
        return sum(f.area for f in scene.fastenings if f.kind == "glue"), told

    usual, told = glued("23/64")
    deep, deep_told = glued("3/8")
    assert not codes(told) and set(codes(deep_told)) == {"rod365"}
    said = deep_told[0]
    assert "is 3/8 in deep in 23/32 in" in said.message and "keep it to 23/64 in" in said.help
    # two cheeks more of 1/64 at each of the six ends, as long as the boards are deep
    assert deep - usual == 6 * 2 * frac("1/64") * (frac("11-1/4") - frac("7/32"))


def test_depths_left_unsaid_follow_practice():
    boards = carcase(32, 48, 12, "23/32", "7/32", 1)
    scene, _ = joined(boards, joint(shelf_names(1), SIDES, "dado"))
    assert scene.boards["left"].cuts[0].depth == frac("1/4")
    scene, told = joined(carcase(32, 48, 12, "3/8", "7/32", 1), joint(shelf_names(1), SIDES, "dado"))
    assert scene.boards["left"].cuts[0].depth == frac("3/16") and not codes(told)  # half of 3/8


def test_a_stopped_dado_ends_short_and_the_tongue_is_notched():
    boards = carcase(32, 48, 12, "23/32", "7/32", 1)
    scene, told = joined(boards, joint(shelf_names(1), SIDES, method("dado", depth="1/4", stopped=[("front", "1/2")])))
    assert not codes(told)
    cut = scene.boards["left"].cuts[0]
    assert (cut.box.lo[2], cut.box.hi[2]) == (frac("1/2"), 12)
    corners = [f.box for f in scene.boards["shelf.1"].features]
    assert {(b.lo[0], b.hi[0]) for b in corners} == {(T - frac("1/4"), T), (32 - T, 32 - T + frac("1/4"))}
    assert all((b.lo[2], b.hi[2]) == (0, frac("1/2")) for b in corners)


# --- volumes: what is cut away is what enters ------------------------------------------------------------


def volume(boxes: list[Box], gone: list[Box]) -> Fraction:
    """Volume of the union of `boxes` outside `gone`, by cutting space at every coordinate."""
    cuts = [sorted({e for b in (*boxes, *gone) for e in (b.lo[k], b.hi[k])}) for k in range(3)]
    total = Fraction(0)
    for cell in product(*(pairwise(c) for c in cuts)):
        middle = [(a + b) / 2 for a, b in cell]
        if _inside(boxes, middle) and not _inside(gone, middle):
            total += (cell[0][1] - cell[0][0]) * (cell[1][1] - cell[1][0]) * (cell[2][1] - cell[2][0])
    return total


def _inside(boxes: list[Box], point) -> bool:
    return any(all(b.lo[k] < point[k] < b.hi[k] for k in range(3)) for b in boxes)


parts = st.integers(1, 8).map(lambda n: Fraction(n, 16))


@settings(max_examples=25, deadline=None)
@given(parts, parts, st.integers(0, 2), st.fractions(0, 1, max_denominator=4), st.booleans())
def test_wood_is_neither_lost_nor_doubled(depth, rabbet, shelves, slack, stopped):
    """Boards less their cuts fill the union of the boards, but for the air under the tongues and past them."""
    boards = carcase(20, 40, 10, "23/32", "1/4", shelves)
    gap = depth * slack / 2
    stops = [("front", "1/2")] if stopped else []
    dado = method("dado", depth=depth, gap=gap, stopped=stops)
    back = method("rabbet", depth=rabbet)
    scene, _ = joined(boards, joint(["bottom", shelf_names(shelves)], SIDES, dado), joint("back", SIDES, back))
    if depth >= Fraction(23, 32):
        return
    solids, apart = [], Fraction(0)
    for b in scene.boards.values():
        gone = [cut.box for cut in b.cuts] + [f.box for f in b.features]
        solids.append((b.box, gone))
        apart += volume([b.box], gone)
    cuts = [sorted({e for b, gone in solids for box in (b, *gone) for e in (box.lo[k], box.hi[k])}) for k in range(3)]
    together = Fraction(0)
    for cell in product(*(pairwise(c) for c in cuts)):
        middle = [(a + b) / 2 for a, b in cell]
        holders = [1 for box, gone in solids if _inside([box], middle) and not _inside(gone, middle)]
        assert len(holders) <= 1
        together += bool(holders) * (cell[0][1] - cell[0][0]) * (cell[1][1] - cell[1][0]) * (cell[2][1] - cell[2][0])
    assert apart == together
    if not gap and not stopped:
        # the tongues stand in the cavities: nothing of a side's box is left empty but where a cut runs past its board
        front = frac("9-3/4")
        past = 2 * (shelves + 1) * depth * T * (10 - front) + 2 * rabbet * 3 * frac("1/4")
        # the back fills where a dado crosses its rabbet
        shared = 2 * (shelves + 1) * min(depth, rabbet) * T * frac("1/4")
        whole = volume([b.board.box for b in scene.boards.values()], [])
        assert together == whole - past + shared


# --- mistakes ------------------------------------------------------------------------------------------------

SIDE = board("side", (0, "3/4"), (0, 30), (0, 12))


def shelf(low, into=0, name="shelf", side=1):
    lo = frac("3/4") - frac(into)
    return board(name, (lo, 20), (low, frac(low) + frac("3/4")), (0, 12))


def told(boards, *joints):
    return codes(joined(boards, *joints)[1])


def test_a_span_drawn_into_the_dado_is_told_as_such():
    assert told([SIDE, shelf(10, into="1/4")], joint("shelf", "side", "dado", "glue", "screws")) == ["rod360"]


def test_only_an_edge_can_be_let_in():
    assert told([SIDE, shelf(10)], joint("side", "shelf", "dado")) == ["rod361"]


def test_rabbets_lie_on_an_edge_and_dados_off_it():
    assert told([SIDE, shelf(10)], joint("shelf", "side", "rabbet")) == ["rod362"]
    assert told([SIDE, shelf(0)], joint("shelf", "side", "dado")) == ["rod363"]
    assert told([SIDE, shelf(0)], joint("shelf", "side", "rabbet")) == []
    thin = board("thin", (0, "3/4"), (0, "3/4"), (0, 12), thick="wide")
    assert told([thin, shelf(0)], joint("shelf", "thin", "rabbet")) == ["rod364"]


def test_deep_housings_are_warned_of_and_through_ones_refused():
    assert told([SIDE, shelf(10)], joint("shelf", "side", method("dado", depth="1/2"))) == ["rod365"]
    assert told([SIDE, shelf(10)], joint("shelf", "side", method("dado", depth="3/4"))) == ["rod364"]
    assert told([SIDE, shelf(10)], joint("shelf", "side", method("dado", depth="1/4", gap="1/4"))) == ["rod369"]


def test_housings_from_both_sides_must_not_meet():
    other = board("other", (-20, 0), (10, "10-3/4"), (0, 12))
    for depth, code in (("3/8", ["rod366"]), ("11/32", ["rod367"]), ("1/4", [])):
        assert told([SIDE, shelf(10), other], joint(["shelf", "other"], "side", method("dado", depth=depth))) == code


def test_a_tongue_that_runs_into_another_part_is_an_error():
    # the shelf also ends against a rail set flush in the side's notch: the tongue would run into the rail
    rail = board("rail", ("1/4", "3/4"), (10, 12), (12, 14))
    long = board("shelf", ("3/4", 20), (10, "10-3/4"), (0, 14))
    assert told([SIDE, rail, long], joint("shelf", "side", "dado"), joint("shelf", "rail", "glue")) == ["rod368"]


def test_one_edge_grows_by_one_depth():
    low = board("low", (0, "3/4"), (0, 30), (12, 24))
    long = board("shelf", ("3/4", 20), (10, "10-3/4"), (0, 24))
    joints = [joint("shelf", "side", method("dado", depth="1/4")), joint("shelf", "low", method("dado", depth="3/8"))]
    assert "rod370" in told([SIDE, low, long], *joints)


def test_a_dado_stops_only_along_its_run():
    assert told([SIDE, shelf(10)], joint("shelf", "side", method("dado", stopped=[("top", 1)]))) == ["rod371"]
    assert told([SIDE, shelf(10)], joint("shelf", "side", method("dado", stopped=[("front", 12)]))) == ["rod371"]
