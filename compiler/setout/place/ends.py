"""Rules: where a thing's ends are in its own assembly, how long it is between them, how big an assembly is."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis, Face
from setout.place import amounts, problems
from setout.place.engine import Poisoned, Work, need
from setout.place.express import above_zero, condition
from setout.place.extents import Extent, extent
from setout.place.shapes import mirrored, shape_of
from setout.place.site import Scope, Site
from setout.resolve.model import Hardware
from setout.values import Value


def end(site: Site, scope: Scope, name: str, member: int, axis: Axis, sign: int) -> Work:
    """The thing's low end (-1), high end (1) or length (0), as a Value. `member` 0: what all members share."""
    settled = extent(site, scope, name, axis)
    if settled is None:
        raise Poisoned
    direct = settled.claims.get(("size", "hi", "lo")[sign])
    if direct is not None:
        return (yield from direct.work(member))
    ask = ("end", scope, name, member, axis)
    if sign == 0:
        low = yield from need(*ask, -1, span=settled.span)
        high = yield from need(*ask, 1, span=settled.span)
        return _between(site, scope, name, axis, settled, low, high)
    size = yield from need(*ask, 0, span=settled.span)
    if "mid" in settled.claims:
        mid = yield from settled.claims["mid"].work(member)
        half = amounts.shared(size, 2, settled.span)
        return (amounts.plus if sign > 0 else amounts.minus)(mid, half, settled.span)
    other = yield from need(*ask, -sign, span=settled.span)
    return (amounts.plus if sign > 0 else amounts.minus)(other, size, settled.span)


def size(site: Site, scope: Scope, axis: Axis) -> Work:
    """How big an assembly is along one of its own axes; the job is as big as its room unless it says otherwise."""
    said = scope.body.size.get(axis)
    if said is not None:
        value = yield from above_zero(site, scope, said, f"how {axis.word} {scope.called} is")
        return amounts.under_rule(f"{axis.word} of {scope.definition or 'the job'}", value, said.span)
    room = site.project.room
    if scope.parent is None and room is not None and axis in room.sizes:
        return amounts.rule(f"{axis.word} of the room", room.sizes[axis], room.span)
    definition = site.assembly(scope.definition)
    if definition is not None and scope.place is not None:
        missing = [a for a in Axis if a not in scope.body.size]
        site.report(problems.assembly_without_size(definition, missing, scope.place.head))
    raise Poisoned


def width(site: Site, scope: Scope, name: str) -> Work:
    """A stick's width: what its stock has, or what it is ripped to."""
    shape = shape_of(site, scope, name)
    if shape is None:
        raise Poisoned
    stock = shape.stock
    if shape.rip is None:
        return amounts.rule(f"width of {stock.name}", stock.short, stock.span)
    value = yield from above_zero(site, scope, shape.rip, f"the width `{name}` is ripped to")
    if value.amount > stock.short:
        site.report(problems.rip_too_wide(site.style, name, value.amount, stock, shape.rip.span))
        raise Poisoned
    return value


def there(site: Site, scope: Scope, name: str) -> Work:
    """Whether the thing's `when` lets it be, and that of the part it mirrors."""
    for wanted in scope.things[name].when:
        if not (yield from condition(site, scope, wanted)):
            return False
    image = mirrored(scope, name)
    return (yield from need("there", scope, image[0].name, span=image[0].head)) if image else True


def raised(site: Site, scope: Scope) -> Work:
    """By how much an assembly's own feet lift it."""
    best: tuple[Fraction, Hardware | None] = Fraction(0), None
    for i, fit in enumerate(scope.body.fits):
        hardware = site.project.hardware.get(fit.hardware)
        if hardware is None or fit.face != Face(Axis.HIGH, -1) or hardware.raises <= best[0]:
            continue
        if (yield from need("fitted", scope, i, span=fit.span)):
            best = hardware.raises, hardware
    if best[1] is None:
        return Value(Fraction(0), 1, None, amounts.zero("feet").trace)
    return amounts.rule(f"raised by {best[1].name}", best[0], best[1].span)


def _between(site: Site, scope: Scope, name: str, axis: Axis, settled: Extent, low: Value, high: Value) -> Value:
    long = amounts.minus(high, low, settled.span)
    if long.amount <= 0:
        at = settled.claims["lo"].span
        site.report(problems.nothing_left(site.style, scope.path_of(name), axis, low.amount, high.amount, at))
        raise Poisoned
    return amounts.under_rule(settled.rule, long, settled.span) if settled.rule else long
