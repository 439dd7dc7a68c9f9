"""Two boards are one piece exactly when a turn maps one to the other: judged against trying out every turn."""

from __future__ import annotations

from fractions import Fraction as F
from itertools import permutations, product

import pytest
from handmade import LATH, PLY, POST, board, bore, box, dado, joined, loose, mitre, moved, notch, scene
from hypothesis import given, settings
from hypothesis import strategies as st

from setout.geometry import ALL_FACES, Axis, Face, Motion
from setout.piece import Register, flat, piece
from setout.piece.outline import outline
from setout.piece.shape import shape

ALL = [
    Motion(to, signs, (F(7), F(-2), F(1, 3)))  # type: ignore[arg-type]
    for to in permutations(range(3))
    for signs in product((1, -1), repeat=3)
]
TURNS = [m for m in ALL if not m.reflects]
MIRRORS = [m for m in ALL if m.reflects]


def text(made) -> str:
    return shape(outline(made)).text


def left_side():
    """A chiral board: dado in one face, toe notch at one corner."""
    return board(
        "side",
        box(30, 11, F(23, 32)),
        cuts=[dado("back", box(F(23, 32), 11, F(1, 4), at=(4, 0, F(15, 32))))],
        features=[notch(box(3, 3, F(23, 32)))],
    )


@pytest.mark.parametrize("turn", TURNS)
def test_every_turn_of_a_board_is_the_same_piece(turn):
    for made in (left_side(), mitred(), drilled()):
        assert text(moved(made, turn)) == text(made)


@pytest.mark.parametrize("mirror", MIRRORS)
def test_a_mirror_image_of_a_chiral_board_is_another_piece(mirror):
    for made in (left_side(), drilled()):
        assert text(moved(made, mirror)) != text(made)


def mitred():
    return board("frame", box(20, F(3, 2), F(3, 4)), stock=LATH, run=Axis.WIDE, grain=None,
                 features=[mitre("left", "bottom"), mitre("right", "bottom")])  # fmt: skip


def drilled():
    """Chiral by its pockets and a hole off the middle."""
    face = F(23, 32)
    pocket = bore("back", (2, 11, face), toward="top")
    bores = [pocket, bore("back", (3, 4, face)), bore("front", (9, 4, 0), depth=None)]
    return board("rail", box(20, 11, face), bores=bores, show=Face(Axis.DEEP, -1))


def test_what_tells_pieces_apart():
    plain = board("a", box(30, 11, F(23, 32)))
    others = [
        board("b", box(30, F(177, 16), F(23, 32))),
        board("c", box(30, 11, F(23, 32)), grain=Axis.HIGH),
        board("d", box(30, 11, F(23, 32)), grain="any"),
        board("e", box(30, 11, F(23, 32)), show=Face(Axis.DEEP, 1)),
        board("f", box(30, 11, F(23, 32)), bores=[bore("front", (3, 3, 0))]),
        board("g", box(30, 11, F(23, 32)), bores=[bore("front", (3, 3, 0), diameter=F(1, 4))]),
        board("h", box(30, 11, F(23, 32)), bores=[bore("front", (3, 3, 0), depth=F(1, 4))]),
        board("i", box(30, 11, F(23, 32)), stock=LATH, run=Axis.WIDE),
    ]
    texts = [text(b) for b in (plain, *others)]
    assert len(set(texts)) == len(texts)


def test_names_places_and_fasteners_do_not_count():
    one = board("left.shelf", box(30, 11, F(23, 32)), bores=[bore("front", (3, 3, 0), source="x")])
    other = board("right.tray", box(30, 11, F(23, 32), at=(50, 2, 2)), bores=[bore("front", (53, 5, 2), source="y")])
    assert text(one) == text(other)


def test_a_hole_right_through_has_no_side():
    one = board("a", box(30, 11, F(23, 32)), bores=[bore("front", (3, 3, 0), depth=None)])
    other = board("b", box(30, 11, F(23, 32)), bores=[bore("back", (3, 3, F(23, 32)), depth=None)])
    assert text(one) == text(other)


def test_a_square_post_may_be_turned_about_its_run():
    def post(hole):
        return board("a", box(20, F(3, 2), F(3, 2)), stock=POST, run=Axis.WIDE, grain=None, bores=[hole])

    assert text(post(bore("front", (3, 1, 0)))) == text(post(bore("top", (3, F(3, 2), 1))))


