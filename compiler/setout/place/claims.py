"""What a spec says about one axis of a thing, taken apart: its low end, its high end, its middle, how long it is."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from setout.geometry import Axis, Face
from setout.place import amounts
from setout.place.engine import Work, need
from setout.place.express import above_zero, length
from setout.place.found import assembly_size, face_of, find_one, size_of
from setout.place.site import Scope, Site
from setout.resolve.model import BoundExpr, PositionDef, SpanDef, ThingPath
from setout.source import Span
from setout.values import Value


@dataclass(frozen=True)
class Claim:
    """One fact about an axis. `what` is lo, hi, mid or size; `work` leads to its Value, given a member's number.

    `rule` names the rule of a claim that comes in a pair, for the trace of the size between the two.
    """

    what: str
    work: Callable[[int], Work]
    span: Span
    rule: str = ""


def span_claims(site: Site, scope: Scope, name: str, span: SpanDef) -> tuple[Claim, ...]:
    """The claims that a span clause makes on its axis."""
    if span.kind in ("between", "over"):
        return _pair(site, scope, span)
    claims = []
    for what, target in _targets(span):
        claims.append(Claim(what, _work(site, scope, name, span, what, target), span.span))
    return tuple(claims)


def position_claim(site: Site, scope: Scope, at: PositionDef, axis: Axis) -> Claim:
    """The claim that a position makes on `axis`."""
    if at.face is None:
        return Claim("mid", lambda _: _middle(site, scope, at.target, axis, at.span), at.span)
    face = at.face
    return Claim("hi" if face.sign > 0 else "lo", lambda _: _stand(site, scope, at.target, face, at.span), at.span)


def whole(site: Site, scope: Scope, axis: Axis, at: Span) -> tuple[Claim, ...]:
    """The claims of what fills its assembly."""

    def none(_: int) -> Work:
        return amounts.zero(Face(axis, -1).word, at)
        yield

    def full(_: int) -> Work:
        return assembly_size(site, scope, axis, at)

    return Claim("lo", none, at), Claim("hi", full, at), Claim("size", full, at)


def having(claims: Iterable[Claim], *whats: str) -> tuple[Claim, ...]:
    return tuple(c for c in claims if c.what in whats)


# --- helpers --------------------------------------------------------------------------------------------


def _targets(span: SpanDef) -> tuple[tuple[str, BoundExpr | ThingPath | None], ...]:
    return {
        "from_to": (("lo", span.a), ("hi", span.b)),
        "size": (("size", span.a),),
        "size_from": (("size", span.a), ("lo", span.b)),
        "size_to": (("size", span.a), ("hi", span.b)),
        "size_on": (("size", span.a), ("mid", span.b)),
        "from": (("lo", span.b),),
        "to": (("hi", span.b),),
    }[span.kind]


def _work(
    site: Site, scope: Scope, name: str, span: SpanDef, what: str, target: BoundExpr | ThingPath | None
) -> Callable[[int], Work]:
    if what == "mid":
        return lambda _: _middle(site, scope, target, span.axis, span.span)
    assert target is not None and not isinstance(target, tuple)
    if what == "size":
        return lambda _: above_zero(site, scope, target, f"how {span.axis.word} `{name}` is")
    return lambda _: length(site, scope, target)


def _pair(site: Site, scope: Scope, span: SpanDef) -> tuple[Claim, ...]:
    assert isinstance(span.a, tuple) and isinstance(span.b, tuple)
    key = ("gap" if span.kind == "between" else "reach", scope, span.a, span.b, span.axis, span.span)
    inwards = 1 if span.kind == "between" else -1
    words = f"{'gap between' if inwards > 0 else 'over'} {'.'.join(span.a)} and {'.'.join(span.b)}"

    def work(which: int) -> Callable[[int], Work]:
        def run(_: int) -> Work:
            ends: tuple[Value, Value] = yield from need(*key, span=span.span)
            if span.extra is None:
                return ends[which]
            extra = yield from length(site, scope, span.extra)
            add = amounts.plus if (which == 0) == (inwards > 0) else amounts.minus
            return add(ends[which], extra, span.span)

        return run

    return Claim("lo", work(0), span.span, words), Claim("hi", work(1), span.span, words)


def _stand(site: Site, scope: Scope, target: BoundExpr | ThingPath | None, face: Face, at: Span) -> Work:
    """Where a face stands that is put at an expression, or at the thing it comes up against."""
    if isinstance(target, tuple):
        found = yield from find_one(site, scope, target, at)
        return (yield from face_of(site, found, face.opposite, at))
    assert target is not None
    return (yield from length(site, scope, target))


def _middle(site: Site, scope: Scope, target: BoundExpr | ThingPath | None, axis: Axis, at: Span) -> Work:
    if target is not None and not isinstance(target, tuple):
        return (yield from length(site, scope, target))
    found = yield from find_one(site, scope, target or (), at)
    low = yield from face_of(site, found, Face(axis, -1), at)
    long = yield from size_of(site, found, axis, at)
    name = ".".join(target) if target else scope.definition or "the job"
    return amounts.under_rule(f"middle of {name}", amounts.plus(low, amounts.shared(long, 2, at), at), at)


def lifted(claim: Claim, child: Callable[[int], Work]) -> Claim:
    """The claim of a low end that stands on feet."""

    def work(member: int) -> Work:
        at = yield from claim.work(member)
        inner = yield from child(member)
        by = yield from need("raised", inner, span=claim.span)
        return amounts.plus(at, by, claim.span)

    return replace(claim, work=work)
