"""Brads: driven through the thinner piece. Nothing is drilled, and so thin a thing gets out of the way of others."""

from __future__ import annotations

from setout.join import problems
from setout.join.methods.lengths import brad_length
from setout.join.methods.screws import bite_of, depths, no_length
from setout.join.methods.task import Laid, Task, area, crowded, driven_first, grid, in_wood, rule, wrong
from setout.join.model import Fastening
from setout.join.seats import Seat


def lay(task: Task) -> Laid:
    """Brads along the contact."""
    if task.contact.b is None:
        return wrong(problems.not_on_a_wall(task.a, task.method))
    if task.method.through and not task.method.through & {task.contact.a, task.contact.b}:
        return wrong(problems.through_neither(task.joint, task.method, task.a, task.b))
    seat, how = driven_first(task), rule(task, "brad")
    no = crowded(task, seat.area.size(seat.long), how)
    if no is not None:
        return wrong(no)
    if seat.area.size(seat.short) < task.practice.value("brad_narrowest"):
        return Laid(narrow=problems.too_narrow(task.ground, task.method, task.a, task.b, task.contact))
    return _laid(task, seat, in_wood(task, seat, grid(task, seat, how)))


def _laid(task: Task, seat: Seat, points: list) -> Laid:
    through, wood = depths(task, seat, points)
    wanted = through * task.practice.value("brad_length_factor")
    bite = bite_of(task, seat, through, wood)
    length = brad_length(task.practice.choices("brad_lengths"), bite, wanted)
    if length is None:
        return wrong(no_length(task, seat, "brad_lengths", through, wood))
    diameter = task.practice.value("brad_diameter")
    face = seat.face_a.opposite
    held = Fastening(
        task.contact.id, task.joint.id, "brads", len(points), None, length, diameter, None, seat.a, face,
        area(task.contact),
    )  # fmt: skip
    return Laid(held)
