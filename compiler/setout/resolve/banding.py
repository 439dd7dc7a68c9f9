"""Edge banding and loads: what a part says of its edges and of what will stand on it."""

from __future__ import annotations

from setout.geometry import Axis, Face
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.clauses import length
from setout.resolve.context import Context
from setout.resolve.joints import hardware_named
from setout.resolve.model import BandDef, BoundExpr
from setout.resolve.paths import face_of


def bands_bound(part: r.PartStatement, thick: Axis | None, ctx: Context) -> tuple[BandDef, ...]:
    """One BandDef an edge. `thick`: the axis of a panel's thickness, whose two faces can't be banded."""
    made: dict[Face, BandDef] = {}
    for clause in part.bands:
        edging = _edging(clause, ctx)
        for word in clause.faces:
            face = face_of(word.text)
            if face is None:
                continue
            if face.axis == thick:
                ctx.say(problems.band_on_broad_face(word, part.name.text))
            elif face in made:
                ctx.say(problems.said_twice(f"band {word.text}", word.span, made[face].span))
            elif edging is not None:
                made[face] = BandDef(face, edging, clause.added, word.span)
    return tuple(made.values())


def load_bound(part: r.PartStatement, ctx: Context) -> BoundExpr | None:
    """The load as written: the unit is that of the file it stands in."""
    return length(part.load, ctx) if part.load is not None else None


def metric_file(file: str, ctx: Context) -> bool:
    """Whether bare numbers of that file are of a metric unit, and loads and densities with them."""
    return ctx.world.flex[file] not in (1, 12)


def _edging(clause: r.BandClause, ctx: Context) -> str | None:
    name = hardware_named(clause.edging, ctx)
    named = ctx.scope.definition(name) if name is not None else None
    if named is None:
        return None
    if not any(c.key == "edging" for c in named.statement.clauses):
        ctx.say(problems.no_edging(clause.edging, named.span))
        return None
    return name
