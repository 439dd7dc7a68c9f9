"""Packers: what fills up the space between the edge of an opening and a case side that stands back from it."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis, Box, Face
from setout.place import problems
from setout.place.filling.ground import LEFT, RIGHT, Ground
from setout.place.filling.made import Made
from setout.place.filling.slides import Laid, Mount
from setout.place.model import Board, Joint, Method, Side
from setout.place.shapes import stock_named
from setout.resolve.model import BankDef, Stock
from setout.values import Trace

Packed = dict[tuple[int, int], str]


def packers(ground: Ground, written: BankDef, laid: Laid, made: Made) -> Packed | None:
    """The packers by drawer and side; None where the spec doesn't say what they are of: reported."""
    packed: Packed = {}
    for k, face in enumerate((LEFT, RIGHT)):
        if not laid.sides or not laid.gaps[k]:
            continue
        stock = stock_named(ground.site, ground.scope, written.packers) if written.packers else None
        if stock is None:
            ground.site.report(
                problems.packers_wanted(ground.site.style, ground.path, laid.sides[k], laid.gaps[k], written.head)
            )
            return None
        for i, mount in enumerate(laid.mounts):
            path = f"{mount.path}.{face.word}_packer"
            made.boards[path] = _packer(ground, written, laid, mount, face, stock, path, k)
            made.joints.append(_joint(ground, written, path, laid.sides[k], laid.gaps[k]))
            packed[i, k] = path
    return packed


def _packer(
    ground: Ground, written: BankDef, laid: Laid, mount: Mount, face: Face, stock: Stock, path: str, k: int
) -> Board:
    """A strip as long as the slide, behind its screws: on edge where the stock is as thick as the gap, else flat,
    ripped as wide as the gap."""
    slide, gap = laid.hardware.slide, laid.gaps[k]
    assert slide is not None
    on_edge = stock.thick == gap
    high = slide.height if on_edge else stock.thick
    line, plane = laid.line(ground, mount), ground.box.face(face)
    low, end = min(plane, plane + face.sign * gap), max(plane, plane + face.sign * gap)
    own = Box(
        (low, line - high / 2, laid.front),
        (end, line + high / 2, laid.front + slide.length),
    )
    across, up, along = (
        Trace("rule", f"from the opening to {laid.sides[k]}", gap, 1, (), written.head),
        Trace("rule", "height of the slide" if on_edge else f"thickness of {stock.name}", high, 1, (), written.head),
        Trace("rule", "length of the slide", slide.length, 1, (), written.head),
    )
    why = [across, up, along]
    ordered = [why[ground.to.to.index(axis)] for axis in Axis]
    none: frozenset[str] = frozenset()
    return Board(
        path=path,
        name=f"{face.word}_packer",
        owner=ground.scope.path,
        definition=f"{ground.scope.definition}.{ground.name}.packer".lstrip("."),
        stock=stock,
        box=ground.to.box(own),
        thick=ground.to.axis(Axis.WIDE if on_edge else Axis.HIGH),
        run=ground.to.axis(Axis.DEEP) if stock.kind == "stick" else None,
        grain=ground.to.axis(Axis.DEEP) if stock.grain else None,
        show=None,
        proud=frozenset(),
        features=(),
        why=(ordered[0], ordered[1], ordered[2]),
        held=(none, none, none),
        span=written.span,
        head=written.head,
        where=tuple(Trace("rule", "beside the slide", own.lo[axis], 1, (), written.head) for axis in Axis),
    )


def _joint(ground: Ground, written: BankDef, packer: str, side: str, gap: Fraction) -> Joint:
    """Glued, and screwed where a screw on sale holds in the side and doesn't come out of it."""

    def method(kind: str, through: frozenset[str] = frozenset()) -> Method:
        return Method(kind, None, through, False, None, None, None, (), written.head)

    practice, board = ground.site.project.practice, ground.scene.boards[side]
    most = gap + board.box.size(board.thick) - practice.value("screw_tip_margin")
    least = gap / (1 - practice.value("screw_share_least"))
    screwed = any(least <= length <= most for length in practice.choices("screw_lengths"))
    a = Side(packer, (packer,), None, True, written.head)
    b = Side(side, (side,), None, True, written.head)
    screws = (method("screws", frozenset((packer,))),) if screwed else ()
    return Joint(f"{packer}#1", ground.scope.path, (a,), (b,), (*screws, method("glue")), None, written.head)
