"""A turned assembly is described as it stands square before the reader."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from sample import plan

from setout.geometry import IDENTITY, Axis, Motion, face_named
from setout.write.facts.turning import is_turned, squared, turned_board

# a quarter turn clockwise from above: right goes to the front, back to the right
QUARTER = Motion((2, 1, 0), (-1, 1, 1), (F(5), F(0), F(7)))
MIRROR = Motion((0, 1, 2), (-1, 1, 1), (F(9), F(0), F(0)))


@pytest.mark.parametrize("motion", [IDENTITY, QUARTER, QUARTER.after(QUARTER)])
def test_squaring_undoes_a_turn(motion):
    assert squared(motion).after(motion) == IDENTITY
    assert is_turned(motion) == (motion != IDENTITY)


def test_a_mirrored_copy_stays_mirrored():
    both = QUARTER.after(MIRROR)
    assert not squared(both).reflects
    assert squared(both).after(both).face(face_named("left")) == face_named("right")
    assert squared(both).after(both).face(face_named("front")) == face_named("front")


def test_a_board_turned_and_turned_back_is_the_same():
    for board in plan().pieces.joined.drawn.boards.values():
        there = turned_board(board, QUARTER)
        assert turned_board(there, squared(QUARTER)) == board
        assert there.box.size(Axis.DEEP) == board.box.size(Axis.WIDE)
