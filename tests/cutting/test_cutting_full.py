"""Boards without a corner to spare: what was cut from a board goes back on it, and what can't is known not to.

The boards are cut up at random here; what no straight cuts make is a pinwheel of five (common practice, no source).
"""

from __future__ import annotations

import random
from fractions import Fraction

import pytest
from checker import cut_apart, layout_faults
from cutting_jobs import PLY, loose, plan_of

from setout.plan.cutting.search import Bin, Budget, Item, leftovers, solve

PINWHEEL = [(3, 2), (2, 3), (3, 2), (2, 3), (1, 1)]  # on a board of 5 x 5


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("size", [(200, 200), (1536, 768)])
@pytest.mark.parametrize("turnable", [True, False])
def test_thirty_pieces_go_back_on_the_board_they_were_cut_from(size, turnable, seed):
    items = [Item(*piece, 1, turnable) for piece in cut_up(size, 30, random.Random(seed))]
    assert pieces_on(items, [Bin(*size, 1)], Budget(work=600_000), boards=1) == 30


@pytest.mark.parametrize("seed", range(3))
def test_pieces_of_several_boards_go_back_on_as_many(seed):
    rng = random.Random(seed)
    items = [Item(*piece, 1, True) for _ in range(3) for piece in cut_up((200, 150), 12, rng)]
    assert pieces_on(items, [Bin(200, 150, 1)], Budget(work=600_000), boards=3) == 36


@pytest.mark.parametrize("copies", [1, None])
def test_small_pieces_of_many_kinds_fill_a_board_strip_by_strip(copies):
    """Too many sides agree here for every block to be listed."""
    items = [Item(*piece, 1, True) for piece in cut_up((60, 60), 120, random.Random(1))]
    assert pieces_on(items, [Bin(60, 60, 1, copies)], Budget(work=2_000_000), boards=1) == 120


def test_a_little_waste_is_no_hindrance():
    pieces = sorted(cut_up((60, 60), 100, random.Random(2)), key=lambda piece: piece[0] * piece[1])
    items = [Item(*piece, 1, True) for piece in pieces[1:]]
    assert pieces_on(items, [Bin(60, 60, 1)], Budget(work=2_000_000), boards=1) == 99


@pytest.mark.parametrize("scale", [1, 7])
def test_what_straight_cuts_cannot_make_is_known_at_once(scale):
    items = [Item(w * scale, h * scale, 1, True) for w, h in PINWHEEL]
    layout = solve(items, [Bin(5 * scale, 5 * scale, 1)], Budget(work=600_000))
    assert (layout.bound.bins, len(layout.used), layout.finished) == (2, 2, True)
    assert layout.work < 200_000


@pytest.mark.parametrize("seed", range(2))
def test_a_sheet_sawn_up_with_kerf_is_one_sheet_again(seed):
    """On paper and past the independent checker, the kerf of an eighth counted beyond every piece."""
    eighths = cut_up((96 * 8 + 1, 48 * 8 + 1), 25, random.Random(seed), least=9)
    parts = [(Fraction(wide - 1, 8), Fraction(high - 1, 8), 1, "any") for wide, high in eighths]
    made = plan_of(f"{PLY}\npractice {{ edge_trim 0 }}\n{loose(parts)}", Budget(work=100_000), taste=None)
    assert (made.stocks[0].bought, made.stocks[0].bound) == (1, 1)


def test_the_same_seed_gives_the_same_plan():
    items = [Item(*piece, 1, True) for piece in cut_up((60, 60), 90, random.Random(3))]
    one, other = (solve(items, [Bin(60, 60, 1)], Budget(work=400_000)) for _ in range(2))
    assert one == other


def cut_up(size: tuple[int, int], many: int, rng: random.Random, least: int = 1) -> list[tuple[int, int]]:
    """So many pieces by straight cuts, large ones cut before small ones, none narrower than `least`."""
    pieces = [size]
    while len(pieces) < many:
        pieces.sort(key=lambda piece: piece[0] * piece[1])
        wide, high = pieces.pop()
        if rng.random() < wide / (wide + high):
            at = rng.randint(least, wide - least)
            pieces += [(at, high), (wide - at, high)]
        else:
            at = rng.randint(least, high - least)
            pieces += [(wide, at), (wide, high - at)]
    return pieces


def pieces_on(items: list[Item], bins: list[Bin], budget: Budget, boards: int) -> int:
    """How many pieces lie on just these boards; together with what is left over they are all of the area."""
    layout = solve(items, bins, budget)
    assert layout_faults(items, bins, layout) == []
    assert not layout.missing
    assert len(layout.used) == boards
    found = 0
    for used in layout.used:
        pieces = list(cut_apart(used.root, []))
        area = sum(part.width * part.height for part in [*pieces, *leftovers(used.root)])
        assert area == used.root.width * used.root.height
        found += len(pieces)
    return found
