"""How a board lies on the page: which face looks up at the reader, and which of its edges is where.

Page coordinates here are exact inches from the board's left and bottom edge as drawn.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from fractions import Fraction

from setout.geometry import Axis, Box, Face, Vec, face_named
from setout.join.model import Bore, JoinedBoard

SIDES = ("left", "right", "bottom", "top")

# What lies to the right and what at the top of the page when one stands before that face; seen from above, the back is
# at the top.
_STANDING = {
    "front": ("right", "top"),
    "back": ("left", "top"),
    "right": ("back", "top"),
    "left": ("front", "top"),
    "top": ("right", "back"),
    "bottom": ("right", "front"),
}


@dataclass(frozen=True)
class Lie:
    """`face` looks at the reader; the board's faces `right` and `up` are at the page's right and top."""

    box: Box
    face: Face
    right: Face
    up: Face

    @property
    def wide(self) -> Fraction:
        return self.box.size(self.right.axis)

    @property
    def high(self) -> Fraction:
        return self.box.size(self.up.axis)

    def x(self, p: Vec) -> Fraction:
        return self._along(self.right, p)

    def y(self, p: Vec) -> Fraction:
        return self._along(self.up, p)

    def rect(self, box: Box) -> tuple[Fraction, Fraction, Fraction, Fraction]:
        """Left, bottom, right, top of a box, as much of it as lies within the board."""
        xs = sorted((self.x(box.lo), self.x(box.hi)))
        ys = sorted((self.y(box.lo), self.y(box.hi)))
        zero = Fraction(0)
        return max(xs[0], zero), max(ys[0], zero), min(xs[1], self.wide), min(ys[1], self.high)

    def side(self, face: Face) -> str | None:
        """Where on the page an edge of the board is; None for the two broad faces."""
        return self._sides.get(face)

    def edge(self, side: str) -> Face:
        """The board's face at a side of the page."""
        return {s: f for f, s in self._sides.items()}[side]

    def zero(self, across: bool) -> str:
        """The page side that running dimensions start from: the board's left, bottom or front edge."""
        low, high = ("left", "right") if across else ("bottom", "top")
        return low if self.edge(low).sign < 0 else high

    def _along(self, toward: Face, p: Vec) -> Fraction:
        at = p[toward.axis]
        return at - self.box.lo[toward.axis] if toward.sign > 0 else self.box.hi[toward.axis] - at

    @property
    def _sides(self) -> dict[Face, str]:
        return {self.right.opposite: "left", self.right: "right", self.up.opposite: "bottom", self.up: "top"}

    def turned(self) -> Lie:
        """A quarter turn clockwise: what was at the top of the page is at its right."""
        return replace(self, right=self.up, up=self.right.opposite)


def standing(board: JoinedBoard, face: Face) -> Lie:
    """The board as it stands in its place, seen by someone before that face."""
    right, up = _STANDING[face.word]
    return Lie(board.box, face, face_named(right), face_named(up))


def faces_to_draw(board: JoinedBoard) -> tuple[Face, ...]:
    """The face with most work on it first, then the other one if there is any on it too."""
    axis = board.board.thick
    work = Counter(c.face for c in board.cuts) + Counter(b.face for b in board.bores)
    show = board.board.show
    first = max((Face(axis, 1), Face(axis, -1)), key=lambda f: (work[f], f == show, f.sign))
    return (first, first.opposite) if work[first.opposite] else (first,)


def across_edge(bore: Bore, axis: Axis, box: Box, face: Face) -> Fraction:
    """How far into the thickness, from `face`, the centre of a hole in an edge lies."""
    return abs(bore.at[axis] - box.face(face))
