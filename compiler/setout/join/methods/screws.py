"""Screws: a clearance hole in the piece driven through, a pilot hole in the other."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Vec
from setout.join import problems
from setout.join.methods import wall_screws
from setout.join.methods.lengths import Bite, holding, screw_length
from setout.join.methods.names import clearance, named, pilot, screw_diameter
from setout.join.methods.task import (
    Laid,
    Task,
    Way,
    area,
    clear,
    driven_first,
    grid,
    in_wood,
    rod,
    rule,
    seen,
    wrong,
)
from setout.join.model import Bore, Fastening
from setout.join.seats import Seat, moved


def lay(task: Task) -> Laid:
    """Screws along the contact. Where a face lies on a face, a grid of them."""
    if task.contact.b is None:
        return wall_screws.lay(task)
    if task.method.studs:
        return wrong(problems.no_studs_here(task.method, task.a, task.b))
    if task.method.through and not task.method.through & {task.contact.a, task.contact.b}:
        return wrong(problems.through_neither(task.joint, task.method, task.a, task.b))
    seat, how = driven_first(task), rule(task, "screw")
    length = seat.area.size(seat.long)
    return clear(task, length, how, lambda rule: _laid(task, seat, in_wood(task, seat, grid(task, seat, rule))))


def _laid(task: Task, seat: Seat, points: list[Vec]) -> Laid:
    through, wood = depths(task, seat, points)
    gauge = int(task.practice.nearest("screw_gauge", through))
    diameter = screw_diameter(task.practice, gauge)
    if seat.area.size(seat.short) < diameter * task.practice.value("screw_strip"):
        return Laid(narrow=problems.too_narrow(task.ground, task.method, task.a, task.b, task.contact))
    length = _length(task, seat, through, wood)
    if length is None:
        return wrong(no_length(task, seat, "screw_lengths", through, wood))
    bite = length - through - seat.gap
    bores, ways = [], []
    name = named("screws", gauge, length, None)
    slip, lead = clearance(task.practice, gauge), pilot(task.practice, gauge)
    for point in points:
        head = outside(task, seat, point)
        start, tip = seat.on_b(point), inside(seat, point, bite)
        bores += [
            (seat.a, Bore("clearance", seat.face_a.opposite, head, slip, None, None, name, task.contact.id)),
            (seat.b, Bore("pilot", seat.face_a.opposite, start, lead, bite, None, name, task.contact.id)),
        ]
        ways += ways_of(task, seat, (surface(task, seat, point), point), (start, tip), diameter / 2, "a screw")
    face = seat.face_a.opposite
    held = Fastening(
        task.contact.id, task.joint.id, "screws", len(points), gauge, length, None, None, seat.a, face,
        area(task.contact),
    )  # fmt: skip
    return Laid(held, tuple(bores), tuple(ways), tuple(seen(task, seat.a, face)))  # type: ignore[arg-type]


def _length(task: Task, seat: Seat, through: Fraction, wood: Fraction) -> Fraction | None:
    best, most = task.practice.value("screw_share_best"), task.practice.value("screw_share_most")
    return screw_length(task.practice.choices("screw_lengths"), bite_of(task, seat, through, wood), best, most)


def bite_of(task: Task, seat: Seat, through: Fraction, wood: Fraction) -> Bite:
    """What a fastener driven through `seat.a` finds; a dado's gap is passed without a bite."""
    practice = task.practice
    return Bite(through + seat.gap, wood - practice.value("screw_tip_margin"), practice.value("screw_share_least"))


def depths(task: Task, seat: Seat, points: list[Vec]) -> tuple[Fraction, Fraction]:
    """The most wood to drive through at any of the points, and the least that lies behind it."""
    assert seat.b is not None
    driven, second = task.ground.solids[seat.a], task.ground.solids[seat.b]
    through = max(driven.depths(points, seat.face_a))
    return through, min(second.depths([seat.on_b(point) for point in points], seat.face_a.opposite))


def no_length(task: Task, seat: Seat, row: str, through: Fraction, wood: Fraction):
    """Why no length on sale will do: it would come out, or none is long enough."""
    assert seat.b is not None
    driven, second = task.ground.board(seat.a), task.ground.board(seat.b)
    long_enough = holding(task.practice.choices(row), bite_of(task, seat, through, wood))
    if long_enough:
        return problems.comes_out(task.ground, task.joint, task.method, driven, second, through, wood, min(long_enough))
    return problems.none_long_enough(task.ground, task.method, driven, through, max(task.practice.choices(row)))


def outside(task: Task, seat: Seat, point: Vec) -> Vec:
    """Where a fastener through `point` starts, on the far side of the board it is driven through."""
    depth = task.ground.solids[seat.a].depth_at(point, seat.face_a)
    return moved(point, seat.axis, point[seat.axis] - seat.face_a.sign * depth)


def surface(task: Task, seat: Seat, point: Vec) -> Vec:
    """The same on the board's own far face, whatever is milled there: what it passes on the way is hit."""
    return moved(point, seat.axis, task.ground.solids[seat.a].box.face(seat.face_a.opposite))


def inside(seat: Seat, point: Vec, bite: Fraction) -> Vec:
    """Where its tip ends up."""
    return moved(point, seat.axis, seat.plane_b + seat.face_a.sign * bite)


def ways_of(
    task: Task, seat: Seat, first: tuple[Vec, Vec], second: tuple[Vec, Vec], radius: Fraction, what: str
) -> list[Way]:
    """The room a straight fastener takes up in both boards."""
    assert seat.b is not None
    return [
        Way(board, ends[0], rod(*ends, radius), what, task.source, task.method.span)
        for board, ends in ((seat.a, first), (seat.b, second))
    ]
