"""Pieces laid flat."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

import drawing_samples as s
import pytest
from drawing_reading import clashes, lines, sizes, words
from hypothesis import given, settings
from hypothesis import strategies as st

from setout.drawing import Landed, piece
from setout.geometry import face_named


def drawn(board, width=520, height=320, style=s.INCH, fastenings=(), measures=(), landed=()):
    return piece(s.piece_of(board, measures=measures), style, width, height, fastenings, landed)


def samples():
    return {"side": s.bookcase().boards["bookcase.left_side"], "pocketed": s.pocketed(), "notched": s.notched(),
            "stick": s.stick(), "plain": s.bookcase().boards["bookcase.kick"]}  # fmt: skip


@pytest.mark.parametrize("name", samples())
def test_fits_its_width_is_legible_and_nothing_overlaps(name):
    board = samples()[name]
    for style in (s.INCH, s.MM):
        drawing = drawn(board, style=style)
        assert drawing.width <= 520 and drawing.height <= 320 * (1.75 if name == "pocketed" else 1)
        assert min(sizes(drawing)) >= 9
        assert not clashes(drawing)
        assert drawing == drawn(board, style=style)


def test_running_dimensions_start_at_the_named_end():
    said = words(drawn(samples()["side"]))
    assert "back edge · cuts and notches, from the bottom edge" in said
    # near sides of the dados with their letter, the end of the toe notch (at a dado's side), and the whole length
    assert {"0", "3 a b", "13 a", "24 a", "35 a", "47-9/32 a", "48"} <= set(said)
    assert {"11-1/32 a b", "11-1/4", "2"} <= set(said)


def test_the_key_counts_and_sizes_the_work():
    said = words(drawn(samples()["side"]))
    for line in (
        ["5 ×", "dado for bottom panel, shelf and top panel", "23/32", "1/4"],
        ["1 ×", "rabbet for back panel"],
    ):
        assert set(line) <= set(said)


def test_both_faces_are_shown_when_both_are_worked():
    drawing = drawn(s.pocketed(), fastenings=[s.pocket_screws("j/base.bottom_panel/base.side")])
    said = " ".join(words(drawing))
    assert "Seen from below" in said and "Seen from above" in said
    assert "pocket screw 1-1/4 in, drill stop 3/4" in said
    assert "pocket hole, toward left and right edges" in said
    assert "dowel hole, in front edge, centred" in said
    assert "11/64" in said  # a drill's size is not rounded to the mark of 1/32


def test_where_others_land_is_outlined_within_the_board():
    """A shelf all across is two lines, a rail at the corner its two inner sides; edges are drawn already."""
    board = s.joined(s.board("a.side", s.box(0, 1, 0, 40, 0, 12), s.W, grain=s.H))
    shelf = Landed(face_named("right"), s.box(1, 1, 10, 11, 0, 12), "C4")
    rail = Landed(face_named("right"), s.box(1, 1, 39, 40, 0, 4), "B2")
    other = Landed(face_named("left"), s.box(0, 0, 20, 21, 0, 12), "C9")
    drawing = drawn(board, landed=[shelf, rail, other])
    assert len(lines(drawing, "0.5 7 ")) == 4
    assert {"C4", "B2"} <= set(words(drawing)) and "C9" not in words(drawing)
    assert not clashes(drawing)


def test_the_good_face_is_named():
    assert any("good face is the other one (left)" in w for w in words(drawn(samples()["side"])))
    front = s.joined(s.board("a.door", s.box(0, 12, 0, 20, 0, 1), s.D, show="front"))
    assert any("This is the good face" in w for w in words(drawn(front)))


def test_a_held_size_stands_in_brackets():
    deck = s.joined(s.board("a.deck", s.box(0, 20, 0, 1, 0, 30), s.H, held=[s.D]))
    said = words(drawn(deck, measures=("bed_height",)))
    assert "(30)" in said and "20" in said
    assert any("HELD: numbers in brackets wait for bed height" in w for w in said)


def test_mitres_are_cut_off_the_outline_and_named():
    drawing = drawn(s.stick())
    assert "45° mitre, long on the front" in words(drawing)
    slanting = [d for d in lines(drawing, "1.4") if d[0] != d[2] and d[1] != d[3]]
    assert len(slanting) == 1


def test_too_many_even_holes_are_told_by_their_spacing():
    holes = [
        s.bore("hole", "right", (1, F(2) + F(i) * F(160, 127), 2), "13/64", "3/8") for i in range(60)
    ]  # 32 mm apart
    board = s.joined(s.board("a.side", s.box(0, 1, 0, 84, 0, 22), s.W, grain=s.H), bores=holes)
    assert "every 32" in words(drawn(board, style=s.MM))
    assert "every 32 mm" in words(drawn(board))  # 1.26 in is no multiple of 1/32: as a step it would add up
    uneven = [replace(hole, at=(hole.at[0], hole.at[1] * F(100, 127), hole.at[2])) for hole in holes]
    assert "60 evenly spaced" in words(drawn(replace(board, bores=tuple(uneven))))  # a step in neither unit


def test_numbers_say_which_kind_of_hole_they_lead_to():
    """Two rows of pin holes 32 mm apart, with the screws of slides between them: each with what it is for."""
    pins = [(F(40) + F(i) * F(160, 127), z) for i in range(12) for z in (2, 14)]
    slides = [(y, z) for y in (5, 14, 23) for z in (3, 9, 15)]
    holes = [s.bore("hardware", "right", (1, y, z), "13/64", "3/8", source="pin") for y, z in pins]
    holes += [s.bore("hardware", "right", (1, y, z), "7/64", "3/8", source="slide") for y, z in slides]
    board = s.joined(s.board("a.side", s.box(0, 1, 0, 74, 0, 18), s.W, grain=s.H), bores=holes)
    titles = {"pin": "shelf pin, 5 mm", "slide": "side-mount slides, 16 in"}
    drawing = piece(s.piece_of(board), s.INCH, 490, 600, titles=titles)
    said = words(drawing)
    assert {"5 b", "14 b", "40 a", "12 a every 32 mm", "2 a", "3 b"} <= set(said)
    assert "hole for shelf pin, 5 mm, 2 rows of 12, 32 mm apart" in said and "hole for side-mount slides, 16 in" in said
    assert not clashes(drawing)
    narrow = words(piece(s.piece_of(board), s.INCH, 220, 600, titles=titles))
    assert "hole for shelf pin, 5 mm, 2 rows of 12, 32 mm apart" in " ".join(narrow)  # wrapped, not cut


def test_too_many_uneven_holes_are_listed():
    places = [F(2) + F(i * i, 60) + F(i, 2) for i in range(56)]
    holes = [s.bore("hole", "right", (1, at, 2), "13/64", "3/8") for at in places]
    board = s.joined(s.board("a.side", s.box(0, 1, 0, 84, 0, 22), s.W, grain=s.H), bores=holes)
    drawing = drawn(board)
    assert any(w.startswith("front edge · holes, from the bottom edge: 2, ≈2-17/32") for w in words(drawing))
    assert not clashes(drawing)


def test_a_loose_piece_has_no_drawing():
    assert piece(replace(s.piece_of(s.stick()), exemplar=None), s.INCH, 500, 300) is None


def test_a_mirrored_pair_reads_alike_from_the_same_ends():
    boards = s.bookcase().boards
    left, right = (words(drawn(boards[f"bookcase.{n}_side"])) for n in ("left", "right"))
    assert {w for w in left if w[0].isdigit()} - {"2"} == {w for w in right if w[0].isdigit()}  # but for the toe notch


eighths = st.integers(1, 8 * 60).map(lambda n: F(n, 8))


@settings(max_examples=60, deadline=None)
@given(eighths, eighths, st.lists(st.tuples(st.floats(0, 1), st.floats(0, 1), st.integers(0, 5)), max_size=14))
def test_whatever_the_holes_no_words_overlap(wide, high, places):
    kinds = [("hole", "front", None), ("pilot", "back", None), ("pocket", "front", "left"), ("pocket", "front", "top"),
             ("dowel", "top", None), ("dowel", "right", None)]  # fmt: skip
    bores = []
    for u, v, n in places:
        kind, face, toward = kinds[n]
        x, y = (F(int(t * 64), 64) * size for t, size in ((u, wide), (v, high)))
        x = {"left": F(0)}.get(toward, {"right": wide}.get(face, x))
        y = {"top": high}.get(toward or face, y)
        bores.append(s.bore(kind, face, (x, y, {"front": 0, "back": 1}.get(face, F(1, 2))), "1/4", "3/8", toward))
    board = s.joined(s.board("a.panel", s.box(0, wide, 0, high, 0, 1), s.D, grain=s.W), bores=bores)
    strips = (sorted((F(int(u * 64), 64) * wide, F(int(v * 64), 64) * wide)) for u, v, _ in places)
    landed = [Landed(face_named("front"), s.box(a, b, 0, high, 0, 0), f"C{n}, D{n}") for n, (a, b) in enumerate(strips)]
    drawing = drawn(board, height=420, landed=landed)
    assert drawing.width <= 520
    assert not clashes(drawing)
