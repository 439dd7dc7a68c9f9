"""Where each cut runs on its source, found by cutting the source up again."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from setout.plan.cutting.model import Cut, SourcePlan


class Rect(NamedTuple):
    """A part of the source, in inches from its origin."""

    x: Fraction
    y: Fraction
    length: Fraction
    width: Fraction


class CutLine(NamedTuple):
    """The middle of a cut's kerf: on axis `cut.across` at `at`, from `start` to `end` on the other."""

    cut: Cut
    at: Fraction
    start: Fraction
    end: Fraction


def replayed(plan: SourcePlan) -> tuple[CutLine, ...]:
    """The cuts as lines, in order. The first is made on the whole source."""
    source = plan.source
    boards: dict[str, Rect] = {}
    whole = Rect(Fraction(0), Fraction(0), source.length, source.width)
    out = []
    for n, cut in enumerate(plan.cuts):
        board = whole if n == 0 else boards.pop(cut.board)
        out.append(_line(cut, board))
        low, high = _halves(cut, board)
        off, rest = (low, high) if cut.reference == "low" else (high, low)
        for falls, rect in ((cut.off, off), (cut.rest, rest)):
            if falls is not None and falls.kind == "board":
                boards[falls.board] = rect
    return tuple(out)


def _line(cut: Cut, board: Rect) -> CutLine:
    middle = cut.at + cut.kerf / 2
    if cut.across == "x":
        return CutLine(cut, middle, board.y, board.y + board.width)
    return CutLine(cut, middle, board.x, board.x + board.length)


def _halves(cut: Cut, board: Rect) -> tuple[Rect, Rect]:
    """What lies before the kerf and what behind it."""
    x, y, length, width = board
    far = cut.at + cut.kerf
    if cut.across == "x":
        return Rect(x, y, cut.at - x, width), Rect(far, y, x + length - far, width)
    return Rect(x, y, length, cut.at - y), Rect(x, far, length, y + width - far)
