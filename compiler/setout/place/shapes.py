"""What a part is made of and how it lies, its mirrors followed back to the part that says so. Nothing is measured."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from functools import reduce

from setout.geometry import Axis, Face
from setout.place import problems
from setout.place.site import Scope, Site
from setout.resolve.model import BandDef, BoundExpr, FeatureDef, PartDef, PlaceDef, RepeatDef, Stock

Flips = tuple[Axis, ...]
"""Axes across which something is reflected, each once."""


@dataclass(frozen=True)
class Shape:
    """A part with what it takes over from the part it mirrors.

    `thick` is None for a loose part. `run` and `broad` (the axis of its width) are set for a stick. The features are
    written for a board reflected across `flips`.
    """

    part: PartDef
    stock: Stock
    thick: Axis | None
    run: Axis | None
    broad: Axis | None
    grain: Axis | str | None
    show: Face | None
    proud: frozenset[Face]
    rip: BoundExpr | None
    features: tuple[FeatureDef, ...]
    flips: Flips
    sequence: bool = False
    bands: tuple[BandDef, ...] = ()
    load: tuple[BoundExpr, Fraction] | None = None  # with how much of lb/ft2 its unit is


def shape_of(site: Site, scope: Scope, name: str) -> Shape | None:
    """The part's shape, or None when the spec doesn't settle it, which is then reported."""
    if ("shape", name) not in scope.cache:
        scope.cache["shape", name] = _shape(site, scope, name)
    return scope.cache["shape", name]


def stock_named(site: Site, scope: Scope, name: str) -> Stock | None:
    """The stock of that name, or the one given to the parameter of that name."""
    at: Scope | None = scope
    for _ in range(1000):
        if at is None or name not in at.parameters:
            return site.project.stocks.get(name)
        given: BoundExpr | str | None = at.parameters[name]
        if at.place is not None and name in at.place.args:
            given, at = at.place.args[name], at.parent
        if not isinstance(given, str):
            return None
        name = given
    return None


def mirrored(scope: Scope, name: str) -> tuple[PartDef, Axis] | None:
    """The part that `name` is a mirror image of, and across which axis."""
    part = scope.things.get(name)
    if not isinstance(part, PartDef) or part.mirror is None:
        return None
    other = scope.things.get(part.mirror[0])
    return (other, part.mirror[1]) if isinstance(other, PartDef) else None


def repeat_of(scope: Scope, name: str) -> RepeatDef | None:
    """The repeat a thing stands in: its own, or that of the part it mirrors."""
    if ("repeats", name) not in scope.cache:
        scope.cache["repeats", name] = _repeat_of(scope, name)
    return scope.cache["repeats", name]


def _repeat_of(scope: Scope, name: str) -> RepeatDef | None:
    for part in _images(scope, name):
        if part.repeat is not None:
            return part.repeat
    thing = scope.things.get(name)
    return thing.repeat if isinstance(thing, PlaceDef) else None


def repeated(scope: Scope, name: str) -> bool:
    return repeat_of(scope, name) is not None


def repeat_axis(scope: Scope, name: str) -> Axis | None:
    """The axis along which a repeated thing is spread; None for what is not repeated."""
    repeat = repeat_of(scope, name)
    return repeat.axis if repeat is not None else None


def across(face: Face, axis: Axis) -> Face:
    return face.opposite if face.axis == axis else face


# --- helpers -------------------------------------------------------------------------------------------


def _images(scope: Scope, name: str) -> list[PartDef]:
    """The part and those it mirrors, one behind the other. A ring of mirrors ends where it closes."""
    met: dict[str, PartDef] = {}
    thing = scope.things.get(name)
    while isinstance(thing, PartDef) and thing.name not in met:
        met[thing.name] = thing
        thing = scope.things.get(thing.mirror[0]) if thing.mirror else None
    return list(met.values())


def _shape(site: Site, scope: Scope, name: str) -> Shape | None:
    images = _images(scope, name)
    if not images:
        return None
    origin = images[-1]
    stock = stock_named(site, scope, origin.stock) if origin.stock else None
    if stock is None:
        return None
    shape = _plain(origin, stock)
    if not _fits_stock(site, shape):
        return None
    return reduce(_image, reversed(images[:-1]), shape)


def _plain(part: PartDef, stock: Stock) -> Shape:
    broad = None
    if part.run is not None and part.thick is not None:
        broad = next(axis for axis in Axis if axis not in (part.run, part.thick))
    return Shape(
        part,
        stock,
        part.thick,
        part.run,
        broad,
        part.grain,
        part.show,
        part.proud,
        part.rip,
        part.features,
        (),
        part.sequence,
        part.bands,
        _load(part),
    )


def _image(of: Shape, part: PartDef) -> Shape:
    """The shape of `part`, which mirrors the part of shape `of`; what it says itself goes before."""
    axis = part.mirror[1] if part.mirror else Axis.WIDE
    flips = of.flips
    if part.features:
        flips = ()
    elif of.features:
        flips = tuple(a for a in Axis if (a in of.flips) != (a == axis))
    return replace(
        of,
        part=part,
        grain=part.grain if part.grain is not None else of.grain,
        show=part.show or (across(of.show, axis) if of.show else None),
        proud=part.proud or frozenset(across(face, axis) for face in of.proud),
        rip=part.rip if part.rip is not None else of.rip,
        features=part.features or of.features,
        flips=flips,
        sequence=part.sequence or of.sequence,
        bands=part.bands or tuple(replace(band, face=across(band.face, axis)) for band in of.bands),
        load=_load(part) or of.load,
    )


def _load(part: PartDef) -> tuple[BoundExpr, Fraction] | None:
    return (part.load, part.load_unit) if part.load is not None else None


def _fits_stock(site: Site, shape: Shape) -> bool:
    part, stock = shape.part, shape.stock
    if shape.thick is None:
        return True
    if (shape.run is None) == (stock.kind == "sheet"):
        return True
    site.report(problems.laid_unlike_stock(part, stock))
    return False
