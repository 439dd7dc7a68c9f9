"""Shelves: their rows of pin holes, all counted from one datum."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor

from setout.geometry import Axis, Box
from setout.place import problems
from setout.place.filling.ground import LEFT, RIGHT, Ground
from setout.place.filling.made import Made
from setout.place.model import Fitting, ShelfBay
from setout.resolve.model import ShelvesDef

_MOST_HOLES = 400
_A_BIT = Fraction(1, 100)


def shelves(ground: Ground, written: ShelvesDef, made: Made) -> None:
    prefix = ground.scope.path_of(written.part)
    paths = tuple(p for p in ground.scene.boards if p.startswith(f"{prefix}."))
    if not paths:
        return
    pins: tuple[Fraction, ...] = ()
    sides: tuple[str, ...] = ()
    if written.pitch is not None:
        pins = _rows(ground, written)
        sides = _bored(ground, written, pins, len(paths), made)
    made.shelves.append(ShelfBay(ground.path, ground.scope.path, paths, pins, sides, written.span))


def _rows(ground: Ground, written: ShelvesDef) -> tuple[Fraction, ...]:
    """Heights of the holes above the opening's floor: every pitch from the datum, clear of floor and ceiling."""
    pitch, start = ground.amount(written.pitch), ground.amount(written.start)
    if pitch is None or start is None or pitch <= 0:
        return ()
    low, high = ground.box.lo[Axis.HIGH], ground.box.hi[Axis.HIGH]
    first, last = max(0, ceil((low + pitch - start) / pitch)), floor((high - pitch - start) / pitch)
    if last - first >= _MOST_HOLES:
        ground.site.report(problems.too_many_members(written.part, last - first, _MOST_HOLES, written.head))
        return ()
    return tuple(start + i * pitch - low for i in range(first, last + 1))


def _bored(
    ground: Ground, written: ShelvesDef, pins: tuple[Fraction, ...], shelves: int, made: Made
) -> tuple[str, ...]:
    """Two rows in each side. Four pins a shelf are counted, on the left."""
    hardware = ground.site.project.hardware.get(written.pin) if written.pin else None
    if not pins or hardware is None or hardware.hole is None:
        return ()
    inset = ground.amount(written.inset) or ground.site.project.practice.value("pin_inset")
    box, found = ground.box, []
    deep = (box.lo[Axis.DEEP] + inset, box.hi[Axis.DEEP] - inset)
    for face in (LEFT, RIGHT):
        plane = box.face(face)
        at = (deep[0] + deep[1]) / 2
        region = Box((plane, box.lo[Axis.HIGH], at), (plane, box.hi[Axis.HIGH], at + _A_BIT))
        got = ground.behind(face, region)
        if got is None or got[1] > 0:
            ground.site.report(problems.nothing_for_pins(ground.path, face, hardware, written.head))
            continue
        found.append(got[0].path)
        points = tuple(ground.point(plane, box.lo[Axis.HIGH] + pin, d) for pin in pins for d in deep)
        facing, count = ground.to.face(face.opposite), 4 * shelves if face == LEFT else 0
        ident = f"{ground.scope.path_of(written.part)}!{face.word}"
        made.fittings.append(
            Fitting(ident, ground.scope.path, hardware, count, got[0].path, facing, points, written.span)
        )
    return tuple(found)
