"""Dowels: a hole in each of the two boards, opposite each other."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Vec
from setout.join import problems
from setout.join.methods.names import named
from setout.join.methods.screws import inside, ways_of
from setout.join.methods.task import Laid, Task, area, clear, grid, in_wood, rule, wrong
from setout.join.model import Bore, Fastening
from setout.join.seats import Seat, moved


def lay(task: Task) -> Laid:
    """Dowels along the contact; between two faces, a grid of them."""
    if task.contact.b is None:
        return wrong(problems.not_on_a_wall(task.a, task.method))
    seat, how = task.end, rule(task, "dowel")
    length = seat.area.size(seat.long)
    diameter = _diameter(task, seat)
    if diameter is None:
        return Laid(narrow=problems.too_narrow(task.ground, task.method, task.a, task.b, task.contact))
    return clear(
        task, length, how, lambda rule: _laid(task, seat, in_wood(task, seat, grid(task, seat, rule)), diameter)
    )


def _diameter(task: Task, seat: Seat) -> Fraction | None:
    """The thickest on sale that the contact, and the board whose edge it enters, leave room for."""
    thick = min(seat.area.size(seat.short), *(b.box.size(b.thick) for b in _edged(task, seat)))
    limit = thick * task.practice.value("dowel_share")
    return max((d for d in task.practice.choices("dowel_diameters") if d <= limit), default=None)


def _edged(task: Task, seat: Seat) -> list:
    """The boards whose edges are drilled; both boards where only faces meet."""
    edged = [board for board, broad in ((task.a, seat.broad_a), (task.b, seat.broad_b)) if not broad]
    return edged or [task.a, task.b]


@dataclass(frozen=True)
class _Depths:
    in_a: Fraction
    in_b: Fraction


def _depths(task: Task, seat: Seat, points: list[Vec], length: Fraction) -> _Depths | None:
    """Half the dowel in each board, or more in the one that has more wood. None when it finds no room."""
    keep = task.practice.value("screw_tip_margin") + task.practice.value("dowel_room")
    a, b = task.ground.solids[task.a.path], task.ground.solids[task.b.path]
    room_a = min(a.depths(points, seat.face_a)) - keep
    room_b = min(b.depths([seat.on_b(point) for point in points], seat.face_a.opposite)) - keep
    whole = length - seat.gap
    in_b = min(room_b, max(whole / 2, whole - room_a))
    in_a = whole - in_b
    least = task.practice.value("dowel_least_depth")
    return _Depths(in_a, in_b) if least <= in_a <= room_a and least <= in_b else None


def _laid(task: Task, seat: Seat, points: list[Vec], diameter: Fraction) -> Laid:
    length = task.practice.nearest("dowel_length", diameter)
    depths = _depths(task, seat, points, length)
    if depths is None:
        return wrong(problems.dowel_finds_no_room(task.ground, task.method, task.a, task.b, length))
    room = task.practice.value("dowel_room")
    name = named("dowels", None, length, diameter)
    bores, ways = [], []
    for point in points:
        opposite = seat.on_b(point)
        bores += [
            (seat.a, Bore("dowel", seat.face_a, point, diameter, depths.in_a + room, None, name, task.contact.id)),
            (seat.b, Bore("dowel", seat.face_a.opposite, opposite, diameter, depths.in_b + room, None, name,
                          task.contact.id)),
        ]  # fmt: skip
        bottom = moved(point, seat.axis, point[seat.axis] - seat.face_a.sign * (depths.in_a + room))
        end = inside(seat, point, depths.in_b + room)
        ways += ways_of(task, seat, (bottom, point), (opposite, end), diameter / 2, "a dowel")
    held = Fastening(
        task.contact.id, task.joint.id, "dowels", len(points), None, length, diameter, None, seat.a, seat.face_a,
        area(task.contact),
    )  # fmt: skip
    return Laid(held, tuple(bores), tuple(ways))  # type: ignore[arg-type]
