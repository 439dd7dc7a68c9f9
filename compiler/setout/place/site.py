"""What one evaluation works on: the project, the values of its measures, the assemblies opened so far, the findings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from setout.diagnostics import Diagnostic
from setout.geometry import Axis, Face
from setout.place.engine import Engine
from setout.resolve.model import AssemblyDef, Body, BoundExpr, OpeningDef, PartDef, PlaceDef, Project
from setout.source import Span
from setout.units import Style

ONCE = ("rod250", "rod269")
"""Codes of which one finding is enough: mending it mends the rest, or brings it to light."""

Thing = PartDef | PlaceDef | OpeningDef


@dataclass(frozen=True)
class Turn:
    """How an assembly's own axes lie in the one that holds it: axis i along `to[i]`, backwards where `sign[i]` < 0."""

    to: tuple[Axis, Axis, Axis] = (Axis.WIDE, Axis.HIGH, Axis.DEEP)
    sign: tuple[int, int, int] = (1, 1, 1)

    def outer(self, face: Face) -> Face:
        return Face(self.to[face.axis], face.sign * self.sign[face.axis])

    def inner(self, face: Face) -> Face:
        axis = self.inner_axis(face.axis)
        return Face(axis, face.sign * self.sign[axis])

    def inner_axis(self, axis: Axis) -> Axis:
        return Axis(self.to.index(axis))


@dataclass(eq=False)
class Scope:
    """One placed assembly at work, or the job itself (`parent` None). Equal only to itself."""

    path: str
    definition: str
    title: str
    body: Body
    parameters: Mapping[str, BoundExpr | str | None]
    parent: Scope | None
    place: PlaceDef | None
    member: int
    turn: Turn
    depth: int
    span: Span
    sound: bool = field(init=False, default=True)  # it has its place, and a right one
    things: dict[str, Thing] = field(init=False)
    cache: dict[Any, Any] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        things: tuple[Thing, ...] = (*self.body.parts, *self.body.places, *self.body.openings)
        self.things = {thing.name: thing for thing in things}

    def path_of(self, name: str, member: int = 0) -> str:
        """The whole path of a thing in it: `left_base.shelf.2`."""
        own = f"{name}.{member}" if member else name
        return f"{self.path}.{own}" if self.path else own

    @property
    def called(self) -> str:
        return f"`{self.path}`" if self.parent else "the job"


class Site:
    """One evaluation under way. `taken` holds the value of every measure; those in `open` are not really known."""

    engine: Engine

    def __init__(self, project: Project, taken: Mapping[str, Fraction], open_measures: frozenset[str]) -> None:
        self.project = project
        self.taken = taken
        self.open = open_measures
        self.style = Style(project.metric, project.mark)
        self.found: dict[tuple[str, Span | None], Diagnostic] = {}
        self.job = Scope("", "", project.title, project.job, {}, None, None, 0, Turn(), 0, _job_span(project))
        room = project.room.sizes if project.room else {}
        self.job_sizes = frozenset(axis for axis in Axis if axis in project.job.size or axis in room)
        self.homes: dict[str, Scope] = {}  # every board's path, with the assembly that holds it, in the order placed
        self.leaves: dict[int, tuple[BoundExpr, ...]] = {}

    def report(self, diagnostic: Diagnostic) -> None:
        """Keeps the first finding of each code at each place: mending the text there mends its copies too."""
        at = diagnostic.label.span if diagnostic.label and diagnostic.code not in ONCE else None
        self.found.setdefault((diagnostic.code, at), diagnostic)

    def has(self, code: str) -> bool:
        return any(found == code for found, _ in self.found)

    def assembly(self, name: str) -> AssemblyDef | None:
        return self.project.assemblies.get(name)


def _job_span(project: Project) -> Span:
    if project.job.size_span:
        return project.job.size_span
    return Span(next(iter(project.sources), ""), 0, 0)
