"""The trade's own axes: wide runs left to right, high bottom to top, deep front to back."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum
from fractions import Fraction
from functools import cached_property
from operator import gt, lt
from typing import NamedTuple

Vec = tuple[Fraction, Fraction, Fraction]


class Axis(IntEnum):
    WIDE = 0
    HIGH = 1
    DEEP = 2

    @property
    def word(self) -> str:
        return AXIS_WORDS[self]


AXIS_WORDS = ("wide", "high", "deep")
FACE_WORDS = ("left", "right", "bottom", "top", "front", "back")


class Face(NamedTuple):
    """One of the six faces of a box: the low (-1) or high (+1) end of an axis."""

    axis: Axis
    sign: int

    @property
    def word(self) -> str:
        return FACE_WORDS[2 * self.axis + (self.sign > 0)]

    @property
    def opposite(self) -> Face:
        return Face(self.axis, -self.sign)


ALL_FACES = tuple(Face(a, s) for a in Axis for s in (-1, 1))


def face_named(word: str) -> Face:
    """The face of that name. Raises ValueError for any other word."""
    i = FACE_WORDS.index(word)
    return Face(Axis(i // 2), 1 if i % 2 else -1)


@dataclass(frozen=True)
class Box:
    """An axis-aligned box, `lo` <= `hi` on every axis; flat boxes (contacts) have equal ends."""

    lo: Vec
    hi: Vec

    def size(self, axis: int) -> Fraction:
        return self.sizes[axis]

    @cached_property
    def sizes(self) -> Vec:
        return (self.hi[0] - self.lo[0], self.hi[1] - self.lo[1], self.hi[2] - self.lo[2])

    def face(self, face: Face) -> Fraction:
        """Where the face lies on its axis."""
        return self.hi[face.axis] if face.sign > 0 else self.lo[face.axis]

    @property
    def volume(self) -> Fraction:
        return self.size(0) * self.size(1) * self.size(2)

    def shared(self, other: Box) -> Box | None:
        """The closed intersection, flat where the boxes only touch; None when they are apart."""
        lo, hi = tuple(map(max, self.lo, other.lo)), tuple(map(min, self.hi, other.hi))
        if any(map(gt, lo, hi)):
            return None
        return Box(lo, hi)  # type: ignore[arg-type]

    def overlaps(self, other: Box) -> bool:
        """Whether the two share a volume, not merely a face."""
        return all(map(lt, self.lo, other.hi)) and all(map(lt, other.lo, self.hi))

    def stretched(self, face: Face, by: Fraction) -> Box:
        """The box with that face moved outwards by `by`."""
        if not by:
            return self
        ends = list(self.hi if face.sign > 0 else self.lo)
        ends[face.axis] += by * face.sign
        end: Vec = tuple(ends)  # type: ignore[assignment]
        return Box(self.lo, end) if face.sign > 0 else Box(end, self.hi)

    def grown(self, by: Fraction) -> Box:
        """The box with every face moved outwards by `by`."""
        if not by:
            return self
        return Box(tuple(end - by for end in self.lo), tuple(end + by for end in self.hi))  # type: ignore[arg-type]

    def with_span(self, axis: int, lo: Fraction, hi: Fraction) -> Box:
        """The box with its extent on one axis replaced."""
        a, b = list(self.lo), list(self.hi)
        a[axis], b[axis] = lo, hi
        return Box(tuple(a), tuple(b))  # type: ignore[arg-type]


@dataclass(frozen=True)
class Motion:
    """A signed permutation and a shift: source axis i goes to axis `to[i]` with sign `sign[i]`."""

    to: tuple[int, int, int]
    sign: tuple[int, int, int]
    shift: Vec

    def point(self, p: Vec) -> Vec:
        out = list(self.shift)
        for to, sign, coordinate in zip(self.to, self.sign, p):
            out[to] = out[to] + coordinate if sign > 0 else out[to] - coordinate
        return tuple(out)  # type: ignore[return-value]

    def box(self, box: Box) -> Box:
        a, b = self.point(box.lo), self.point(box.hi)
        return Box(tuple(map(min, a, b)), tuple(map(max, a, b)))  # type: ignore[arg-type]

    def axis(self, axis: int) -> Axis:
        return Axis(self.to[axis])

    def face(self, face: Face) -> Face:
        return Face(Axis(self.to[face.axis]), face.sign * self.sign[face.axis])

    def after(self, first: Motion) -> Motion:
        """The motion that does `first`, then this one."""
        to = tuple(self.to[t] for t in first.to)
        sign = tuple(s * self.sign[t] for s, t in zip(first.sign, first.to))
        return Motion(to, sign, self.point(first.shift))  # type: ignore[arg-type]

    def own_sizes(self, sizes: Vec) -> Vec:
        """What a moved box's sizes are along the axes that it was moved from."""
        return (sizes[self.to[0]], sizes[self.to[1]], sizes[self.to[2]])

    @cached_property
    def inverse(self) -> Motion:
        """The motion that undoes this one."""
        to = (self.to.index(0), self.to.index(1), self.to.index(2))
        sign = (self.sign[to[0]], self.sign[to[1]], self.sign[to[2]])
        zero = Fraction(0)
        x, y, z = Motion(to, sign, (zero, zero, zero)).point(self.shift)
        return Motion(to, sign, (-x, -y, -z))

    @property
    def reflects(self) -> bool:
        """Whether it turns a left hand into a right hand (determinant -1)."""
        inversions = sum(self.to[i] > self.to[j] for i in range(3) for j in range(i + 1, 3))
        return (self.sign[0] * self.sign[1] * self.sign[2]) * (-1) ** inversions < 0


def bounding(boxes: Iterable[Box]) -> Box:
    """The smallest box about them all; there must be some."""
    some = list(boxes)
    lo = tuple(min(box.lo[k] for box in some) for k in range(3))
    hi = tuple(max(box.hi[k] for box in some) for k in range(3))
    return Box(lo, hi)  # type: ignore[arg-type]


IDENTITY = Motion((0, 1, 2), (1, 1, 1), (Fraction(0), Fraction(0), Fraction(0)))
