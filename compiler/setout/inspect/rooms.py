"""Whether all of it goes into the room, clears what must stay clear, and comes in at the door."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.geometry import ALL_FACES, Axis
from setout.inspect import problems
from setout.inspect.model import CarriedUnit
from setout.inspect.view import View
from setout.resolve.model import Room
from setout.source import Span
from setout.strength import carried_in


def carried(view: View, room: Room | None) -> tuple[CarriedUnit, ...]:
    """Units in the order placed. Where only a ceiling is said, any doorway will do; where only a door, the room's own
    ceiling counts."""
    found = []
    for unit, boards in view.units.items():
        box = view.outline(boards)
        way = None
        if room is not None and (room.door or room.ceiling):
            ceiling = room.ceiling or room.sizes[Axis.HIGH]
            most = max((*box.sizes, ceiling))
            way = carried_in(box.sizes, room.door or (most, most), ceiling)
        found.append(CarriedUnit(unit, box, way))
    return tuple(found)


def room_checks(view: View, room: Room | None, units: tuple[CarriedUnit, ...]) -> Iterator[Diagnostic]:
    if room is None:
        return
    for unit in units:
        yield from _fits(view, room, unit)
        yield from _comes_in(view, room, unit)
    yield from _clears(view, room)


def _fits(view: View, room: Room, unit: CarriedUnit) -> Iterator[Diagnostic]:
    """The worst way in which it leaves the room."""
    out: list[tuple[Fraction, int]] = []
    for n, face in enumerate(ALL_FACES):
        wall = room.sizes[face.axis] if face.sign > 0 else Fraction(0)
        beyond = (unit.outline.face(face) - wall) * face.sign
        if face.sign < 0 and face.axis == Axis.HIGH:
            continue  # what goes below the floor is a matter of feet, and of where the builder counts from
        if beyond > 0:
            out.append((beyond, n))
    if out:
        beyond, n = max(out, key=lambda one: (one[0], -one[1]))
        yield problems.outside_room(view, unit, ALL_FACES[n], beyond, room, _span(view, unit.path))


def _clears(view: View, room: Room) -> Iterator[Diagnostic]:
    """Each box of the room, with the first board that is in it."""
    for box in room.boxes:
        hits = [path for path, joined in view.joined.boards.items() if joined.board.box.overlaps(box.box)]
        if hits:
            yield problems.in_the_way(view, box, hits, view.joined.boards[hits[0]].board)


def _comes_in(view: View, room: Room, unit: CarriedUnit) -> Iterator[Diagnostic]:
    way = unit.carried
    if way is None:
        return
    if not way.ways:
        yield problems.not_through_door(view, unit, room, _span(view, unit.path))
    elif not way.possible and unit.path in view.scene.instances:
        yield problems.not_stood_up(view, unit, room, _span(view, unit.path))


def _span(view: View, unit: str) -> Span:
    instance = view.scene.instances.get(unit)
    return instance.span if instance is not None else view.joined.boards[unit].board.head