def test_a_loose_board_equals_a_placed_one():
    both = scene([board("shelf", box(30, 11, F(23, 32)))], [loose("spare", 30, 11, 3)])
    made = piece(joined(both), Register(())).value
    assert [(p.mark, p.count, p.boards) for p in made.pieces] == [("A1", 4, ("shelf", "spare"))]
    assert made.pieces[0].exemplar is not None


GRAINS = [("length", 11, 30), ("any", 30, 11), (None, 30, 11)]


@pytest.mark.parametrize("grain, length, width", GRAINS)
def test_length_runs_along_the_grain_else_it_is_the_longer(grain, length, width):
    made = piece(joined(scene(loose=[loose("x", 11, 30, grain=grain)])), Register(())).value.pieces[0]
    assert (made.length.amount, made.width.amount) == (length, width)


@st.composite
def boards(draw):
    """Small boards on a coarse grid, so that symmetries and near misses are frequent."""
    stick = draw(st.booleans())
    sizes = (4, draw(st.sampled_from((2, 4))), 1) if not stick else (4, 1, 1)
    where = box(*sizes)
    spot = st.tuples(*(st.sampled_from((0, F(1, 2) * s, s)) for s in sizes))
    bores, cuts = [], []
    for face in draw(st.lists(st.sampled_from(ALL_FACES), max_size=2)):
        at = list(draw(spot))
        at[face.axis] = where.face(face)
        edge = draw(st.sampled_from([None, *(f for f in ALL_FACES if f.axis != face.axis)]))
        if edge:
            at[edge.axis] = where.face(edge)
        depth = draw(st.sampled_from([None, F(1, 2)]))
        bores.append(bore(face.word, at, depth=depth, toward=edge and edge.word))
    for at in draw(st.lists(spot, max_size=2)):
        low = [min(a, s - F(1, 2)) for a, s in zip(at, sizes)]
        cuts.append(dado("top", box(F(1, 2), F(1, 2), F(1, 2), at=low)))
    ends = draw(st.lists(st.sampled_from(("left", "right")), max_size=1))
    features = [mitre(end, draw(st.sampled_from(("top", "bottom", "front")))) for end in ends]
    grain = None if stick else draw(st.sampled_from((Axis.WIDE, Axis.HIGH, "any", None)))
    return board("x", where, stock=LATH if stick else PLY, run=Axis.WIDE if stick else None, grain=grain,
                 show=draw(st.sampled_from((None, Face(Axis.DEEP, 1), Face(Axis.HIGH, -1)))),
                 bores=bores, cuts=cuts, features=features)  # fmt: skip


def bare_facts(made) -> tuple:
    """All that counts about a board, from its own low corner, written down without choosing any way of laying it."""
    lo = made.box.lo

    def rel(p):
        return tuple(a - b for a, b in zip(p, lo))

    def drilled(b):
        if b.depth is None and b.toward is None:
            return "through", b.face.axis, tuple(x for i, x in enumerate(rel(b.at)) if i != b.face.axis), b.diameter
        return b.face, rel(b.at), b.diameter, b.depth, b.toward

    old = made.board
    square = old.run is not None and len({made.box.size(a) for a in Axis if a != old.run}) == 1
    return (
        old.stock.name, made.box.sizes, None if square else old.thick, old.run, old.grain, old.show,
        frozenset(drilled(b) for b in made.bores),
        frozenset((rel(c.box.lo), rel(c.box.hi)) for c in made.cuts),
        frozenset((f.end, f.long, f.angle) for f in made.features),
    )  # fmt: skip


@settings(max_examples=150, deadline=None)
@given(boards(), boards(), st.sampled_from(ALL))
def test_one_shape_exactly_when_some_turn_maps_one_board_to_the_other(one, another, motion):
    for other in (moved(one, motion), another):
        turned = any(bare_facts(moved(one, turn)) == bare_facts(other) for turn in TURNS)
        assert (text(one) == text(other)) == turned


@settings(max_examples=60, deadline=None)
@given(boards(), st.sampled_from(TURNS))
def test_flat_lays_all_boards_of_a_piece_alike(one, turn):
    other = moved(one, turn)
    lain = [moved(b, flat(b)) for b in (one, other)]
    assert not flat(one).reflects
    assert lain[0].box.lo == (0, 0, 0)
    assert bare_facts(lain[0])[1] == bare_facts(lain[1])[1]
    assert bare_facts(lain[0])[5:] == bare_facts(lain[1])[5:]
