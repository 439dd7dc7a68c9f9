"""Doors: hinges by height and weight, their cups and plates bored."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from setout.geometry import Axis, Box, Face
from setout.place import problems
from setout.place.filling.ground import LEFT, RIGHT, Ground
from setout.place.filling.made import Front, Made
from setout.place.model import Board, Fitting, HungDoor, plates_of
from setout.practice import Practice
from setout.resolve.model import DoorDef, Hardware

_FRONT = Face(Axis.DEEP, -1)
_A_BIT = Fraction(1, 100)


def door(ground: Ground, written: DoorDef, made: Made) -> None:
    paths = [ground.scope.path_of(name) for name in written.parts]
    boards = [b for p in paths if (b := ground.scene.boards.get(p)) is not None]
    if len(boards) != len(paths):
        return
    made.fronts += [Front(b.path, b.box, ground.path, True, written.head) for b in boards]
    hardware = ground.site.project.hardware.get(written.hinge) if written.hinge else None
    cups: tuple[Fraction, ...] = ()
    sides: list[str] = []
    if hardware is not None and hardware.hinge is not None:
        cups = _cups(ground, boards[0])
        for board, face in zip(boards, (LEFT, RIGHT) if len(boards) > 1 else (written.side,)):
            sides += _hang(ground, written, hardware, board, face, cups, made)
    made.doors.append(
        HungDoor(
            ground.path, ground.scope.path, tuple(paths), hardware, written.overlay, cups, tuple(sides), written.span
        )
    )


def _cups(ground: Ground, board: Board) -> tuple[Fraction, ...]:
    """Heights of the hinges above the door's lower edge: the outer ones a set way from the ends, others between."""
    practice = ground.site.project.practice
    own = ground.own(board.path)
    assert own is not None
    high, end = own.size(Axis.HIGH), practice.value("hinge_end")
    count = int(_up_to(practice, "hinge_count", high))
    weight = _pounds(board)
    if weight is not None:
        count = max(count, int(_up_to(practice, "hinge_weight", weight)))
    end = min(end, high / 4)
    return tuple(end + (high - 2 * end) * i / (count - 1) for i in range(count))


def _up_to(practice: Practice, name: str, size: Fraction) -> Fraction:
    """The value of the first step that `size` doesn't exceed; the last where it exceeds them all."""
    row = practice.rows[name]
    if not row.steps:
        return practice.value(name)
    return next((value for most, value in row.steps if size <= most), row.steps[-1][1])


def _pounds(board: Board) -> Fraction | None:
    """The door's weight, where the stock's density is known (pounds a cubic foot)."""
    density = getattr(board.stock, "density", None)
    return board.box.volume / 1728 * Fraction(density) if density is not None else None


def _hang(
    ground: Ground,
    written: DoorDef,
    hardware: Hardware,
    board: Board,
    face: Face,
    cups: tuple[Fraction, ...],
    made: Made,
) -> list[str]:
    hinge, own = hardware.hinge, ground.own(board.path)
    assert hinge is not None and own is not None
    edge = own.face(face) - face.sign * (hinge.edge + hinge.cup / 2)
    back = own.hi[Axis.DEEP]
    points = tuple(ground.point(edge, own.lo[Axis.HIGH] + at, back) for at in cups)
    cup = replace(hardware, hole=(hinge.cup, hinge.depth))
    facing = ground.to.face(_FRONT.opposite)
    made.fittings.append(
        Fitting(f"{board.path}!cups", ground.scope.path, cup, len(cups), board.path, facing, points, written.span)
    )
    plane, box = ground.box.face(face), ground.box
    middle = box.lo[Axis.DEEP] + (hinge.plate[0] if hinge.plate else Fraction(1))
    region = Box((plane, own.lo[Axis.HIGH], middle), (plane, own.hi[Axis.HIGH], middle + _A_BIT))
    got = ground.behind(face, region)
    if got is None or got[1] > 0:
        ground.site.report(problems.nothing_for_hinges(ground.path, face, hardware, written.head))
        return []
    if hinge.plate is not None:
        made.fittings.append(_plates(ground, written, hardware, own, face, cups, got[0], board.path))
    return [got[0].path]


def _plates(
    ground: Ground,
    written: DoorDef,
    hardware: Hardware,
    own: Box,
    face: Face,
    cups: tuple[Fraction, ...],
    side: Board,
    door: str,
) -> Fitting:
    hinge, practice = hardware.hinge, ground.site.project.practice
    assert hinge is not None and hinge.plate is not None
    line, apart = hinge.plate
    deep = ground.box.lo[Axis.DEEP] + line + (Fraction(0) if written.overlay else own.size(Axis.DEEP))
    plane = ground.box.face(face)
    points = tuple(
        ground.point(plane, own.lo[Axis.HIGH] + at + half * apart / 2, deep) for at in cups for half in (-1, 1)
    )
    plate = replace(hardware, hole=(practice.value("slide_pilot"), practice.value("slide_pilot_depth")))
    facing = ground.to.face(face.opposite)
    return Fitting(plates_of(door), ground.scope.path, plate, 0, side.path, facing, points, written.span)
