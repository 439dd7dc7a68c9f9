"""Boards that hang on a measure: formulas, ranges, and the mark they keep once it is taken."""

from __future__ import annotations

from fractions import Fraction as F

from handmade import FREE, board, bore, box, loose, scene, scenes_of, trace

from setout.piece import Register, Size, piece
from setout.piece.model import Entry
from setout.values import Trace

BED = frozenset({"bed"})


def deck(values, cut=30):
    """A deck whose length and whose middle hole hang on the measure."""
    long = cut - values["bed"]
    middle = bore("front", (long / 2, 3, 0))
    return scene([board("deck", box(long, 11, F(23, 32)), held=(BED, FREE, FREE), bores=[middle])])


def given(entries):
    return [(e.mark, e.kind) for e in entries if e.kind != "letter"]


def only(made, register=()):
    value = piece(made, Register(tuple(register))).value
    return value.pieces[0], value


def test_a_held_size_has_its_range_and_its_formula():
    made, _ = only(scenes_of(deck, {"bed": (2, 5)}))
    assert made.held and made.measures == ("bed",)
    assert made.length == Size(F(25), F(28), (F(30), (("bed", F(-1)),)))
    assert made.width == Size(F(11))
    assert "hole -t at l (15 - 1/2 bed) w 3" in made.shape


def test_the_key_does_not_hang_on_the_expected_range():
    shapes = {only(scenes_of(deck, {"bed": ends}))[0].shape for ends in ((2, 5), (1, 9), (F(1, 3), F(2, 3)), (3, 3))}
    assert len(shapes) == 2  # (3, 3) says nothing about the slope: its own key
    assert len({only(scenes_of(deck, {"bed": ends}))[0].shape for ends in ((2, 5), (1, 9))}) == 1


def test_two_measures_give_one_formula_checked_at_the_far_corner():
    def make(v):
        return scene([board("d", box(40 - v["bed"] + 2 * v["gap"], 11, F(23, 32)), held=(BED | {"gap"}, FREE, FREE))])

    made, _ = only(scenes_of(make, {"bed": (2, 5), "gap": (1, 2)}))
    assert made.length.formula == (F(40), (("bed", F(-1)), ("gap", F(2))))
    assert (made.length.amount, made.length.high) == (37, 42)  # bed high with gap low; bed low with gap high

    def product(v):
        return scene([board("d", box(40 - v["bed"] * v["gap"], 11, F(23, 32)), held=(BED | {"gap"}, FREE, FREE))])

    made, _ = only(scenes_of(product, {"bed": (2, 5), "gap": (1, 2)}))
    assert made.length.held and made.length.formula is None and made.measures == ("bed", "gap")


def test_a_size_that_bends_has_no_formula_though_two_scenes_would_fit_one():
    def make(v):
        size = max(v["bed"], F(3))
        bed = Trace("name", "bed", v["bed"], 1)
        why = (Trace("operation", "max", size, 1, (bed, trace(3))), trace(11), trace(F(23, 32)))
        return scene([board("d", box(size, 11, F(23, 32)), held=(BED, FREE, FREE), why=why)])

    made, _ = only(scenes_of(make, {"bed": (2, 5)}))
    assert made.held and made.length.formula is None
    assert made.shape.startswith("1 varies bed: sheet ply ? x 11 x 23/32 grain length | ")


def test_machining_that_hangs_on_a_measure_holds_the_board():
    def make(v):
        return scene([board("side", box(30, 11, F(23, 32)), bores=[bore("front", (v["bed"], 3, 0))])])

    made, _ = only(scenes_of(make, {"bed": (2, 5)}))
    assert made.measures == ("bed",) and not made.length.held
    assert "at l bed" not in made.shape and "(0 + bed)" in made.shape


def test_a_board_that_only_moves_is_not_held():
    def make(v):
        return scene([board("shelf", box(30, 11, F(23, 32), at=(0, v["bed"], 0)))], [loose("spare", 9, 4)])

    _, value = only(scenes_of(make, {"bed": (2, 5)}))
    assert not any(p.held for p in value.pieces)


def test_a_held_piece_keeps_its_mark_once_measured_and_gets_a_new_one_when_measured_anew():
    measures = {"bed": (2, 5)}
    _, held = only(scenes_of(deck, measures))
    lines = held.new_entries
    assert given(lines) == [("A1", "held")]

    _, first = only(scenes_of(deck, measures, {"bed": 3}), lines)
    assert given(first.new_entries) == [("A1", "cut")]
    lines += first.new_entries

    _, again = only(scenes_of(deck, measures, {"bed": 3}), lines)
    assert again.mark_of == {"deck": "A1"} and not again.new_entries

    _, anew = only(scenes_of(deck, measures, {"bed": 4}), lines)
    assert given(anew.new_entries) == [("A2", "cut")]


def test_measures_taken_one_after_the_other_keep_the_mark():
    def make(v):
        held = frozenset({"bed", "gap"})
        return scene([board("d", box(40 - v["bed"] - v["gap"], 11, F(23, 32)), held=(held, FREE, FREE))])

    measures, lines = {"bed": (2, 5), "gap": (1, 2)}, ()
    for taken in ({}, {"bed": 3}, {"bed": 3, "gap": 1}):
        made, value = only(scenes_of(make, measures, taken), lines)
        assert made.mark == "A1"
        lines += value.new_entries
    assert given(lines) == [("A1", "held"), ("A1", "held"), ("A1", "cut")]


def test_a_board_whose_hole_count_varies_keeps_its_mark_by_its_sizes():
    def make(v):
        long = 30 - v["bed"]
        bores = [bore("front", (F(6 * i + 3), 3, 0), source="c") for i in range(int(long // 6))]
        return scene([board("deck", box(long, 11, F(23, 32)), held=(BED, FREE, FREE), bores=bores)])

    held, value = only(scenes_of(make, {"bed": (2, 13)}))
    assert held.shape.startswith("1 varies bed: sheet ply (30 - bed) x 11 x 23/32")
    cut, _ = only(scenes_of(make, {"bed": (2, 13)}, {"bed": 7}), value.new_entries)
    assert (cut.mark, cut.held) == ("A1", False)


def test_a_held_line_of_another_measure_lends_no_mark():
    size = "sheet ply 23 x 11 x 23/32 grain length"
    lines = (Entry("A1", "held", f"1 varies bed: {size} | {size}"),)

    def make(v):
        return scene([board("x", box(23, 11, F(23, 32)))])

    made, _ = only(scenes_of(make, {"gap": (1, 2)}, {"gap": 1}), lines)
    assert made.mark != "A1"
