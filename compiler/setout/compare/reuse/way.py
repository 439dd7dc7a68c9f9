"""A fit in inches, and in the words of the assemblies that the boards belong to."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from setout.compare.model import Task, Trim, Way
from setout.compare.reuse.fitting import Fit
from setout.geometry import ALL_FACES
from setout.piece import flat
from setout.piece.model import Piece
from setout.piece.outline import End
from setout.plan.model import Plan

_ALONG = ("length", "width", "thick")
Words = Mapping[End, str]
"""The faces of a piece as it lies, in the words of the assembly whose board is drawn for it; none for loose ones."""


def face_words(plan: Plan, piece: Piece) -> Words:
    board = piece.exemplar
    if board is None:
        return {}
    lying = flat(board)
    back = plan.pieces.joined.drawn.scene.instances[board.board.owner].motion.inverse
    return {lying.face(face): back.face(face).word for face in ALL_FACES}


def way(fit: Fit, old: Words, new: Words, kerf: Fraction, unit: int) -> Way:
    """`old`, `new`: the words of the two pieces; `kerf` of the thinnest blade."""
    axes, signs = fit.lay
    trims = []
    for axis, sign, by in fit.cuts:
        end, off = (axes[axis], signs[axis] * sign), Fraction(by, unit)
        trims.append(Trim(_ALONG[end[0]], old.get(end, ""), off, off < kerf))
    ends = (((axes[axis], signs[axis]), (axis, 1)) for axis in range(3))
    turned = tuple((old[was], new[now]) for was, now in ends if old and new)
    offset = Fraction(fit.offset[0], unit), Fraction(fit.offset[1], unit)
    tasks = tuple(Task(kind, count) for kind, count in fit.tasks)
    return Way(axes, signs, offset, tuple(trims), tasks, turned, fit.look)
