"""What is looked at once everything has its place: what stands out of its assembly, what is larger than its stock."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import ALL_FACES, Axis, Box, Face
from setout.place import problems
from setout.place.found import end_key
from setout.place.model import Board, Scene
from setout.place.shapes import shape_of
from setout.place.site import Scope, Site
from setout.resolve.model import PartDef, PlaceDef, Stock
from setout.source import Span
from setout.values import Value


def stays_within(
    site: Site, scope: Scope, name: str, member: int, own: Box, sizes: tuple[Fraction | None, ...]
) -> bool:
    """Whether it keeps to the placing box of its assembly, which is `sizes` large (None: no bound on that axis)."""
    thing = scope.things[name]
    if isinstance(thing, PlaceDef) and "." in name:
        return True  # it fills an opening, and is held against that
    proud: frozenset[Face] = frozenset()
    if isinstance(thing, PartDef) and (shape := shape_of(site, scope, name)) is not None:
        proud = shape.proud
    out = [(face, by) for face in ALL_FACES if face not in proud and (by := _beyond(own, face, sizes)) > 0]
    if out:
        room = not scope.parent and not site.project.job.size
        holder = f"`{scope.definition}`" if scope.parent else "the room" if room else "the job"
        head: Span = getattr(thing, "head", thing.span)
        path = scope.path_of(name, member)
        site.report(problems.outside(site.style, path, holder, room, out, head, _bound_span(site, scope)))
    return not out


def fills_its_gap(site: Site, scope: Scope, name: str, member: int, own: Box) -> bool:
    """Whether the two ends of a placed assembly, where both are said, lie as far apart as it is large."""
    place = scope.things[name]
    if not isinstance(place, PlaceDef):
        return True
    fills = True
    for axis in Axis:
        size: Value | None = site.engine.answer(end_key(scope, name, member, axis, 0))
        if size is not None and size.amount != own.size(axis):
            span = next((s.span for s in place.spans if s.axis == axis), place.head)
            gap = own.size(axis)
            site.report(problems.place_unlike_gap(site.style, name, axis, gap, size.amount, span, place.head))
            fills = False
    return fills


def too_large_for_stock(site: Site, scene: Scene) -> None:
    """Warns of every board that no sheet or stick on sale is large enough for. Boards of one part are told of once."""
    for board in scene.boards.values():
        if board.run is not None:
            _stick(site, board.path, board.box.size(board.run), board.stock, board.head)
        else:
            _sheet(site, board)
    for loose in scene.loose:
        if loose.stock.kind == "stick":
            _stick(site, loose.path, loose.length, loose.stock, loose.span)
        else:
            along = (loose.length, loose.width) if loose.grain == "length" else None
            _fit_sheet(site, loose.path, loose.length, loose.width, along, loose.stock, loose.span)


def too_narrow_banding(site: Site, scene: Scene) -> None:
    """Warns of banding that doesn't cover the edge it goes on. Boards of one part are told of once."""
    for board in scene.boards.values():
        for band in board.bands:
            edge = min(board.box.size(axis) for axis in Axis if axis != band.face.axis)
            if band.edging.edging is not None and band.edging.edging.width < edge:
                site.report(problems.banding_too_narrow(site.style, board.path, edge, band.edging, board.head))


# --- helpers ------------------------------------------------------------------------------------------------


def _beyond(own: Box, face: Face, sizes: tuple[Fraction | None, ...]) -> Fraction:
    size = sizes[face.axis]
    if face.sign < 0:
        return -own.lo[face.axis] if size is not None else Fraction(0)
    return own.hi[face.axis] - size if size is not None else Fraction(0)


def _bound_span(site: Site, scope: Scope) -> Span:
    if scope.body.size_span is not None:
        return scope.body.size_span
    return site.project.room.span if site.project.room else scope.span


def _sheet(site: Site, board: Board) -> None:
    a, b = (axis for axis in Axis if axis != board.thick)
    sizes = board.box.size(a), board.box.size(b)
    along = None
    if isinstance(board.grain, Axis):
        along = sizes if board.grain == a else (sizes[1], sizes[0])
    _fit_sheet(site, board.path, max(sizes), min(sizes), along, board.stock, board.head)


def _fit_sheet(
    site: Site,
    path: str,
    long: Fraction,
    wide: Fraction,
    along: tuple[Fraction, Fraction] | None,
    stock: Stock,
    at: Span,
) -> None:
    """`along`: the size with the grain and the size across it, where the grain decides."""
    if stock.long is None:
        return
    sheet = (stock.long, stock.short) if stock.grain != "short" else (stock.short, stock.long)
    fits = _within((long, wide), (max(sheet), min(sheet)))
    if along is not None and fits and not _within(along, sheet):
        site.report(problems.larger_than_sheet(site.style, path, along[0], along[1], stock, at, True))
    elif not fits:
        long, wide = max(long, wide), min(long, wide)
        if not _within((long, wide), (max(sheet), min(sheet))):
            site.report(problems.larger_than_sheet(site.style, path, long, wide, stock, at, False))


def _within(size: tuple[Fraction, Fraction], room: tuple[Fraction, Fraction]) -> bool:
    return size[0] <= room[0] and size[1] <= room[1]


def _stick(site: Site, path: str, long: Fraction, stock: Stock, at: Span) -> None:
    if stock.lengths and long > max(stock.lengths):
        site.report(problems.longer_than_sticks(site.style, path, long, stock, at))
