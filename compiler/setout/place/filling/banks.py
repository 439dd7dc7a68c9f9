"""A bank of drawers: sizes and heights told, slides set out on the case and on the boxes."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis, Box
from setout.place import problems
from setout.place.filling.ground import Ground
from setout.place.filling.made import Front, Made
from setout.place.filling.packing import packers
from setout.place.filling.slides import Mount, slides
from setout.place.model import Drawer, DrawerBank, Spacer
from setout.resolve.model import BankDef, Hardware

_ZERO = Fraction(0)


def bank(ground: Ground, written: BankDef, made: Made) -> None:
    if not ground.scope.things.keys() >= set(written.places):
        return  # what is wrong with its boxes is told already
    boxes = {name: ground.site.engine.answer(("box", ground.scope, name, 0)) for name in written.places}
    if any(box is None for box in boxes.values()) or not boxes:
        return
    hardware = _chosen(ground, written, boxes)
    drawers = [_drawer(ground, written, hardware, name, i + 1) for i, name in enumerate(written.places)]
    if any(d is None for d in drawers):
        return
    found = [d for d in drawers if d is not None]
    for d in found:
        made.fronts += _fronts(ground, d, written)
    if not _goes_in(ground, written, hardware, found):
        made.lost.update(path for d in found for path in d.boards)
        return
    reveal = _reveal(ground, found)
    opening = ground.box.sizes
    mounts = [Mount(d.path, d.slide, d.boards) for d in found if d.slide is not None]
    laid = slides(ground, written, hardware, mounts) if hardware is not None and mounts else None
    packed = packers(ground, written, laid, made) if laid is not None else {}
    if laid is not None and packed is not None:
        made.fittings += laid.fittings(ground, packed)
    made.banks.append(
        DrawerBank(
            path=ground.path,
            owner=ground.scope.path,
            opening=opening,
            style=written.style,
            hardware=hardware,
            reveal=reveal,
            clearance=_clearance(ground, found),
            drawers=tuple(found),
            sides=laid.sides if laid else (),
            gaps=laid.gaps if laid else (),
            packers=tuple((packed or {}).values()),
            spacers=_spacers(found, reveal, written),
            load=_load(ground, written),
            span=written.span,
        )
    )


def _chosen(ground: Ground, written: BankDef, boxes: dict[str, Box]) -> Hardware | None:
    """Of the slides to choose from, those as long as the boxes are."""
    known = [h for name in written.hardware if (h := ground.site.project.hardware.get(name)) and h.slide]
    lengths = {box for name in boxes for box in [_side_length(ground, name)] if box is not None}
    fitting = [h for h in known if h.slide and h.slide.length in lengths]
    return fitting[0] if fitting else (known[0] if known else None)


def _side_length(ground: Ground, name: str) -> Fraction | None:
    own = ground.own(f"{ground.scope.path_of(name)}.left_side")
    return own.size(Axis.DEEP) if own is not None else None


def _drawer(ground: Ground, written: BankDef, hardware: Hardware | None, name: str, number: int) -> Drawer | None:
    path = ground.scope.path_of(name)
    boards = tuple(p for p in ground.scene.boards if p.startswith(f"{path}."))
    floor = ground.box.lo[Axis.HIGH]
    front, base = ground.own(f"{path}.front_panel"), ground.own(f"{path}.bottom_panel")
    left, right = ground.own(f"{path}.left_side"), ground.own(f"{path}.right_side")
    shown = (front.size(Axis.WIDE), front.size(Axis.HIGH)) if front is not None else None
    front_low = front.lo[Axis.HIGH] - floor if front is not None else None
    if number in written.dummies:
        return Drawer(path, number, shown, front_low, None, None, None, None, boards) if front is not None else None
    outer: Box | None = ground.site.engine.answer(("box", ground.scope, name, 0))
    if left is None or right is None or base is None or outer is None:
        return None
    wide, high, _ = outer.sizes
    low = outer.lo[Axis.HIGH] - floor
    slide = hardware.slide if hardware is not None else None
    at = low if slide is None or slide.kind == "side" else low - slide.height
    bottom = (base.size(Axis.WIDE), base.size(Axis.DEEP))
    return Drawer(path, number, shown, front_low, (wide, high, left.size(Axis.DEEP)), low, bottom, at, boards)


def _fronts(ground: Ground, drawer: Drawer, written: BankDef) -> list[Front]:
    board = ground.scene.boards.get(f"{drawer.path}.front_panel")
    return [Front(board.path, board.box, ground.path, False, written.head)] if board is not None else []


def _goes_in(ground: Ground, written: BankDef, hardware: Hardware | None, drawers: list[Drawer]) -> bool:
    """Whether heights, depth and slides agree with the opening; what doesn't is reported."""
    before = len(ground.site.found)
    site, style = ground.site, ground.site.style
    deep = ground.box.size(Axis.DEEP)
    slide = hardware.slide if hardware is not None else None
    first = next((d for d in drawers if d.box is not None), None)
    if first is not None and hardware is not None and slide is not None:
        needed = _reach(ground, first) + slide.setback
        if slide.length > deep:
            site.report(problems.slide_longer_than_bay(style, ground.path, hardware, slide.length, deep, written.head))
        elif needed > deep:
            site.report(problems.drawer_too_deep(style, first.path, needed, deep, slide.length, hardware, written.head))
    for d in drawers:
        if d.box is not None and slide is not None and slide.kind == "side" and slide.height > d.box[1]:
            site.report(problems.drawer_too_low(style, d.path, d.box[1], slide.height, hardware, written.head))
    _left_over(ground, written, drawers)
    load = _load(ground, written)
    if load is not None and slide is not None and slide.load is not None and load > slide.load:
        site.report(problems.slide_too_weak(hardware, load, slide.load, site.project.metric, written.head))
    return len(site.found) == before


