"""What can be said of the boards before they are laid out."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.piece.model import Piece, Pieces
from setout.plan.cutting import problems
from setout.plan.cutting.sources import Supply, planned_kerf, supplies
from setout.plan.cutting.wanted import Demand, Want, demands, wants
from setout.resolve.model import Project, Stock
from setout.source import Span
from setout.units import Style


def larger_than_usable(pieces: Pieces) -> tuple[Diagnostic, ...]:
    """Boards that go on a sheet only as long as its edges aren't trimmed, and runs that go on none. (Those larger than
    a whole sheet have been told of.)"""
    project = pieces.joined.placed.project
    style = Style(project.metric, project.mark)
    found = []
    for demand in demands(pieces):
        whole = _whole(project, demand.stock)
        for want in _unfit(project, demand):
            piece = _piece(demand, want.members[0].mark)
            if len(want.members) > 1:
                run = next(
                    r for r in demand.runs if tuple(m.mark for m in r.members) == tuple(m.mark for m in want.members)
                )
                found.append(
                    problems.run_too_large(style, run.name, want.a, want.b, demand.stock, whole.usable, span_of(piece))
                )
            elif whole.trim and _fits(want, demand.stock, whole.length, whole.width, whole.grain):
                found.append(problems.too_large_once_trimmed(style, piece, whole.usable, whole.trim, span_of(piece)))
    return tuple(found)


def too_large(pieces: Pieces) -> set[str]:
    """Marks of which no sheet or stick, bought or on hand, is large enough."""
    project = pieces.joined.placed.project
    return {m.mark for demand in demands(pieces) for want in _unfit(project, demand) for m in want.members}


def span_of(piece: Piece) -> Span:
    if piece.exemplar is not None:
        return piece.exemplar.board.head
    assert piece.loose is not None
    return piece.loose.span


def _unfit(project: Project, demand: Demand) -> list[Want]:
    """What no board is large enough for, be there ever so many to be bought."""
    kerf = planned_kerf(project.saws, demand.stock)
    there: Iterable[Supply] = supplies(project, demand.stock)
    rooms = [(*s.usable, s.grain) for s in there]
    whole = _whole(project, demand.stock)
    rooms.append((*whole.usable, whole.grain))
    return [want for want in wants(demand, kerf) if not any(_fits(want, demand.stock, *room) for room in rooms)]


def _whole(project: Project, stock: Stock) -> Supply:
    """The largest that can be bought at all."""
    if stock.kind == "stick":
        zero = Fraction(0)
        return Supply("stick", False, max(stock.lengths), stock.short, "length", None, None, zero)
    assert stock.long is not None
    grain = {"long": "length", "short": "width"}.get(stock.grain or "")
    return Supply("sheet", False, stock.long, stock.short, grain, None, None, project.practice.value("edge_trim"))


def _fits(want: Want, stock: Stock, length: Fraction, width: Fraction, grain: str | None) -> bool:
    straight = want.a <= length and want.b <= width
    across = want.b <= length and want.a <= width
    if stock.kind == "stick":
        return want.a <= length
    if grain is None or want.grain is None:
        return straight or across
    return straight if (want.grain == "a") == (grain == "length") else across


def _piece(demand: Demand, mark: str) -> Piece:
    return next(piece for piece in demand.pieces if piece.mark == mark)
