"""Notches, cut-outs, holes and mitred ends, set out from the part's own faces, as they lie in its assembly.

What a mirrored part takes over was written for its mirror image: it is worked out as written and then reflected across
the middle of the part itself.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Box, Face, Vec
from setout.place import problems
from setout.place.engine import Poisoned, Work, need
from setout.place.express import above_zero, length, number
from setout.place.found import end
from setout.place.model import Feature, Hole, Mitre, Notch
from setout.place.shapes import Flips, Shape, across, shape_of
from setout.place.site import Scope, Site
from setout.resolve.model import BoundExpr, FaceRef, FeatureDef, Op, SpanDef
from setout.source import Span


@dataclass(frozen=True)
class Bench:
    """The board being worked on."""

    site: Site
    scope: Scope
    shape: Shape
    member: int
    box: Box

    def own(self, axis: Axis, sign: int, span: Span) -> Work:
        return end(self.scope, self.shape.part.name, self.member, axis, sign, span)


def feature(site: Site, scope: Scope, name: str, member: int, index: int) -> Work:
    """Rule: one Feature of a board, in the coordinates of its assembly."""
    shape = shape_of(site, scope, name)
    assert shape is not None
    box = yield from need("box", scope, name, member, span=shape.part.head)
    bench = Bench(site, scope, shape, member, box)
    written = shape.features[index]
    made = yield from _KINDS[written.kind](bench, written)
    return _reflected(made, box, shape.flips)


# --- kinds ----------------------------------------------------------------------------------------------


def _notch(bench: Bench, written: FeatureDef) -> Work:
    box = yield from _taken(bench, written)
    axes = [span.axis for span in written.spans]
    problem = _notch_problem(bench, box, axes)
    if problem:
        bench.site.report(problem(bench.shape.part.name, written.span))
        raise Poisoned
    return Notch("notch", box, written.span)


def _cutout(bench: Bench, written: FeatureDef) -> Work:
    box = yield from _taken(bench, written)
    for axis in dict.fromkeys(span.axis for span in written.spans):
        for sign in (-1, 1):
            if box.face(Face(axis, sign)) == bench.box.face(Face(axis, sign)):
                bench.site.report(problems.cutout_at_edge(bench.shape.part.name, Face(axis, sign), written.span))
                raise Poisoned
    return Notch("cutout", box, written.span)


def _hole(bench: Bench, written: FeatureDef) -> Work:
    site, name = bench.site, bench.shape.part.name
    assert written.size is not None
    diameter = (yield from above_zero(site, bench.scope, written.size, "a hole's diameter", bench.own)).amount
    at = yield from _spot(bench, written, diameter / 2)
    face = written.face or _default_face(bench, at)
    depth = None
    if face is None or face.axis in at:
        raise Poisoned
    if written.depth is not None:
        depth = (yield from above_zero(site, bench.scope, written.depth, "a hole's depth", bench.own)).amount
        if depth >= bench.box.size(face.axis):
            site.report(problems.hole_too_deep(site.style, name, depth, bench.box.size(face.axis), written.depth.span))
            raise Poisoned
    at[face.axis] = bench.box.face(face)
    return Hole(face, (at[Axis.WIDE], at[Axis.HIGH], at[Axis.DEEP]), diameter, depth, written.span)


def _mitre(bench: Bench, written: FeatureDef) -> Work:
    assert written.size is not None and written.face is not None and written.long is not None
    angle = (yield from number(bench.site, bench.scope, written.size)).amount
    if not 0 < angle < 90:
        bench.site.report(problems.no_such_mitre(bench.shape.part.name, angle, written.size.span))
        raise Poisoned
    return Mitre(written.face, angle, written.long, written.span)


_KINDS = {"notch": _notch, "cutout": _cutout, "hole": _hole, "mitre": _mitre}


# --- helpers ----------------------------------------------------------------------------------------------


def _taken(bench: Bench, written: FeatureDef) -> Work:
    """The box taken out: as the spans say, and right through the board on the third axis."""
    box = bench.box
    for span in written.spans:
        low, high = yield from _span(bench, span)
        if low >= high or low < bench.box.lo[span.axis] or high > bench.box.hi[span.axis]:
            bench.site.report(
                problems.feature_off_board(
                    bench.site.style, bench.shape.part.name, written.kind, bench.box, span, low, high
                )
            )
            raise Poisoned
        box = box.with_span(span.axis, low, high)
    return box


def _span(bench: Bench, span: SpanDef) -> Work:
    """Low and high end of a feature's span. An explicit size goes from the face it is measured from into the board."""
    if span.kind == "from_to":
        low = yield from _place(bench, span.a)
        high = yield from _place(bench, span.b)
        return low, high
    long = (yield from _long(bench, span)).amount
    if span.kind == "size_on":
        middle = yield from _centre(bench, span)
        return middle - long / 2, middle + long / 2
    at = yield from _place(bench, span.b)
    return (at - long, at) if span.kind == "size_to" or _from_high(span) else (at, at + long)


