"""Between what supports a level board bridges, found from what it touches and lies on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from setout.geometry import Axis, Box, Face
from setout.inspect.view import Touching, View

Interval = tuple[Fraction, Fraction]
_SHORT = Fraction(1, 2)  # a support longer than this share of the board runs along it, and doesn't end a span


@dataclass(frozen=True)
class Bridged:
    """`width` is the board's other free side."""

    along: Axis
    span: Fraction
    ends: str
    found: bool
    width: Fraction


def bridged(view: View, path: str) -> tuple[Bridged, ...]:
    """The spans that count: the shorter way between supports on two sides, and what sticks out beyond them. Empty where
    the board lies on something all over."""
    board = view.joined.boards[path].board
    under = [t for t in view.touching[path] if _holds(t)]
    met = {t.other for t in under}
    under += [t for t in view.right_under.get(path, ()) if t.other not in met]
    if board.box.lo[Axis.HIGH] <= view.floor or _lies_flat(board.box, under):
        return ()
    free = [axis for axis in (Axis.WIDE, Axis.DEEP)]
    ways = [way for axis in free if (way := _along(board.box, axis, under))]
    if ways:
        return min(ways, key=lambda way: way[0].span)
    one_sided = [way for axis in free if (way := _from_one_end(board.box, axis, under)) is not None]
    if one_sided:
        return (min(one_sided, key=lambda way: way.span),)
    longest = max(free, key=lambda axis: board.box.size(axis))
    return (Bridged(longest, board.box.size(longest), "simple", False, _other(board.box, longest)),)


def _holds(touching: Touching) -> bool:
    """Whether it can carry the board: it is below, or the board's edge is joined to it."""
    return touching.face != Face(Axis.HIGH, 1)


def _lies_flat(box: Box, under: Iterable[Touching]) -> bool:
    area = box.size(Axis.WIDE) * box.size(Axis.DEEP)
    below = (t.area.size(Axis.WIDE) * t.area.size(Axis.DEEP) for t in under if t.face == Face(Axis.HIGH, -1))
    return any(shared * 2 > area for shared in below)


def _along(box: Box, axis: Axis, under: list[Touching]) -> tuple[Bridged, ...]:
    """The widest gap between supports along an axis, and the longer overhang where there is one."""
    held = _intervals(box, axis, under)
    if len(held) < 2:
        return ()
    gaps = [right[0] - left[1] for left, right in pairwise(held)]
    width = _other(box, axis)
    out = max(held[0][0] - box.lo[axis], box.hi[axis] - held[-1][1])
    inner = Bridged(axis, max(gaps), "simple", True, width)
    return (inner, Bridged(axis, out, "cantilever", True, width)) if out > 0 else (inner,)


def _from_one_end(box: Box, axis: Axis, under: list[Touching]) -> Bridged | None:
    """How far it sticks out from a single support, at an end or under it."""
    held = _intervals(box, axis, under)
    if len(held) != 1:
        return None
    out = max(held[0][0] - box.lo[axis], box.hi[axis] - held[0][1])
    return Bridged(axis, out, "cantilever", True, _other(box, axis)) if out > 0 else None


def _intervals(box: Box, axis: Axis, under: list[Touching]) -> list[Interval]:
    """Where it is held along the axis, low to high, overlaps taken together; without supports that run along it."""
    short = [t.area for t in under if t.area.size(axis) <= box.size(axis) * _SHORT]
    held: list[Interval] = []
    for lo, hi in sorted((area.lo[axis], area.hi[axis]) for area in short):
        if held and lo <= held[-1][1]:
            held[-1] = (held[-1][0], max(held[-1][1], hi))
        else:
            held.append((lo, hi))
    return held


def _other(box: Box, axis: Axis) -> Fraction:
    return box.size(Axis.DEEP if axis == Axis.WIDE else Axis.WIDE)
