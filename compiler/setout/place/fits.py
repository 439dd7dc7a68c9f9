"""Rules: hardware set out on the faces of boards."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis, Box, Face, Motion, Vec
from setout.place import problems
from setout.place.engine import Ask, Poisoned, Work, need
from setout.place.express import above_zero, condition, count
from setout.place.found import Found, find_all
from setout.place.model import Fitting
from setout.place.rows import MOST
from setout.place.site import Scope, Site
from setout.resolve.model import FitDef, Hardware

CORNERS = 4


def fitted(site: Site, scope: Scope, index: int) -> Work:
    """How many pieces a `fit` puts on each board: none where its `when` says no."""
    written = scope.body.fits[index]
    for expr in written.when:
        if not (yield from condition(site, scope, expr)):
            return 0
    return (yield from count(site, scope, written.count))


def fitting(site: Site, scope: Scope, index: int) -> Work:
    """The Fittings of one `fit`, one for each board it names."""
    written = scope.body.fits[index]
    n = yield from need("fitted", scope, index, span=written.span)
    if not n:
        return ()
    hardware = site.project.hardware.get(written.hardware)
    if hardware is None:
        raise Poisoned
    inset = None
    if written.inset is not None:
        inset = (yield from above_zero(site, scope, written.inset, "an inset")).amount
    things: tuple[Found, ...] = yield from find_all(site, scope, written.thing, written.span)
    made: list[Fitting] = []
    for found in things:
        points = yield from _points(site, written, hardware, n, inset, found)
        to = yield from need("motion", found.scope, span=written.span)
        face = to.face(_own_face(written.face, found))
        number = f".{len(made) + 1}" if len(things) > 1 else ""
        ident = f"{scope.path}!{index + 1}{number}"
        made.append(Fitting(ident, scope.path, hardware, n, found.path, face, points, written.span))
    return tuple(made)


# --- layouts --------------------------------------------------------------------------------------------


def _points(site: Site, written: FitDef, hardware: Hardware, n: int, inset: Fraction | None, found: Found) -> Work:
    """Where the pieces sit, in the job's coordinates: () for what is only counted."""
    if written.layout is None:
        return ()
    ask = Ask(("box", found.scope, found.name, found.member), written.span)
    own: Box = yield from need(*ask.key, span=ask.span)
    to: Motion = yield from need("motion", found.scope, span=written.span)
    face = _own_face(written.face, found)
    _check(site, written, hardware, n, inset)
    axes = [axis for axis in Axis if axis != face.axis]
    if written.layout == "corners":
        spread = {axis: _inset(site, hardware, found.path, own, axis, inset, 2, written) for axis in axes}
    else:
        along = _own_axis(written.along, found) if written.along is not None else axes[0]
        spread = {axis: [(own.lo[axis] + own.hi[axis]) / 2] for axis in axes}
        if written.layout == "row":
            spread[along] = _inset(site, hardware, found.path, own, along, inset, n, written)
    at = [_point(own, face, axes, a, b) for a in spread[axes[0]] for b in spread[axes[1]]]
    return tuple(to.point(p) for p in at)


def _check(site: Site, written: FitDef, hardware: Hardware, n: int, inset: Fraction | None) -> None:
    if n > MOST:
        site.report(problems.too_many_members(hardware.name, n, MOST, written.span))
        raise Poisoned
    want = {"corners": CORNERS, "centred": 1}.get(written.layout or "", n)
    if n != want:
        site.report(problems.layout_unlike_count(hardware, n, written.layout or "", want, written.span))
        raise Poisoned
    if written.layout == "corners" and inset is None:
        site.report(problems.inset_missing(hardware, written.span))
        raise Poisoned


def _inset(
    site: Site, hardware: Hardware, path: str, own: Box, axis: Axis, inset: Fraction | None, n: int, written: FitDef
) -> list[Fraction]:
    """`n` places along an axis: the outer ones `inset` from the edges, or all with half a spacing left at the ends."""
    low, size = own.lo[axis], own.size(axis)
    if inset is not None and 2 * inset > size:
        site.report(problems.inset_too_large(site.style, hardware, path, axis, inset, size, written.span))
        raise Poisoned
    if n == 1:
        return [low + size / 2]
    if inset is None:
        return [low + size * (2 * i + 1) / (2 * n) for i in range(n)]
    return [low + inset + (size - 2 * inset) * i / (n - 1) for i in range(n)]


def _point(own: Box, face: Face, axes: list[Axis], a: Fraction, b: Fraction) -> Vec:
    at = {face.axis: own.face(face), axes[0]: a, axes[1]: b}
    return at[Axis.WIDE], at[Axis.HIGH], at[Axis.DEEP]


def _own_face(face: Face, found: Found) -> Face:
    """A face named where the `fit` stands, in the directions of the assembly that holds the board."""
    for inner in found.inner:
        face = inner.turn.inner(face)
    return face


def _own_axis(axis: Axis, found: Found) -> Axis:
    return _own_face(Face(axis, 1), found).axis
