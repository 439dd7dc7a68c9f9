"""Glue: counted by area, the cheeks of a housing with it."""

from __future__ import annotations

from setout.join import problems
from setout.join.methods.task import Laid, Task, area, wrong
from setout.join.model import Fastening


def lay(task: Task) -> Laid:
    """The glued area of one contact."""
    if task.contact.b is None:
        return wrong(problems.not_on_a_wall(task.a, task.method))
    whole = area(task.contact)
    if task.cut is not None:
        growth = abs(task.end.area.lo[task.end.axis] - task.contact.area.lo[task.end.axis])
        whole += growth * task.end.area.size(task.cut.run) * (1 if task.cut.kind == "rabbet" else 2)
    return Laid(Fastening(task.contact.id, task.joint.id, "glue", 0, None, None, None, None, task.a.path, None, whole))
