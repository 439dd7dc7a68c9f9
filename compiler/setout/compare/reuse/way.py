"""A fit in inches, and in the words of the assemblies that the boards belong to."""

from __future__ import annotations

from fractions import Fraction

from setout.compare.known import own_word
from setout.compare.model import Task, Trim, Way
from setout.compare.reuse.fitting import Fit
from setout.piece import flat
from setout.piece.model import Piece
from setout.plan.model import Plan

_ALONG = ("length", "width", "thick")


def way(fit: Fit, old: Plan, new: Plan, from_: Piece, to: Piece, unit: int) -> Way:
    axes, signs = fit.lay
    trims = []
    for axis, sign, by in fit.cuts:
        end = (axes[axis], signs[axis] * sign)
        trims.append(Trim(_ALONG[end[0]], _word(old, from_, end), Fraction(by, unit)))
    turned = []
    for axis in range(3):
        was, is_ = _word(old, from_, (axes[axis], signs[axis])), _word(new, to, (axis, 1))
        if was and is_:
            turned.append((was, is_))
    offset = Fraction(fit.offset[0], unit), Fraction(fit.offset[1], unit)
    tasks = tuple(Task(kind, count) for kind, count in fit.tasks)
    return Way(axes, signs, offset, tuple(trims), tasks, tuple(turned), fit.look)


def _word(plan: Plan, piece: Piece, end: tuple[int, int]) -> str:
    """The face in the words of the assembly of the board that is drawn for the piece; "" for loose ones."""
    board = piece.exemplar
    if board is None:
        return ""
    lying = flat(board)
    axis = lying.to.index(end[0])
    motion = plan.pieces.joined.drawn.scene.instances[board.board.owner].motion
    return own_word(motion, (axis, end[1] * lying.sign[axis]))
