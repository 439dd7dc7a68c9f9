"""For each axis of a thing, the facts that settle it: two of low end, high end, middle, length, or more that agree."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from setout.geometry import Axis
from setout.place import amounts, problems
from setout.place.claims import Claim, having, lifted, position_claim, span_claims, whole
from setout.place.engine import Work, need
from setout.place.found import assembly_size, end
from setout.place.rows import in_row
from setout.place.shapes import Shape, mirrored, repeat_axis, repeat_of, shape_of
from setout.place.site import Scope, Site
from setout.resolve.model import OpeningDef, PartDef, PlaceDef
from setout.source import Span

PAIRS = ({"lo", "hi"}, {"lo", "size"}, {"hi", "size"}, {"mid", "size"})


@dataclass(frozen=True)
class Extent:
    """The claims that settle one axis, by what they are about."""

    claims: dict[str, Claim]
    span: Span

    @property
    def rule(self) -> str:
        return self.claims["lo"].rule if "lo" in self.claims else ""


def extent(site: Site, scope: Scope, name: str, axis: Axis) -> Extent | None:
    """What settles that axis of the thing, or None when the spec doesn't, which is then reported."""
    key = ("extent", name, axis)
    if key not in scope.cache:
        scope.cache[key] = _extent(site, scope, name, axis)
    return scope.cache[key]


def _extent(site: Site, scope: Scope, name: str, axis: Axis) -> Extent | None:
    thing = scope.things[name]
    said = _said(site, scope, name, axis)
    if isinstance(thing, OpeningDef):
        return _stretching(site, scope, name, axis, said)
    if isinstance(thing, PlaceDef):
        return _placed(site, scope, thing, axis, said)
    shape = shape_of(site, scope, name)
    if shape is None or shape.thick is None:
        return None
    return _part(site, scope, shape, axis, said)


# --- what is said -----------------------------------------------------------------------------------------


def _said(site: Site, scope: Scope, name: str, axis: Axis) -> tuple[Claim, ...]:
    """The thing's own claims about the axis."""
    thing = scope.things[name]
    claims = [c for s in thing.spans if s.axis == axis for c in span_claims(site, scope, name, s)]
    for at in getattr(thing, "positions", ()):
        if (at.face.axis if at.face else at.axis) == axis:
            claims.append(position_claim(site, scope, at, axis))
    return tuple(claims)


# --- what follows for each kind of thing --------------------------------------------------------------------


def _part(site: Site, scope: Scope, shape: Shape, axis: Axis, said: tuple[Claim, ...]) -> Extent | None:
    name = shape.part.name
    fixed = _fixed(scope, shape, axis)
    image = mirrored(scope, name)
    own_row = shape.part.repeat is not None or image is None
    if repeat_axis(scope, name) == axis and own_row:
        size = fixed or _own_size(scope, image, axis, said)
        return _row(site, scope, name, axis, said, size)
    if image is not None:
        return _mirror(site, scope, shape, image, axis, said, fixed)
    if fixed is not None:
        return _set(site, scope, name, axis, said, fixed)
    return _stretching(site, scope, name, axis, said)


def _fixed(scope: Scope, shape: Shape, axis: Axis) -> Claim | None:
    """The length that the stock gives on an axis: its thickness, and across the run of a stick its width."""
    if axis == shape.thick:
        return _thickness(shape)
    if axis == shape.broad:
        return Claim("size", lambda _: need("width", scope, shape.part.name, span=shape.part.head), shape.part.head)
    return None


def _thickness(shape: Shape) -> Claim:
    def work(_: int) -> Work:
        return amounts.rule(f"thickness of {shape.stock.name}", shape.stock.thick, shape.stock.span)
        yield

    return Claim("size", work, shape.part.head)


def _set(
    site: Site, scope: Scope, name: str, axis: Axis, said: tuple[Claim, ...], size: Claim, what: str = ""
) -> Extent | None:
    """A thing whose length is settled and that wants one position."""
    thing = scope.things[name]
    assert not isinstance(thing, OpeningDef)
    extra = having(said, "size") or said[1:]
    if extra:
        site.report(problems.size_is_settled(name, axis, extra[0].span, thing.head, what or "its stock"))
        return None
    at = said or having(_default(site, scope, name, axis), "lo", "hi", "mid")
    if len(at) != 1:
        kind = "place" if isinstance(thing, PlaceDef) else "stick" if _is_stick(site, scope, name) else "panel"
        site.report(problems.no_position(name, axis, thing.head, kind))
        return None
    return _settled((*at, size), thing.head)


def _stretching(site: Site, scope: Scope, name: str, axis: Axis, said: tuple[Claim, ...]) -> Extent | None:
    """A thing that fills what it isn't told to leave free."""
    thing = scope.things[name]
    at = thing.head if isinstance(thing, PartDef) else thing.span
    default = _default(site, scope, name, axis)
    whats = {c.what for c in said}
    if not said:
        return _settled(default if _enough(default) else _merged(default, whole(site, scope, axis, at)), at)
    if _enough(said):
        return _settled(said, at)
    if len(said) > 1:
        site.report(problems.said_twice(name, axis, said[0].span, said[1].span))
        return None
    ends = having(default, "lo", "hi", "mid")
    if whats == {"size"}:
        if len(ends) == 1:
            return _settled((*said, *ends), at)
        site.report(problems.size_without_position(name, axis, said[0].span))
        return None
    rest = having(default, "size") or having(default, "hi" if whats == {"lo"} else "lo")
    if whats == {"mid"} and not having(default, "size"):
        site.report(problems.middle_without_size(name, axis, said[0].span))
        return None
    rest = rest or having(whole(site, scope, axis, at), "hi" if whats == {"lo"} else "lo")
    return _settled((*said, *rest), at)


