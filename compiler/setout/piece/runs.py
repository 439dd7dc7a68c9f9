"""Boards that are cut in sequence, so that the grain runs on from one to the next."""

from __future__ import annotations

from collections.abc import Mapping

from setout.geometry import Axis
from setout.join.model import Joined, JoinedBoard
from setout.piece.model import Member, Run
from setout.piece.outline import outline
from setout.piece.shape import shape


def runs_of(joined: Joined, mark_of: Mapping[str, str]) -> tuple[Run, ...]:
    """The runs in the order placed. What is left of one when only a single member stands is none."""
    found: dict[str, list[JoinedBoard]] = {}
    for board in joined.drawn.boards.values():
        if board.board.sequence is not None:
            found.setdefault(board.board.sequence, []).append(board)
    return tuple(_run(name, boards, mark_of) for name, boards in found.items() if len(boards) > 1)


def _run(name: str, boards: list[JoinedBoard], mark_of: Mapping[str, str]) -> Run:
    axis = _spread(boards[0], boards[1])
    return Run(name, tuple(Member(b.board.path, mark_of[b.board.path], _along(b, axis)) for b in boards))


def _spread(one: JoinedBoard, other: JoinedBoard) -> Axis:
    """The axis along which two members stand apart."""
    return next(axis for axis in Axis if one.board.box.lo[axis] != other.board.box.lo[axis])


def _along(board: JoinedBoard, axis: Axis) -> str:
    """Boards that stand one behind another, as shelves do, lie side by side across their length."""
    return "length" if shape(outline(board)).axes[0] == axis else "width"
