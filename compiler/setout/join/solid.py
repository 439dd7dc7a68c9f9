"""A board as wood: its box less what is cut away. Where two of them touch, and how much they share."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Box, Face, Vec
from setout.join.rectangles import rectangles

NONE = Fraction(0)
_ACROSS = ((1, 2), (0, 2), (0, 1))  # the other two axes
MOST_CELLS = 20_000  # of a pair's grid; beyond it the pair is too intricate to look at


@dataclass(frozen=True)
class Solid:
    """`gone` are boxes of material taken off; they may stick out of `box` and overlap each other."""

    box: Box
    gone: tuple[Box, ...] = ()

    def depth_at(self, point: Vec, face: Face) -> Fraction:
        """How far the wood goes straight in from `point`, a point of its surface, which looks along `face` there."""
        depth = _inward(point, face, self.box.face(face.opposite))
        u, v = _ACROSS[face.axis]
        for gone in self.gone:
            if not (gone.lo[u] <= point[u] <= gone.hi[u] and gone.lo[v] <= point[v] <= gone.hi[v]):
                continue
            start, end = _inward(point, face, gone.face(face)), _inward(point, face, gone.face(face.opposite))
            if end > 0:
                depth = min(depth, max(start, NONE))
        return max(depth, NONE)

    def depths(self, points: Sequence[Vec], face: Face) -> list[Fraction]:
        """Every depth there is at these points, which lie in one plane."""
        return [self.depth_at(point, face) for point in (points if self.gone else points[:1])]


@dataclass(frozen=True)
class Meeting:
    """One rectangle in which two solids touch: `area` is flat on `face`'s axis, `face` is the first solid's."""

    face: Face
    area: Box


@dataclass(frozen=True)
class Touch:
    """How two solids stand to each other. `shared` bounds the volume they share. `intricate`: not looked at."""

    meetings: tuple[Meeting, ...] = ()
    shared: Box | None = None
    intricate: bool = False


APART = Touch()


def touch(a: Solid, b: Solid) -> Touch:
    """Where `a` and `b` touch and what they share. Rectangles on one face: the largest first."""
    near = a.box.shared(b.box)
    if near is None:
        return APART
    a, b = _cut_near(a, near), _cut_near(b, near)
    return _by_grid(a, b) if a.gone or b.gone else _plain(a.box, near)


def overlap(a: Solid, b: Solid) -> Box | None:
    """The box that bounds what `a` and `b` share, as `touch` has it."""
    near = a.box.shared(b.box)
    if near is None or any(low == high for low, high in zip(near.lo, near.hi)):
        return None
    a, b = _cut_near(a, near), _cut_near(b, near)
    if not (a.gone or b.gone):
        return near
    cuts = _cuts(a, b)
    return None if cuts is None else _bounds(_cells(a, cuts) & _cells(b, cuts), cuts)


def _cut_near(solid: Solid, near: Box) -> Solid:
    """The solid with those cuts only that reach there."""
    return Solid(solid.box, tuple(gone for gone in solid.gone if gone.shared(near) is not None))


def _inward(point: Vec, face: Face, coordinate: Fraction) -> Fraction:
    at = point[face.axis]
    return at - coordinate if face.sign > 0 else coordinate - at


def _plain(a: Box, near: Box) -> Touch:
    flat = [k for k in range(3) if near.lo[k] == near.hi[k]]
    if len(flat) > 1:
        return APART
    if not flat:
        return Touch(shared=near)
    sign = 1 if a.hi[flat[0]] == near.lo[flat[0]] else -1
    return Touch((Meeting(Face(Axis(flat[0]), sign), near),))


# --- notched boards: compare cell by cell -----------------------------------------------------------------

Cell = tuple[int, int, int]


def _by_grid(a: Solid, b: Solid) -> Touch:
    cuts = _cuts(a, b)
    if cuts is None:
        return Touch(intricate=True)
    mine, theirs = _cells(a, cuts), _cells(b, cuts)
    return Touch(tuple(_meetings(mine, theirs, cuts)), _bounds(mine & theirs, cuts))


def _cuts(a: Solid, b: Solid) -> list[list[Fraction]] | None:
    """Where the grid's planes lie on each axis; None when there are too many."""
    boxes = (a.box, b.box, *a.gone, *b.gone)
    cuts = [sorted({end for box in boxes for end in (box.lo[k], box.hi[k])}) for k in range(3)]
    return cuts if len(cuts[0]) * len(cuts[1]) * len(cuts[2]) <= MOST_CELLS else None


def _cells(solid: Solid, cuts: list[list[Fraction]]) -> set[Cell]:
    cells = set(_within(solid.box, cuts))
    for gone in solid.gone:
        cells.difference_update(_within(gone, cuts))
    return cells


def _within(box: Box, cuts: list[list[Fraction]]) -> Iterable[Cell]:
    i, j, k = (range(cuts[n].index(box.lo[n]), cuts[n].index(box.hi[n])) for n in range(3))
    return ((x, y, z) for x in i for y in j for z in k)


def _meetings(mine: set[Cell], theirs: set[Cell], cuts: list[list[Fraction]]) -> Iterable[Meeting]:
    planes: dict[tuple[int, int, int], set[tuple[int, int]]] = defaultdict(set)
    for cell in mine - theirs:
        for axis in range(3):
            for sign in (-1, 1):
                beyond = (*cell[:axis], cell[axis] + sign, *cell[axis + 1 :])
                if beyond in theirs and beyond not in mine:
                    flat = cell[:axis] + cell[axis + 1 :]
                    planes[axis, sign, cell[axis] + (sign > 0)].add(flat)  # type: ignore[arg-type]
    for (axis, sign, layer), flats in sorted(planes.items(), key=lambda item: item[0]):
        u, v = (cuts[n] for n in range(3) if n != axis)
        for u_lo, u_hi, v_lo, v_hi in rectangles(flats, u, v):
            lo, hi = [u[u_lo], v[v_lo]], [u[u_hi], v[v_hi]]
            lo.insert(axis, cuts[axis][layer])
            hi.insert(axis, cuts[axis][layer])
            yield Meeting(Face(Axis(axis), sign), Box(tuple(lo), tuple(hi)))  # type: ignore[arg-type]


def _bounds(cells: set[Cell], cuts: list[list[Fraction]]) -> Box | None:
    if not cells:
        return None
    lo = tuple(cuts[k][min(cell[k] for cell in cells)] for k in range(3))
    hi = tuple(cuts[k][max(cell[k] for cell in cells) + 1] for k in range(3))
    return Box(lo, hi)  # type: ignore[arg-type]
