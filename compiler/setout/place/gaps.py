"""Two things and what lies between them, or from the one's far face to the other's."""

from __future__ import annotations

from setout.geometry import Axis, Face
from setout.place import problems
from setout.place.engine import Poisoned, Work
from setout.place.found import Found, face_of, find_one
from setout.place.site import Scope, Site
from setout.resolve.model import ThingPath
from setout.source import Span
from setout.values import named


def gap(site: Site, scope: Scope, a: ThingPath, b: ThingPath, axis: Axis, at: Span) -> Work:
    """Rule: the two faces (low, high) of the gap between two things, in whichever order they stand."""
    first, second = yield from _both(site, scope, a, b, at)
    low = yield from _edge(site, scope, first, axis, 1, at)
    high = yield from _edge(site, scope, second, axis, -1, at)
    if low.amount < high.amount:
        return low, high
    other_low = yield from _edge(site, scope, second, axis, 1, at)
    other_high = yield from _edge(site, scope, first, axis, -1, at)
    if other_low.amount < other_high.amount:
        return other_low, other_high
    over = min(low.amount - high.amount, other_low.amount - other_high.amount)
    site.report(problems.no_gap(site.style, ".".join(a), ".".join(b), axis, over, at))
    raise Poisoned


def reach(site: Site, scope: Scope, a: ThingPath, b: ThingPath, axis: Axis, at: Span) -> Work:
    """Rule: the outermost faces (low, high) of two things."""
    first, second = yield from _both(site, scope, a, b, at)
    edges = []
    for sign, outer in ((-1, min), (1, max)):
        one = yield from _edge(site, scope, first, axis, sign, at)
        two = yield from _edge(site, scope, second, axis, sign, at)
        edges.append(outer((one, two), key=lambda value: value.amount))
    return tuple(edges)


def _both(site: Site, scope: Scope, a: ThingPath, b: ThingPath, at: Span) -> Work:
    first = yield from find_one(site, scope, a, at)
    second = yield from find_one(site, scope, b, at)
    if first == second:
        site.report(problems.same_thing(".".join(a), at))
        raise Poisoned
    return first, second


def _edge(site: Site, scope: Scope, thing: Found, axis: Axis, sign: int, at: Span) -> Work:
    face = Face(axis, sign)
    value = yield from face_of(site, thing, face, at)
    return named(value, f"{thing.path_from(scope)}.{face.word}", at)
