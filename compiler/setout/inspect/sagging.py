"""How far shelves and tops sag, and what would hold them up."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from setout.geometry import Axis
from setout.inspect.model import Sag
from setout.inspect.spans import Bridged, bridged
from setout.inspect.view import View
from setout.place.model import Board
from setout.strength import (
    casework_limit,
    edged,
    figure,
    flat,
    longest_span,
    sag,
    stiffness_needed,
    thickness_needed,
)

_FOOT = Fraction(144)  # square inches in a square foot
_STEP = Fraction(1, 16)
_WORTH = Fraction(1, 8)  # less than so much more is no other board: sheets are sold in such steps, and a bit thin


def sags(view: View) -> tuple[Sag, ...]:
    """Every level board, in the order placed. One without a `load` is reckoned with the table's."""
    found = []
    for path, joined in view.joined.boards.items():
        if joined.board.thick == Axis.HIGH:
            ways = [_sag(view, joined.board, way) for way in bridged(view, path) if way.span > 0]
            if ways:
                found.append(max(ways, key=lambda one: (one.lasting or 0) / one.allowed))
    return tuple(found)


def _sag(view: View, board: Board, way: Bridged) -> Sag:
    load, said = _load(view, board)
    allowed = casework_limit().allowed(way.span)
    modulus, creep = board.stock.stiffness, board.stock.creep
    first = lasting = thick = longest = strip = None
    if modulus is not None:
        per_inch = load / _FOOT * way.width
        first = float(sag(per_inch * way.span, way.span, flat(way.width, board.box.size(Axis.HIGH), modulus), way.ends))
        lasting = first * float(creep)
        if lasting > allowed:
            psf = float(load)
            thick = _up(thickness_needed(way.span, psf, modulus, None, way.ends, creep))  # type: ignore[arg-type]
            thick = thick if thick >= board.box.size(Axis.HIGH) + _WORTH else None
            longest = longest_span(modulus, board.box.size(Axis.HIGH), load, None, way.ends, creep)
            strip = _strip(view, board, way, per_inch)
    return Sag(
        board.path,
        way.along,
        way.span,
        way.ends,
        way.found,
        load,
        said,
        modulus,
        first,
        lasting,
        float(allowed),
        thick,
        longest,
        strip,
    )


def _load(view: View, board: Board) -> tuple[Fraction, bool]:
    """lb/ft2, and whether the spec says it. A drawer's bottom carries what its bank says, else what drawers are
    tested with."""
    if board.load is not None:
        return board.load, True
    for bank in view.scene.banks:
        if any(board.path in drawer.boards for drawer in bank.drawers):
            area = board.box.size(Axis.WIDE) * board.box.size(Axis.DEEP)
            return (figure("cabinet_load"), False) if bank.load is None else (bank.load * _FOOT / area, True)
    return figure("shelf_load"), False


def _up(inches: float) -> Fraction:
    return ceil(Fraction(inches) / _STEP) * _STEP


def _strip(view: View, board: Board, way: Bridged, per_inch: Fraction) -> Fraction | None:
    """The lowest strip that will do, of the board's own stiffness, glued along the front edge."""
    modulus, thick = board.stock.stiffness, board.box.size(Axis.HIGH)
    assert modulus is not None
    needed = stiffness_needed(way.span, per_inch, None, way.ends, board.stock.creep)  # type: ignore[arg-type]
    wide = view.practice.value("edge_strip_thick")
    for high in view.practice.choices("edge_strip_heights"):
        if high > thick and edged(way.width, thick, modulus, wide, high, modulus) >= needed:
            return high
    return None
