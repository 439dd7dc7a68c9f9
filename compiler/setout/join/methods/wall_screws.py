"""Screws into a wall or the floor of the room."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor

from setout.diagnostics import Diagnostic
from setout.geometry import Axis, Box, Vec
from setout.join import problems
from setout.join.layout import Rule, row, row_count
from setout.join.methods.names import clearance, named, screw_diameter
from setout.join.methods.task import Laid, Task, Way, area, clear, crowded, grid, rod, rule, wrong
from setout.join.model import Bore, Fastening
from setout.join.seats import Seat, moved
from setout.place.model import Board

Studs = tuple[Fraction, Fraction]
Passed = tuple[str, Vec, Fraction]  # a board, where the screw enters it, and how thick it is there


def lay(task: Task) -> Laid:
    """Into the floor in a row; into a wall at its studs, where the room says where they are."""
    seat = task.end
    if seat.axis is Axis.HIGH:
        how = rule(task, "screw")
        no = crowded(task, seat.area.size(seat.long), how)
        if no is not None:
            return wrong(no)
        points = grid(task, seat, how)
        return _laid(task, seat, points, len(points), Fraction(0))
    drywall = task.practice.value("drywall_thickness")
    strips = _strips(task, seat)
    if not task.method.studs:
        told = problems.wall_without_studs(task.method, task.a, seat.face_a)
        laid = _unknown(task, strips, drywall)
        return Laid(laid.fastening, laid.bores, laid.ways, (told, *laid.diagnostics))
    studs = task.ground.room.studs if task.ground.room is not None and seat.axis is Axis.DEEP else None
    if studs is None or studs[0] < task.practice.value("fastener_closest"):
        return _unknown(task, strips, drywall)
    return _at_studs(task, strips, studs, drywall)


def _strips(task: Task, seat: Seat) -> list[tuple[Seat, Board]]:
    """Where the screws go, with the board that holds there: the whole contact, or of a panel too thin to hold the
    strips that a rail in front of it stiffens."""
    solids, least = task.ground.solids, task.practice.value("wall_thinnest")
    if solids[task.a.path].box.size(seat.axis) >= least:
        return [(seat, task.a)]
    found = []
    for path in task.layers:
        box = solids[path].box.with_span(seat.axis, seat.area.lo[seat.axis], seat.area.hi[seat.axis])
        shared = seat.area.shared(box) if solids[path].box.size(seat.axis) >= least else None
        if shared is not None and all(shared.size(k) > 0 for k in (seat.long, seat.short)):
            found.append((replace(seat, area=shared), task.ground.board(path)))
    return found or [(seat, task.a)]


def _at_studs(task: Task, strips: list[tuple[Seat, Board]], studs: Studs, drywall: Fraction) -> Laid:
    behind = [(strip, _studs_behind(task, strip, studs)) for strip, _ in strips]
    behind = [(strip, across) for strip, across in behind if across]
    most = task.practice.value("fastener_most")
    if not behind:
        return Laid(diagnostics=(problems.no_stud_behind(task.ground, task.method, strips[0][1], *studs),))
    if sum(len(across) for _, across in behind) > most:
        return wrong(problems.too_many(task.ground, task.method, task.end.area.size(Axis.WIDE), most))

    def at(how: Rule) -> Laid:
        points = [
            point
            for strip, across in behind
            for point in strip.points(
                Axis.WIDE, [n - strip.area.lo[Axis.WIDE] for n in across], row(strip.area.size(Axis.HIGH), how)
            )
        ]
        return _laid(task, behind[0][0], points, len(points), drywall)

    return clear(task, max(strip.area.size(Axis.HIGH) for strip, _ in behind), _upwards(task), at)


def _studs_behind(task: Task, strip: Seat, studs: Studs) -> list[Fraction]:
    """Where studs stand behind the strip; one more than may be of too many."""
    spacing, first = studs
    assert task.ground.scene.room is not None
    start = task.ground.scene.room.lo[Axis.WIDE] + first
    edge = task.practice.value("stud_edge")
    lo, hi = strip.area.lo[Axis.WIDE] + edge, strip.area.hi[Axis.WIDE] - edge
    low, high = ceil((lo - start) / spacing), floor((hi - start) / spacing)
    high = min(high, low + floor(task.practice.value("fastener_most")))
    return [start + n * spacing for n in range(low, high + 1)]


def _unknown(task: Task, strips: list[tuple[Seat, Board]], drywall: Fraction) -> Laid:
    """As many as there will be studs; where they are is found on the wall, so nothing is drilled beforehand."""
    seat = strips[0][0]
    along = Axis.WIDE if seat.axis is Axis.DEEP else Axis.DEEP
    count = 0
    for strip, _ in strips:
        studs = max(1, floor(strip.area.size(along) / task.practice.value("stud_spacing")))
        count += studs * row_count(strip.area.size(Axis.HIGH), _upwards(task))
    return _laid(task, seat, [], count, drywall)


def _upwards(task: Task) -> Rule:
    """How many screws a stud takes: one for a narrow cleat, more for a tall board."""
    practice = task.practice
    return Rule(practice.value("screw_first"), practice.value("stud_spacing"), practice.value("screw_one_row_up_to"))


def _laid(task: Task, seat: Seat, points: list[Vec], count: int, drywall: Fraction) -> Laid:
    practice = task.practice
    gauge = int(practice.value("wall_screw_gauge"))
    radius = screw_diameter(practice, gauge) / 2
    free, told = _uncovered(task, points, radius)
    middle: Vec = tuple((p + q) / 2 for p, q in zip(seat.area.lo, seat.area.hi))  # type: ignore[assignment]
    passed = [_passed(task, seat, point, radius) for point in free or [middle]]
    through = max(sum(depth for _, _, depth in one) for one in passed)
    need = through + drywall + practice.value("wall_penetration")
    length = min((n for n in practice.choices("screw_lengths") if n >= need), default=None)
    if length is None:
        longest = max(practice.choices("screw_lengths"))
        return wrong(problems.none_long_enough(task.ground, task.method, task.a, through, longest, True))
    also = tuple(path for path in task.layers if any(path == other for one in passed for other, _, _ in one))
    held = Fastening(
        task.contact.id, task.joint.id, "screws", len(free) or count, gauge, length, None, None, seat.a,
        seat.face_a.opposite, area(task.contact), also,
    )  # fmt: skip
    bores, ways = _drilled(task, seat, passed if free else [], named("screws", gauge, length, None), radius)
    return Laid(held, bores, ways, told)


def _uncovered(task: Task, points: list[Vec], radius: Fraction) -> tuple[list[Vec], tuple[Diagnostic, ...]]:
    """The points whose heads no board is in front of; all of them, and what there is to say, when that is none."""
    covers = [next(_over(task, point, radius, task.covers), None) for point in points]
    free = [point for point, cover in zip(points, covers) if cover is None]
    if free or not covers or covers[0] is None:
        return free, ()
    return points, (problems.heads_covered(task.method, task.a, task.ground.board(covers[0])),)


def _drilled(
    task: Task, seat: Seat, passed: list[list[Passed]], name: str, radius: Fraction
) -> tuple[tuple[tuple[str, Bore], ...], tuple[Way, ...]]:
    """The clearance holes through all the boards that each screw passes, and the room they take."""
    drill, sign = clearance(task.practice, int(task.practice.value("wall_screw_gauge"))), seat.face_a.sign
    bores, ways = [], []
    for path, head, depth in (hole for one in passed for hole in one):
        end = moved(head, seat.axis, head[seat.axis] + sign * depth)
        bores.append((path, Bore("clearance", seat.face_a.opposite, head, drill, None, None, name, task.contact.id)))
        ways.append(Way(path, head, rod(head, end, radius), "a screw", task.source, task.method.span))
    return tuple(bores), tuple(ways)


def _passed(task: Task, seat: Seat, point: Vec, radius: Fraction) -> list[Passed]:
    """The boards that a screw at `point` goes through, each with where it enters and how thick it is there."""
    found = []
    for path in (seat.a, *_over(task, point, radius, task.layers)):
        solid = task.ground.solids[path]
        start = point if path == seat.a else moved(point, seat.axis, solid.box.face(seat.face_a))
        depth = solid.depth_at(start, seat.face_a)
        found.append((path, moved(start, seat.axis, start[seat.axis] - seat.face_a.sign * depth), depth))
    return found


def _over(task: Task, point: Vec, radius: Fraction, boards: Iterable[str]) -> Iterator[str]:
    """Those of the boards that lie over the hole at `point`, if only in part."""
    axis = task.end.axis
    for path in boards:
        box: Box = task.ground.solids[path].box
        if all(box.lo[k] < point[k] + radius and point[k] - radius < box.hi[k] for k in range(3) if k != axis):
            yield path