def _long(bench: Bench, span: SpanDef) -> Work:
    assert span.a is not None and not isinstance(span.a, tuple)
    return (yield from above_zero(bench.site, bench.scope, span.a, f"how {span.axis.word} it is", bench.own))


def _place(bench: Bench, expr: BoundExpr | tuple | None) -> Work:
    assert expr is not None and not isinstance(expr, tuple)
    return (yield from length(bench.site, bench.scope, expr, bench.own)).amount


def _centre(bench: Bench, span: SpanDef) -> Work:
    if span.b is None or isinstance(span.b, tuple):
        return (bench.box.lo[span.axis] + bench.box.hi[span.axis]) / 2
    return (yield from _place(bench, span.b))


def _from_high(span: SpanDef) -> bool:
    """Whether the span is measured from a high face of the part itself: `deep 3 from back` goes forward from there."""
    assert span.b is not None and not isinstance(span.b, tuple)
    waiting: list[BoundExpr] = [span.b]
    while waiting:
        at = waiting.pop()
        if isinstance(at, FaceRef):
            return at.thing == ("self",) and at.face.sign > 0
        if isinstance(at, Op):
            waiting.extend(reversed(at.args))
    return False


def _notch_problem(bench: Bench, box: Box, axes: list[Axis]):
    def reaches(axis: Axis) -> int:
        return sum(box.face(Face(axis, s)) == bench.box.face(Face(axis, s)) for s in (-1, 1))

    ends = [reaches(axis) for axis in axes]
    if not any(ends):
        return problems.notch_inside
    return problems.notch_right_across if 2 in ends else None


def _spot(bench: Bench, written: FeatureDef, radius: Fraction) -> Work:
    """Where the hole's centre is, on the two axes that the spec gives."""
    at: dict[Axis, Fraction] = {}
    for axis, expr in written.at:
        where = at[axis] = yield from _place(bench, expr)
        low, high = bench.box.lo[axis], bench.box.hi[axis]
        if where - radius < low or where + radius > high:
            bench.site.report(
                problems.hole_off_board(
                    bench.site.style, bench.shape.part.name, axis, where - low, high - low, expr.span
                )
            )
            raise Poisoned
    return at


def _default_face(bench: Bench, at: Mapping[Axis, Fraction]) -> Face | None:
    """A hole right through may be drilled from either side: the good face, else the low one."""
    left = [axis for axis in Axis if axis not in at]
    if len(left) != 1:
        return None
    show = bench.shape.show
    if show is None or show.axis != left[0]:
        return Face(left[0], -1)
    return _flipped(show, bench.shape.flips)  # the feature is reflected afterwards, and this with it


def _reflected(made: Feature, board: Box, flips: Flips) -> Feature:
    if not flips:
        return made
    if isinstance(made, Mitre):
        return Mitre(_flipped(made.end, flips), made.angle, _flipped(made.long, flips), made.span)
    if isinstance(made, Hole):
        return Hole(_flipped(made.face, flips), _point(made.at, board, flips), made.diameter, made.depth, made.span)
    a, b = _point(made.box.lo, board, flips), _point(made.box.hi, board, flips)
    return Notch(made.kind, Box(tuple(map(min, a, b)), tuple(map(max, a, b))), made.span)  # type: ignore[arg-type]


def _flipped(face: Face, flips: Flips) -> Face:
    for axis in flips:
        face = across(face, axis)
    return face


def _point(at: Vec, board: Box, flips: Flips) -> Vec:
    return tuple(board.lo[a] + board.hi[a] - at[a] if a in flips else at[a] for a in Axis)  # type: ignore[return-value]