def _mirror(
    site: Site,
    scope: Scope,
    shape: Shape,
    image: tuple[PartDef, Axis],
    axis: Axis,
    said: tuple[Claim, ...],
    fixed: Claim | None,
) -> Extent | None:
    name, head = shape.part.name, shape.part.head
    if not said:
        claims = _reflected(site, scope, image, axis, head)
        return _settled((*claims[:2], fixed or claims[2]), head)
    if repeat_axis(scope, name) == axis:
        repeat = repeat_of(scope, name)
        assert repeat is not None
        site.report(problems.said_twice(name, axis, said[0].span, repeat.span))
        return None
    if fixed is not None:
        return _set(site, scope, name, axis, said, fixed)
    if len(said) == 1 and said[0].what != "size":
        return _settled((*said, _own_size(scope, image, axis, ())), head)  # type: ignore[arg-type]
    return _stretching(site, scope, name, axis, said)


def _reflected(site: Site, scope: Scope, image: tuple[PartDef, Axis], axis: Axis, at: Span) -> tuple[Claim, ...]:
    """The ends of the mirrored part as the mirror shows them."""
    other, across = image
    words = f"{other.name} mirrored"

    def work(sign: int) -> Callable[[int], Work]:
        def run(member: int) -> Work:
            opposite = repeat_axis(scope, other.name) == axis == across
            if member and opposite:
                member = (yield from need("count", scope, other.name, span=at)) + 1 - member
            turned = -sign if axis == across else sign
            there = yield from end(scope, other.name, member, axis, turned, at)
            if axis != across or sign == 0:
                return amounts.under_rule(words, there, at)
            size = yield from assembly_size(site, scope, axis, at)
            return amounts.under_rule(words, amounts.minus(size, there, at), at)

        return run

    return Claim("lo", work(-1), at), Claim("hi", work(1), at), Claim("size", work(0), at)


def _own_size(scope: Scope, image: tuple[PartDef, Axis] | None, axis: Axis, said: tuple[Claim, ...]) -> Claim | None:
    """The length said outright, or else that of the part mirrored."""
    sizes = having(said, "size")
    if sizes or image is None:
        return sizes[0] if sizes else None
    other = image[0]
    return Claim("size", lambda _: end(scope, other.name, 1, axis, 0, other.head), other.head)


def _placed(site: Site, scope: Scope, place: PlaceDef, axis: Axis, said: tuple[Claim, ...]) -> Extent | None:
    name = place.name
    many = repeat_axis(scope, name) is not None

    def child(member: int) -> Work:
        return need("scope", scope, name, (member or 1) if many else 0, span=place.head)

    def long(member: int) -> Work:
        inner = yield from child(member)
        return (yield from need("size", inner, inner.turn.inner_axis(axis), span=place.head))

    size = Claim("size", long, place.head)
    if repeat_axis(scope, name) == axis:
        return _row(site, scope, name, axis, said, size)
    if axis == Axis.HIGH:
        said = tuple(lifted(c, child) if c.what == "lo" else c for c in said)
    if {c.what for c in said} == {"lo", "hi"} and len(said) == 2:
        return _settled((*said, size), place.head)
    if not said and scope.parent is None and axis not in site.job_sizes:
        origin = whole(site, scope, axis, place.head)[0]
        return _settled((lifted(origin, child) if axis == Axis.HIGH else origin, size), place.head)
    return _set(site, scope, name, axis, said, size, "its assembly")


def _row(site: Site, scope: Scope, name: str, axis: Axis, said: tuple[Claim, ...], size: Claim | None) -> Extent | None:
    repeat = repeat_of(scope, name)
    assert repeat is not None
    if size is None:
        site.report(problems.repeated_without_size(name, axis, repeat.span))
        return None
    extra = [c for c in said if c is not size]
    if extra:
        site.report(problems.said_twice(name, axis, extra[0].span, repeat.span))
        return None
    low = Claim("lo", lambda member: in_row(scope, name, member, repeat.span), repeat.span)
    return _settled((low, size), repeat.span)


# --- helpers --------------------------------------------------------------------------------------------------


def _default(site: Site, scope: Scope, name: str, axis: Axis) -> tuple[Claim, ...]:
    span = scope.body.defaults.get(axis)
    return span_claims(site, scope, name, span) if span is not None else ()


def _enough(claims: Sequence[Claim]) -> bool:
    return len(claims) == 2 and {c.what for c in claims} in PAIRS


def _merged(first: Sequence[Claim], rest: Sequence[Claim]) -> tuple[Claim, ...]:
    """`first`, and of the rest what it takes to settle the axis."""
    if not first:
        return tuple(rest)
    what = {"lo": "hi", "hi": "lo", "size": "lo"}.get(first[0].what, "size")
    return (*first, *having(rest, what))


def _settled(claims: Sequence[Claim], at: Span) -> Extent:
    return Extent({c.what: c for c in claims}, at)


def _is_stick(site: Site, scope: Scope, name: str) -> bool:
    shape = shape_of(site, scope, name)
    return shape is not None and shape.run is not None
