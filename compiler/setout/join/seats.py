"""Where a joint's fasteners sit: the contact itself, or the floor or cheek of what is milled for it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Box, Face, Vec
from setout.join.layout import Offsets
from setout.join.model import Cavity, Contact
from setout.join.solid import Solid
from setout.place.model import Board


@dataclass(frozen=True)
class Seat:
    """A flat place where `a` lies against `b` (None: a wall).

    `area` is flat on `face_a`'s axis, at `a`'s surface; `plane_b` is where `b`'s surface lies (a gap apart from it in a
    dado with a gap). `broad_a`, `broad_b`: whether that surface is a broad face of the board.
    """

    a: str
    b: str | None
    face_a: Face
    area: Box
    plane_b: Fraction
    broad_a: bool
    broad_b: bool

    @property
    def axis(self) -> Axis:
        return self.face_a.axis

    @property
    def gap(self) -> Fraction:
        """The air between the two surfaces."""
        return abs(self.plane_b - self.area.lo[self.axis])

    @property
    def long(self) -> Axis:
        """The axis along which the seat is longer (the first of two equal ones)."""
        first, second = (Axis(k) for k in range(3) if k != self.axis)
        return first if self.area.size(first) >= self.area.size(second) else second

    @property
    def short(self) -> Axis:
        return Axis(3 - self.axis - self.long)

    def turned(self) -> Seat:
        """The same seat seen from the other board. Not for walls."""
        assert self.b is not None
        area = self.area.with_span(self.axis, self.plane_b, self.plane_b)
        plane = self.area.lo[self.axis]
        return Seat(self.b, self.a, self.face_a.opposite, area, plane, self.broad_b, self.broad_a)

    def points(self, along: Axis, offsets: Offsets, across: Iterable[Fraction]) -> list[Vec]:
        """Points on `a`'s surface: `offsets` and `across` are distances from the low ends of the two axes."""
        other = Axis(3 - self.axis - along)
        points = []
        for aside in across:
            for offset in offsets:
                point = list(self.area.lo)
                point[along] += offset
                point[other] += aside
                points.append(tuple(point))
        return points  # type: ignore[return-value]

    def on_b(self, point: Vec) -> Vec:
        """The point of `b`'s surface across from a point of `a`'s."""
        return moved(point, self.axis, self.plane_b)


def moved(point: Vec, axis: Axis, coordinate: Fraction) -> Vec:
    """The point with one coordinate replaced."""
    return (*point[:axis], coordinate, *point[axis + 1 :])  # type: ignore[return-value]


def end_seat(contact: Contact, a: Board, b: Board | None, solids: Mapping[str, Solid], cut: Cavity | None) -> Seat:
    """Where `a` ends against `b`: at the contact, or at the floor of the housing."""
    face, area = contact.face_a, contact.area
    plane_b = area.lo[face.axis]
    if cut is not None:
        reached = solids[contact.a].box.face(face)
        plane_b = cut.box.face(face)
        area = _clipped(area, cut).with_span(face.axis, reached, reached)
    broad_b = b is None or face.axis == b.thick
    return Seat(contact.a, contact.b, face, area, plane_b, face.axis == a.thick, broad_b)


def cheek_seat(contact: Contact, a: Board, b: Board, solids: Mapping[str, Solid], cut: Cavity) -> Seat:
    """Where the broad face of `a` lies against the cheek of its rabbet in `b`."""
    width, inner = a.thick, -1 if cut.box.hi[a.thick] == solids[b.path].box.hi[a.thick] else 1
    face = Face(width, inner)
    wall = cut.box.face(face)
    shoulder, reached = contact.area.lo[contact.face_a.axis], solids[a.path].box.face(contact.face_a)
    area = _clipped(contact.area, cut).with_span(contact.face_a.axis, min(shoulder, reached), max(shoulder, reached))
    area = area.with_span(width, wall, wall)
    return Seat(a.path, b.path, face, area, wall, True, width == b.thick)


def _clipped(area: Box, cut: Cavity) -> Box:
    """The part of the contact that the housing runs along."""
    lo, hi = max(area.lo[cut.run], cut.box.lo[cut.run]), min(area.hi[cut.run], cut.box.hi[cut.run])
    return area.with_span(cut.run, lo, max(lo, hi))
