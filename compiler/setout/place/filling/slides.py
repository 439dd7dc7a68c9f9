"""Slides on the sides that bound an opening, and on the boxes that run in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from setout.geometry import Axis, Box, Face
from setout.place import problems
from setout.place.filling.ground import LEFT, RIGHT, Ground
from setout.place.model import Fitting
from setout.resolve.model import BankDef, Hardware
from setout.source import Span

_HALF = Fraction(1, 2)


@dataclass(frozen=True)
class Mount:
    """A drawer's pair of slides: `low` is their lower edge above the opening's floor."""

    path: str
    low: Fraction
    boards: tuple[str, ...]


@dataclass(frozen=True)
class Laid:
    """`sides` the case sides by path, left and right, where they were found; `gaps` how far each stands back."""

    hardware: Hardware
    mounts: tuple[Mount, ...]
    sides: tuple[str, ...]
    gaps: tuple[Fraction, ...]
    front: Fraction  # of the slides, on the deep axis of the opening's assembly
    span: Span

    def fittings(self, ground: Ground, packed: Mapping[tuple[int, int], str]) -> list[Fitting]:
        """One for each board that slides are screwed to; `packed` the packers by drawer and side. The pair is counted
        once, on the left of the case."""
        made = []
        for i, mount in enumerate(self.mounts):
            for k, face in enumerate((LEFT, RIGHT)):
                if self.sides:
                    made.append(self._case(ground, mount, face, packed.get((i, k), self.sides[k]), 1 - k))
                box = self._box(ground, mount, face)
                made += [box] if box is not None else []
        return made

    def _case(self, ground: Ground, mount: Mount, face: Face, board: str, count: int) -> Fitting:
        plane = ground.box.face(face)
        points = tuple(ground.point(plane, self.line(ground, mount), at) for at in self._screws())
        ident = f"{mount.path}!case.{face.word}"
        facing = ground.to.face(face.opposite)
        return Fitting(ident, ground.scope.path, self.hardware, count, board, facing, points, self.span)

    def _box(self, ground: Ground, mount: Mount, face: Face) -> Fitting | None:
        slide = self.hardware.slide
        path = f"{mount.path}.{'left' if face == LEFT else 'right'}_side"
        own = ground.own(path)
        if own is None or slide is None or slide.kind != "side":
            return None
        points = tuple(ground.point(own.face(face), self.line(ground, mount), at) for at in self._screws())
        ident = f"{mount.path}!{face.word}"
        return Fitting(ident, mount.path, self.hardware, 0, path, ground.to.face(face), points, self.span)

    def line(self, ground: Ground, mount: Mount) -> Fraction:
        """The height of the screws: the middle of the slide."""
        slide = self.hardware.slide
        assert slide is not None
        return ground.box.lo[Axis.HIGH] + mount.low + slide.height * _HALF

    def _screws(self) -> list[Fraction]:
        slide = self.hardware.slide
        assert slide is not None
        return [self.front + at for at in slide.screws]


def slides(ground: Ground, written: BankDef, hardware: Hardware, mounts: list[Mount]) -> Laid:
    """The slides of a bank. A side that isn't there is reported."""
    slide = hardware.slide
    assert slide is not None
    practice = ground.site.project.practice
    pilot = practice.value("slide_pilot"), practice.value("slide_pilot_depth")
    screws = slide.screws or _usual(slide.length, practice.value("slide_screw_end"))
    fixed = replace(hardware, hole=pilot, slide=replace(slide, screws=screws))
    side = ground.own(f"{mounts[0].path}.left_side")
    front = (side.lo[Axis.DEEP] if side is not None else ground.box.lo[Axis.DEEP]) + slide.setback
    sides, gaps = [], []
    for face in (LEFT, RIGHT):
        behind = _found(ground, face, hardware, mounts, front)
        if behind is None:
            ground.site.report(problems.nothing_for_slides(ground.path, face, hardware, written.head))
            continue
        sides.append(behind[0])
        gaps.append(behind[1])
    if len(sides) < 2:
        sides, gaps = [], []
    return Laid(fixed, tuple(mounts), tuple(sides), tuple(gaps), front, written.span)


def _found(
    ground: Ground, face: Face, hardware: Hardware, mounts: list[Mount], front: Fraction
) -> tuple[str, Fraction] | None:
    """The board that all the slides of one side are screwed to."""
    slide, floor = hardware.slide, ground.box.lo[Axis.HIGH]
    assert slide is not None
    low, high = min(m.low for m in mounts), max(m.low for m in mounts) + slide.height
    middle = front + slide.length * _HALF
    plane = ground.box.face(face)
    region = Box((plane, floor + low, middle), (plane, floor + high, middle + Fraction(1, 100)))
    got = ground.behind(face, region)
    return (got[0].path, got[1]) if got is not None else None


def _usual(length: Fraction, end: Fraction) -> tuple[Fraction, ...]:
    if length < 4 * end:
        return (length / 4, length * 3 / 4)
    return (end, length * _HALF, length - end)