def _reach(ground: Ground, d: Drawer) -> Fraction:
    """How far behind the front of the opening the box ends."""
    side = ground.own(f"{d.path}.left_side")
    assert side is not None
    return side.hi[Axis.DEEP] - ground.box.lo[Axis.DEEP]


def _left_over(ground: Ground, written: BankDef, drawers: list[Drawer]) -> None:
    """Heights given for all fronts must add up to the opening. Counted at the lowest."""
    if written.mode != "given" or any(h is None for h in written.heights):
        return
    fronts = [d for d in drawers if d.front is not None and d.front_low is not None]
    if len(fronts) != len(drawers) or not fronts:
        return
    top = ground.box.size(Axis.HIGH)
    above = top - (fronts[0].front_low + fronts[0].front[1])  # type: ignore[index, operator]
    below = fronts[-1].front_low
    if above != below:
        ground.site.report(
            problems.heights_left_over(ground.site.style, ground.path, below - above, top, written.head)  # type: ignore[operator]
        )


def _reveal(ground: Ground, drawers: list[Drawer]) -> Fraction:
    """The gap between two fronts, or above a single one."""
    fronts = [d for d in drawers if d.front is not None and d.front_low is not None]
    if len(fronts) > 1:
        upper, lower = fronts[0], fronts[1]
        return upper.front_low - lower.front_low - lower.front[1]  # type: ignore[index, operator]
    if fronts:
        return max(_ZERO, ground.box.size(Axis.HIGH) - fronts[0].front_low - fronts[0].front[1])  # type: ignore[index, operator]
    return _ZERO


def _clearance(ground: Ground, drawers: list[Drawer]) -> Fraction:
    box = next((d.box for d in drawers if d.box is not None), None)
    return (ground.box.size(Axis.WIDE) - box[0]) / 2 if box is not None else _ZERO


def _load(ground: Ground, written: BankDef) -> Fraction | None:
    return ground.number(written.load)


def _spacers(drawers: list[Drawer], reveal: Fraction, written: BankDef) -> tuple[Spacer, ...]:
    """Blocks for the slides, the lowest first, a pair each; and the strips that fronts are set with."""
    blocks = [Spacer("slides", d.slide, d.number, 2) for d in reversed(drawers) if d.slide]
    fronts = sum(d.front is not None for d in drawers)
    if fronts and reveal > 0:
        gaps = fronts + 1 if written.style != "overlay" else fronts - 1
        blocks += [Spacer("fronts", reveal, None, 2 * gaps)] if gaps else []
    return tuple(blocks)
