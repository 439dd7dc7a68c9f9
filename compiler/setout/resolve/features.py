"""Notches, cut-outs, holes and mitres. Face words in them are the part's own faces."""

from __future__ import annotations

from setout.geometry import Axis
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.clauses import length, middle_of_part, span_def
from setout.resolve.context import Context
from setout.resolve.expressions import bound
from setout.resolve.model import BoundExpr, FeatureDef, SpanDef
from setout.resolve.paths import axis_of, face_of


def feature_def(feature: r.Feature, run: Axis | None, thick: Axis | None, ctx: Context) -> FeatureDef | None:
    """A feature bound, of a part with that run and thickness axis (None where unknown)."""
    ctx.own = True
    try:
        made = _BY_KIND[feature.kind](feature, run, thick, ctx)
    finally:
        ctx.own = False
    return made


def _cut(feature: r.Feature, run: Axis | None, thick: Axis | None, ctx: Context) -> FeatureDef | None:
    """A notch or a cut-out: two spans across the board; it goes through the thickness."""
    spans = tuple(_centred(s) for c in feature.spans if (s := span_def(c, ctx)) is not None)
    _check_axes(feature, [s.axis for s in spans], thick, ctx)
    for span in spans:
        if span.kind in ("size", "from", "to"):
            ctx.say(problems.feature_unplaced(feature.kind, span.span, span.axis))
    return FeatureDef(feature.kind, spans, (), None, None, None, None, feature.span)


def _centred(span: SpanDef) -> SpanDef:
    """Centred without more is centred on the part itself."""
    if span.kind != "size_on" or span.b is not None:
        return span
    return SpanDef(span.axis, span.kind, span.a, middle_of_part(span.axis, span.span), span.extra, span.span)


def _hole(feature: r.Feature, run: Axis | None, thick: Axis | None, ctx: Context) -> FeatureDef | None:
    at: list[tuple[Axis, BoundExpr]] = []
    for name, expr in feature.at:
        axis = axis_of(name.text)
        place = bound(expr, ctx) if axis is not None else None
        if axis is not None and place is not None:
            at.append((axis, place))
    face = face_of(feature.face.text) if feature.face is not None else None
    drilled = face.axis if face is not None else thick
    _check_axes(feature, [axis for axis, _ in at], drilled, ctx)
    size = length(feature.size, ctx) if feature.size is not None else None
    depth = length(feature.depth, ctx) if feature.depth is not None else None
    return FeatureDef("hole", (), tuple(at), size, depth, face, None, feature.span)


def _check_axes(feature: r.Feature, axes: list[Axis], through: Axis | None, ctx: Context) -> None:
    """The two axes are the ones across the direction in which it is cut."""
    if len(axes) < 2:
        return
    if axes[0] == axes[1]:
        ctx.say(problems.feature_axis_twice(feature, axes[0]))
    elif through in axes:
        ctx.say(problems.feature_along_cut(feature, through, [a for a in Axis if a != through]))


def _mitre(feature: r.Feature, run: Axis | None, thick: Axis | None, ctx: Context) -> FeatureDef | None:
    end = face_of(feature.face.text) if feature.face is not None else None
    long = face_of(feature.long.text) if feature.long is not None else None
    if end is None or long is None:
        return None
    if end.axis == long.axis or end.axis == thick or (run is not None and end.axis != run):
        ctx.say(problems.mitre_faces(feature, end, long, run))
    ctx.own = False  # an angle is a plain number, and measured from nothing
    angle = bound(feature.size, ctx) if feature.size is not None else None
    return FeatureDef("mitre", (), (), angle, None, end, long, feature.span)


_BY_KIND = {"notch": _cut, "cutout": _cut, "hole": _hole, "mitre": _mitre}
