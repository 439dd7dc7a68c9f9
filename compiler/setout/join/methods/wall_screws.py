"""Screws into a wall or the floor of the room."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor

from setout.geometry import Axis, Vec
from setout.join import problems
from setout.join.layout import Rule, row, row_count
from setout.join.methods.names import clearance, named, screw_diameter
from setout.join.methods.task import Laid, Task, Way, area, clear, crowded, grid, rod, rule, wrong
from setout.join.model import Bore, Fastening
from setout.join.seats import Seat, moved


def lay(task: Task) -> Laid:
    """Into the floor in a row; into a wall at its studs, where the room says where they are."""
    seat = task.end
    if seat.axis is Axis.HIGH:
        no = crowded(task, seat.area.size(seat.long), rule(task, "screw"))
        points = [] if no is not None else grid(task, seat, rule(task, "screw"))
        return wrong(no) if no is not None else _laid(task, seat, points, len(points), Fraction(0))
    drywall = task.practice.value("drywall_thickness")
    if not task.method.studs:
        told = problems.wall_without_studs(task.method, task.a, seat.face_a)
        laid = _unknown(task, seat, drywall)
        return Laid(laid.fastening, laid.bores, laid.ways, (told, *laid.diagnostics))
    studs = task.ground.room.studs if task.ground.room is not None and seat.axis is Axis.DEEP else None
    if studs is None or studs[0] < task.practice.value("fastener_closest"):
        return _unknown(task, seat, drywall)
    return _at_studs(task, seat, studs, drywall)


def _at_studs(task: Task, seat: Seat, studs: tuple[Fraction, Fraction], drywall: Fraction) -> Laid:
    spacing, first = studs
    assert task.ground.scene.room is not None
    start = task.ground.scene.room.lo[Axis.WIDE] + first
    edge = task.practice.value("stud_edge")
    lo, hi = seat.area.lo[Axis.WIDE] + edge, seat.area.hi[Axis.WIDE] - edge
    low, high = ceil((lo - start) / spacing), floor((hi - start) / spacing)
    if low > high:
        return Laid(diagnostics=(problems.no_stud_behind(task.ground, task.method, task.a, spacing, first),))
    if high - low >= task.practice.value("fastener_most"):
        return wrong(problems.too_many(task.ground, task.method, hi - lo, task.practice.value("fastener_most")))
    across = tuple(start + n * spacing - seat.area.lo[Axis.WIDE] for n in range(low, high + 1))

    def at(how: Rule) -> Laid:
        points = seat.points(Axis.WIDE, across, row(seat.area.size(Axis.HIGH), how))
        return _laid(task, seat, points, len(points), drywall)

    return clear(task, seat.area.size(Axis.HIGH), _upwards(task), at)


def _unknown(task: Task, seat: Seat, drywall: Fraction) -> Laid:
    """As many as there will be studs; where they are is found on the wall, so nothing is drilled beforehand."""
    along = Axis.WIDE if seat.axis is Axis.DEEP else Axis.DEEP
    studs = max(1, floor(seat.area.size(along) / task.practice.value("stud_spacing")))
    return _laid(task, seat, [], studs * row_count(seat.area.size(Axis.HIGH), _upwards(task)), drywall)


def _upwards(task: Task) -> Rule:
    """How many screws a stud takes: one for a narrow cleat, more for a tall board."""
    practice = task.practice
    return Rule(practice.value("screw_first"), practice.value("stud_spacing"), practice.value("screw_one_row_up_to"))


def _laid(task: Task, seat: Seat, points: list[Vec], count: int, drywall: Fraction) -> Laid:
    practice, solid = task.practice, task.ground.solids[task.a.path]
    middle = tuple((p + q) / 2 for p, q in zip(seat.area.lo, seat.area.hi))
    through = max(solid.depth_at(point, seat.face_a) for point in points or [middle])  # type: ignore[list-item]
    need = through + drywall + practice.value("wall_penetration")
    length = min((n for n in practice.choices("screw_lengths") if n >= need), default=None)
    if length is None:
        longest = max(practice.choices("screw_lengths"))
        return wrong(problems.none_long_enough(task.ground, task.method, task.a, through, longest, True))
    gauge = int(practice.value("wall_screw_gauge"))
    name, drill = named("screws", gauge, length, None), clearance(practice, gauge)
    face = seat.face_a.opposite
    heads = [moved(p, seat.axis, p[seat.axis] - seat.face_a.sign * solid.depth_at(p, seat.face_a)) for p in points]
    bores = tuple((seat.a, Bore("clearance", face, head, drill, None, None, name, task.contact.id)) for head in heads)
    radius = screw_diameter(practice, gauge) / 2
    ways = tuple(
        Way(seat.a, head, rod(head, point, radius), "a screw", task.source, task.method.span)
        for head, point in zip(heads, points)
    )
    held = Fastening(
        task.contact.id, task.joint.id, "screws", count, gauge, length, None, None, seat.a, face, area(task.contact)
    )
    return Laid(held, bores, ways)
