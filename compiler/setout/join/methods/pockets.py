"""Pocket holes: drilled slanting into the entering board's broad face, coming out of the edge that meets the other."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from itertools import pairwise

from setout.diagnostics import Diagnostic
from setout.geometry import Axis, Box, Face, Vec
from setout.join import problems
from setout.join.layout import Rule, row
from setout.join.methods.names import named, screw_diameter
from setout.join.methods.task import Laid, Task, Way, area, clear, in_wood, rule, seen, wrong
from setout.join.model import Bore, Fastening
from setout.join.seats import moved

_STAIRS = 4  # boxes that stand for one slanting hole when looking for what hits it


def lay(task: Task) -> Laid:
    """Pockets along the contact, at the middle of the entering board's edge."""
    if task.contact.b is None:
        return wrong(problems.not_on_a_wall(task.a, task.method))
    if task.end.broad_a:
        return wrong(problems.pockets_in_a_flat(task.joint, task.method, task.a, task.b))
    face = _face(task)
    if face is None:
        return wrong(problems.pocket_face(task.method, task.a))
    thick = task.a.box.size(task.a.thick)
    if not task.practice.value("pocket_thinnest") <= thick <= task.practice.value("pocket_thickest"):
        return wrong(problems.no_pockets_in(task.ground, task.method, task.a, thick))
    along = Axis(3 - task.end.axis - task.a.thick)
    length, how = task.end.area.size(along), _rule(task)
    if _narrow(task, length):
        return Laid(narrow=problems.too_narrow(task.ground, task.method, task.a, task.b, task.contact))

    def at(rule: Rule) -> Laid:
        points = [_on_edge(task, along, offset) for offset in row(length, rule)]
        return _laid(task, face, thick, in_wood(task, task.end, points))

    return clear(task, length, how, at)


def _rule(task: Task) -> Rule:
    """Two are no longer enough because the contact is short where the spec has said how many."""
    if task.method.every is not None:
        return rule(task, "pocket")
    return rule(task, "pocket", two_up_to=task.practice.value("pocket_two_up_to"))


def _face(task: Task) -> Face | None:
    """The face said; else the one that is not shown. None when it is no broad face, or unsaid and neither is shown."""
    face = task.method.face
    if face is None and task.a.show is not None:
        face = task.a.show.opposite
    return face if face is not None and face.axis == task.a.thick else None


def _laid(task: Task, face: Face, thick: Fraction, points: list[Vec]) -> Laid:
    screw, within = (task.practice.nearest(f"pocket_{name}", thick) for name in ("screw", "seat"))
    bore = task.practice.value("pocket_bore")
    gauge = int(task.practice.value("pocket_gauge"))
    setting = task.practice.nearest("pocket_setting", thick)
    name = named("pockets", gauge, screw, None)
    bores = tuple((task.a.path, _bore(task, face, point, bore, name)) for point in points)
    fastening = Fastening(
        task.contact.id, task.joint.id, "pockets", len(points), gauge, screw, bore, setting, task.a.path, face,
        area(task.contact),
    )  # fmt: skip
    reach = (screw - within) * task.practice.value("pocket_cosine") - task.end.gap
    ways = tuple(_ways(task, face, points, bore, reach))
    told = (*_through(task, points, screw, reach), *seen(task, task.a.path, face))
    return Laid(fastening, bores, ways, told)


def _middle(task: Task) -> Fraction:
    return (task.a.box.lo[task.a.thick] + task.a.box.hi[task.a.thick]) / 2


def _narrow(task: Task, length: Fraction) -> bool:
    across, end = task.a.thick, task.end.area
    met = end.lo[across] < _middle(task) < end.hi[across]
    enough = end.size(across) >= task.practice.value("pocket_narrowest")
    return not (met and enough and length >= task.practice.value("pocket_shortest"))


def _on_edge(task: Task, along: Axis, offset: Fraction) -> Vec:
    """The middle of the edge, `offset` along the contact: where the screw leaves the entering board."""
    point = moved(task.end.area.lo, along, task.end.area.lo[along] + offset)
    return moved(point, task.a.thick, _middle(task))


def _bore(task: Task, face: Face, point: Vec, diameter: Fraction, name: str) -> Bore:
    at = moved(point, task.a.thick, task.a.box.face(face))
    return Bore("pocket", face, at, diameter, None, task.end.face_a, name, task.contact.id)


def _through(task: Task, points: list[Vec], screw: Fraction, reach: Fraction) -> list[Diagnostic]:
    """Whether the screw's tip stays in the receiver, measured at the place where the wood is thinnest."""
    solid = task.ground.solids[task.b.path]
    wood = min(solid.depths([task.end.on_b(point) for point in points], task.end.face_a.opposite))
    if reach >= wood:
        return [problems.pocket_comes_out(task.ground, task.method, task.a, task.b, screw, reach, wood)]
    if wood - reach < task.practice.value("screw_tip_margin"):
        return [problems.pocket_tip_near(task.ground, task.method, task.a, task.b, screw, reach, wood)]
    return []


def _ways(task: Task, face: Face, points: list[Vec], bore: Fraction, reach: Fraction) -> Iterator[Way]:
    """The pockets in the entering board, as far as the end of their long mouths, and the screws' slanting tips in the
    receiver."""
    slope, surface = task.practice.value("pocket_tangent"), task.a.box.face(face)
    out, deep = task.end.face_a, max(reach, Fraction(0))
    beyond = bore / 2 / task.practice.value("pocket_cosine")  # above the face: there the far side of the bit leaves it
    back = out.sign * (task.a.box.size(task.a.thick) / 2 + beyond) / slope
    sink = face.sign * deep * slope
    screw = screw_diameter(task.practice, int(task.practice.value("pocket_gauge"))) / 2
    for point in points:
        lip = moved(moved(point, out.axis, point[out.axis] - back), face.axis, surface + face.sign * beyond)
        start = task.end.on_b(point)
        tip = moved(moved(start, out.axis, start[out.axis] + out.sign * deep), face.axis, start[face.axis] - sink)
        yield _way(task, task.a.path, (point, lip), bore / 2, "a pocket")
        yield _way(task, task.b.path, (start, tip), screw, "a pocket screw")


def _way(task: Task, board: str, ends: tuple[Vec, Vec], radius: Fraction, what: str) -> Way:
    slanting = (*ends, task.end.axis, radius)
    return Way(board, ends[0], _round(*slanting), what, task.source, task.method.span, partial(_stairs, *slanting))


def _stairs(p: Vec, q: Vec, axis: Axis, radius: Fraction) -> list[Box]:
    """A slanting hole as a stair of boxes; `axis` is the one it runs along most."""
    steps: list[Vec] = [tuple(a + (b - a) * n / _STAIRS for a, b in zip(p, q)) for n in range(_STAIRS + 1)]  # type: ignore[misc]
    return [_round(start, end, axis, radius) for start, end in pairwise(steps)]


def _round(p: Vec, q: Vec, axis: Axis, radius: Fraction) -> Box:
    """The box round a stretch of it."""
    ends = [(a, b) if a <= b else (b, a) for a, b in zip(p, q)]
    lo, hi = zip(*((a, b) if k == axis else (a - radius, b + radius) for k, (a, b) in enumerate(ends)))
    return Box(lo, hi)
