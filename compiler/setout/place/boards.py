"""Rules: a part as the boards it makes, in the job's coordinates."""

from __future__ import annotations

from setout.geometry import Axis, Box, Motion
from setout.place import problems
from setout.place.engine import Ask, Poisoned, Work, need
from setout.place.express import above_zero, number
from setout.place.express import count as counted
from setout.place.found import end, end_key
from setout.place.model import Banding, Board, Feature, Hole, LooseBoard, Mitre, Notch
from setout.place.shapes import Shape, shape_of
from setout.place.site import Scope, Site
from setout.values import Value

MOST_LOAD = 2000  # lb/ft2: more than a bank's vault is built for


def box(site: Site, scope: Scope, name: str, member: int) -> Work:
    """The thing's Box in its own assembly; one that has a length of nothing on some axis has none."""
    thing = scope.things[name]
    at = getattr(thing, "head", thing.span)
    ends: dict[tuple[Axis, int], Value] = {}
    failed = False
    for axis in Axis:
        for sign in (0, -1, 1):
            # Whatever fails, the others are asked too, so that every axis that can't be settled is told.
            got = yield Ask(end_key(scope, name, member, axis, sign), at)
            failed = failed or got is None
            ends[axis, sign] = got
    if failed:
        raise Poisoned
    low, high = (tuple(ends[axis, sign].amount for axis in Axis) for sign in (-1, 1))
    return Box(low, high)  # type: ignore[arg-type]


def board(site: Site, scope: Scope, name: str, member: int) -> Work:
    """The Board that a part, or one member of a repeat, makes."""
    own = yield from need("box", scope, name, member)
    shape = shape_of(site, scope, name)
    assert shape is not None and shape.thick is not None
    to: Motion = yield from need("motion", scope)
    sizes = []
    for axis in Axis:
        sizes.append((yield from end(scope, name, member, axis, 0, shape.part.head)))
    lows = []
    for axis in Axis:
        lows.append((yield from end(scope, name, member, axis, -1, shape.part.head)))
    ordered = [sizes[to.to.index(axis)] for axis in Axis]
    made = []
    for i in range(len(shape.features)):
        got = yield Ask(("feature", scope, name, member, i), shape.part.head)
        if got is not None:
            made.append(_moved(got, to))
    grain = grain_of(shape, own)
    return Board(
        path=scope.path_of(name, member),
        name=f"{name}.{member}" if member else name,
        owner=scope.path,
        definition=f"{scope.definition}.{name}" if scope.definition else name,
        stock=shape.stock,
        box=to.box(own),
        thick=to.axis(shape.thick),
        run=to.axis(shape.run) if shape.run is not None else None,
        grain=to.axis(grain) if isinstance(grain, Axis) else grain,
        show=to.face(shape.show) if shape.show else None,
        proud=frozenset(to.face(face) for face in shape.proud),
        features=tuple(made),
        why=(ordered[0].trace, ordered[1].trace, ordered[2].trace),
        held=(ordered[0].held, ordered[1].held, ordered[2].held),
        span=shape.part.span,
        head=shape.part.head,
        where=tuple(low.trace for low in lows),
        sequence=scope.path_of(name) if shape.sequence and member else None,
        bands=_bands(site, shape, to),
        load=(yield from _load(site, scope, shape)),
    )


def loose(site: Site, scope: Scope, name: str) -> Work:
    """The LooseBoard of a part given by its size and count alone."""
    shape = shape_of(site, scope, name)
    if shape is None:
        raise Poisoned
    part, stock = shape.part, shape.stock
    long = yield from above_zero(site, scope, part.loose[0], f"the length of `{name}`")
    wide = None
    if len(part.loose) > 1:
        wide = yield from above_zero(site, scope, part.loose[1], f"the width of `{name}`")
    elif part.rip is not None or stock.kind == "stick":
        wide = yield from need("width", scope, name)
    if wide is None:
        raise Poisoned
    if stock.kind == "stick" and wide.amount > stock.short:
        site.report(problems.rip_too_wide(site.style, name, wide.amount, stock, part.loose[-1].span))
        raise Poisoned
    count = 1 if part.count is None else (yield from counted(site, scope, part.count))
    return LooseBoard(
        path=scope.path_of(name),
        name=name,
        owner=scope.path,
        definition=f"{scope.definition}.{name}" if scope.definition else name,
        stock=stock,
        length=long.amount,
        width=wide.amount,
        count=count,
        grain=_loose_grain(shape),
        why=(long.trace, wide.trace),
        held=(long.held, wide.held),
        span=part.span,
    )


def grain_of(shape: Shape, own: Box) -> Axis | str | None:
    """The axis the grain runs along in the part's own assembly, unsaid: its longer side."""
    if shape.run is not None:
        return shape.run
    if shape.stock.grain is None or shape.grain == "any":
        return shape.grain if shape.stock.grain else None
    if isinstance(shape.grain, Axis):
        return shape.grain
    return max((axis for axis in Axis if axis != shape.thick), key=lambda axis: (own.size(axis), -axis))


# --- helpers ----------------------------------------------------------------------------------------------


def _bands(site: Site, shape: Shape, to: Motion) -> tuple[Banding, ...]:
    hardware = site.project.hardware
    made = (Banding(to.face(b.face), hardware[b.edging], b.added) for b in shape.bands if b.edging in hardware)
    return tuple(sorted(made, key=lambda band: band.face))


def _load(site: Site, scope: Scope, shape: Shape) -> Work:
    if shape.load is None:
        return None
    expr, unit = shape.load
    value = yield from number(site, scope, expr)
    if not 0 <= value.amount * unit <= MOST_LOAD:
        site.report(problems.odd_load(shape.part.name, expr.span))
        raise Poisoned
    return value.amount * unit


def _loose_grain(shape: Shape) -> str | None:
    """Along the first number, as lists of boards have it: a door's rail may be shorter than it is wide."""
    if shape.stock.kind == "stick":
        return "length"
    if shape.stock.grain is None:
        return None
    if shape.grain == "any":
        return "any"
    return "length"


def _moved(made: Feature, to: Motion) -> Feature:
    if isinstance(made, Notch):
        return Notch(made.kind, to.box(made.box), made.span)
    if isinstance(made, Hole):
        return Hole(to.face(made.face), to.point(made.at), made.diameter, made.depth, made.span)
    return Mitre(to.face(made.end), made.angle, to.face(made.long), made.span)
