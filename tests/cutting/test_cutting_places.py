"""Places on a board: room for what is laid there, priced rightly, and the list of them keeps up with the board."""

from __future__ import annotations

import random

import pytest

from setout.plan.cutting.polish.rows import opened
from setout.plan.cutting.search.places import NOWHERE, look, look_empty, put
from setout.plan.cutting.search.trees import Board, Node, leaves, remove, squares

SIZE = (60, 40)


@pytest.mark.parametrize("seed", range(20))
def test_a_place_has_room_and_is_priced_rightly(seed):
    """The price is exact beside others in a node; elsewhere the leftovers may be parted another way than it counts."""
    rng = random.Random(seed)
    board = Board(0, SIZE)
    for _ in range(40):
        if board.root is not None and rng.random() < 0.3:
            remove(board, rng.choice(leaves(board.root)))
        w, h = rng.randint(2, 25), rng.randint(2, 25)
        before = squares(board)
        gain, place = _best(board, w, h)
        if place is not None:
            node, beside = place[:2]
            exact = isinstance(beside, Node | list) and len(node.kids) > 1
            put(board, 0, place)
            assert _within(board)
            assert not exact or squares(board) - before == gain


@pytest.mark.parametrize("seed", range(20))
def test_a_changed_board_offers_what_one_built_alike_offers(seed):
    rng = random.Random(seed)
    board = Board(0, SIZE)
    for _ in range(40):
        w, h = rng.randint(2, 25), rng.randint(2, 25)
        _, place = _best(board, w, h)
        if place is not None and rng.random() < 0.7:
            put(board, 0, place)
        elif board.root is not None:
            remove(board, rng.choice(leaves(board.root)))
        if board.root is not None:
            assert look(board, 9, 6, NOWHERE, None)[0] == look(board.copy(), 9, 6, NOWHERE, None)[0]


def test_a_row_laid_as_one_and_opened_again_offers_its_own_places():
    board = Board(0, SIZE)
    put(board, -2, (None, None, 30, 10))
    look(board, 9, 6, NOWHERE, None)
    opened(board, {-2: (0, 30, 10, [(0, 15, 10), (0, 15, 8)])})
    assert look(board, 9, 2, NOWHERE, None)[0] == look(board.copy(), 9, 2, NOWHERE, None)[0]


def _best(board: Board, w: int, h: int) -> tuple[int, tuple | None]:
    if board.root is not None:
        return look(board, w, h, NOWHERE, None)
    return look_empty(board, w, h), (None, None, w, h)


def _within(board: Board) -> bool:
    """Nothing reaches beyond the board or its own region."""

    def fits(node: Node, along: int, across: int) -> bool:
        return (
            node.c <= along
            and node.a <= across
            and all(kid.c <= across if kid.kids is None else fits(kid, node.a, kid.a) for kid in node.kids)
        )

    width, height = board.size
    return fits(board.root, *((height, width) if board.root.d else (width, height)))
