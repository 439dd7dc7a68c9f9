"""What fills an opening, bound: the numbers that `place` checks it by and tells it with."""

from __future__ import annotations

from setout.geometry import Axis, Face
from setout.read import model as r
from setout.resolve.clauses import length
from setout.resolve.context import Context
from setout.resolve.expressions import bound
from setout.resolve.model import BankDef, BoundExpr, DoorDef, ItemDef, ShelvesDef, ThingPath
from setout.resolve.parts import stock_name
from setout.resolve.paths import face_of, thing_at

When = tuple[BoundExpr, ...]
_LEFT = Face(Axis.WIDE, -1)


def bank_def(s: r.DrawersStatement, when: When, ctx: Context) -> BankDef | None:
    opening = _opening(s.opening, ctx)
    heights = tuple(_length(h, ctx) for h in s.heights) if s.mode == "given" else ()
    reveal, overlay, load = (_length(e, ctx) for e in (s.reveal, s.overlay, s.load))
    packers = stock_name(s.packers, ctx) if s.packers is not None else None
    prefix = f"{s.opening.text}.drawer."
    places = [n for n in ctx.scope.things if n.startswith(prefix)]
    for name in (path.text for path in s.slides):
        if name in ctx.world.broken_hardware:
            ctx.spoil()
    if opening is None:
        return None
    dummies = frozenset(int(d.value) for d in s.dummies if isinstance(d, r.Number))
    return BankDef(
        opening=opening,
        places=tuple(sorted(places, key=lambda n: int(n.removeprefix(prefix)))),
        dummies=dummies,
        hardware=tuple(path.text for path in s.slides),
        mode=s.mode,
        style=s.style or ("inset" if s.fronts is not None else ""),
        heights=heights,
        reveal=reveal,
        overlay=overlay,
        load=load,
        packers=packers,
        when=when,
        span=s.span,
        head=s.head,
    )


def door_def(s: r.DoorStatement, when: When, ctx: Context) -> DoorDef | None:
    opening = _opening(s.opening, ctx)
    if opening is None:
        return None
    side = face_of(s.side.text) if s.side is not None else None
    name = f"{s.opening.text}.door"
    parts = (f"{name}.left", f"{name}.right") if s.pair else (name,)
    hinge = s.hinges.text if s.hinges is not None else None
    if hinge in ctx.world.broken_hardware:
        ctx.spoil()
    return DoorDef(opening, parts, hinge, side or _LEFT, s.overlay is not None, when, s.span, s.head)


def shelves_def(s: r.ShelvesStatement, when: When, ctx: Context) -> ShelvesDef | None:
    opening = _opening(s.opening, ctx)
    pitch, inset = _length(s.pitch, ctx), _length(s.inset, ctx)
    start = bound(s.start, ctx) if s.start is not None else None
    pin = s.pin.text if s.pin is not None else None
    if opening is None:
        return None
    return ShelvesDef(opening, f"{s.opening.text}.shelf", pin, pitch, start, inset, when, s.span, s.head)


def item_def(s: r.ItemStatement, when: When, ctx: Context) -> ItemDef | None:
    opening = _opening(s.opening, ctx)
    sizes = [length(e, ctx) for e in s.sizes]
    clear = _length(s.clear, ctx)
    if opening is None or any(x is None for x in sizes):
        return None
    wide, deep, high = sizes
    return ItemDef(s.title.value, (wide, high, deep), opening, clear, when, s.span)  # type: ignore[arg-type]


def _opening(path: r.Path, ctx: Context) -> ThingPath | None:
    thing = thing_at(path, ctx)
    return thing.path if thing is not None else None


def _length(expr: r.Expr | None, ctx: Context) -> BoundExpr | None:
    return length(expr, ctx) if expr is not None else None
