"""All of a plan's drawings, made once and shared by the packet and the SVG files."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from setout.drawing import (
    BOTH,
    Drawing,
    Landed,
    exploded,
    faces_to_draw,
    fronts,
    order_graph,
    piece,
    sheet,
    stick,
    together,
    view,
)
from setout.join.model import JoinedBoard
from setout.piece.model import Piece
from setout.plan.cutting.model import StockPlan
from setout.write.assemblies import Group, room_for_drawing
from setout.write.build_order.build import Doing, words
from setout.write.cutting.alike import Alike, alike
from setout.write.cutting.cuts import rows
from setout.write.cutting.room import HIGHEST, room_for_sheet
from setout.write.drawers import alike_banks
from setout.write.facts import Facts
from setout.write.facts.layout import Landing
from setout.write.facts.turning import is_turned, squared, squared_scene, turned_board
from setout.write.installing import room_views
from setout.write.job_sheet import room_for_view
from setout.write.joinery.build import machined
from setout.write.joinery.layout import BESIDE, lines_high, stand_beside

PLAIN, BUSY = 190.0, 290.0  # points: three or two pieces to a page
HEADING, SPARE = 30.0, 14.0  # points above a piece's drawing; what half a page has left in fact
SHRUNK = 0.7  # how much smaller a drawing may be to share a page
MOST_SHRUNK = 16  # holes and cuts; with more of them a smaller drawing would be hard to read
FEW = 3  # steps; fewer need no picture
SIDES = ("front", "side", "top")
ALONE = 400.0  # points; how high a single view may be
SMALLEST = 0.6  # of the page, how wide an offcut is drawn at least
BANK = (255.0, 215.0)  # points: beside what is said of its slides
MANY_CUTS = 4  # more than that need room for their dimensions
MANY_HOLES = 24  # more than that a page, or they could not be told apart


@dataclass(frozen=True)
class Drawings:
    """`job` from three sides, None when nothing stands in place; `exploded` by the group's key, `pieces` by mark,
    `cutting` by the name of
    a source (of those cut alike the first), `banks` of drawers by the path of the first of those alike, `room` "front"
    and "top"."""

    job: Drawing | None
    exploded: Mapping[str, Drawing]
    pieces: Mapping[str, Drawing]
    order: tuple[Drawing, ...]
    cutting: Mapping[str, Drawing]
    banks: Mapping[str, Drawing]
    room: Mapping[str, Drawing]


def drawings(facts: Facts, groups: tuple[Group, ...], say: Callable[[Doing], str]) -> Drawings:
    return Drawings(
        _job(facts),
        _exploded(facts, groups),
        _pieces(facts),
        _order(facts, say),
        _cutting(facts),
        _banks(facts),
        room_views(facts),
    )


def views(facts: Facts) -> dict[str, Drawing]:
    """The sides of the job each alone, for other programs."""
    sides = SIDES if facts.joined.boards else ()
    room = facts.width, ALONE, facts.style
    return {side: view(facts.joined, facts.mark_of, side, *room, facts.other_scenes) for side in sides}


def _job(facts: Facts) -> Drawing | None:
    if not facts.joined.boards:
        return None
    return together(facts.joined, facts.mark_of, facts.width, room_for_view(facts), facts.style, facts.other_scenes)


def _exploded(facts: Facts, groups: tuple[Group, ...]) -> dict[str, Drawing]:
    return {group.key: _apart(facts, group) for group in groups}


def _apart(facts: Facts, group: Group) -> Drawing:
    scene = squared_scene(facts.joined, group.first.motion)
    return exploded(scene, group.key, facts.mark_of, *room_for_drawing(facts, group), facts.style)


def _pieces(facts: Facts) -> dict[str, Drawing]:
    made = ((p, _piece(facts, p, b)) for p, b in machined(facts))
    return {p.mark: drawing for p, drawing in made if drawing is not None}


def _piece(facts: Facts, drawn: Piece, board: JoinedBoard) -> Drawing | None:
    """A little smaller if then it takes, with its lines to lay out, no more than half a page."""
    found = facts.landings[drawn.mark]
    landed = [Landed(one.face, one.area, ", ".join(one.marks)) for one in found if one.seen]
    square, screws = _square(facts, drawn, board), facts.joined.fastenings
    others = [_squared(facts, scene.boards[board.board.path]) for scene in facts.other_scenes]
    titles = {fitting.id: fitting.hardware.title or fitting.hardware.name for fitting in facts.scene.fittings}

    def at_most(high: float, less_wide: float = 0.0) -> Drawing | None:
        return piece(square, facts.style, facts.width - less_wide, high, screws, landed, others, titles)

    if len(board.bores) > MANY_HOLES:
        return _on_a_page(facts, found, at_most)
    made = at_most(PLAIN if _work(board) <= MANY_CUTS else BUSY)
    if made is None:
        return None
    below = 0.0 if stand_beside(facts, made) else lines_high(found)
    room = facts.height / 2 - HEADING - below
    if _work(board) > MOST_SHRUNK or not SHRUNK * made.height <= room < made.height:
        return made
    smaller = at_most(room / (BOTH if len(faces_to_draw(board)) > 1 else 1))
    return smaller if smaller is not None and smaller.height <= room + SPARE else made


def _on_a_page(
    facts: Facts, found: Sequence[Landing], at_most: Callable[..., Drawing | None]
) -> Drawing | None:
    """As large as a page lets it be, with its lines to lay out beside it or under it."""
    room = facts.height - HEADING - SPARE
    ways = (at_most(room, BESIDE if found else 0.0), at_most(max(room - lines_high(found), BUSY)))
    return max((made for made in ways if made is not None), key=lambda made: made.width * made.height, default=None)


def _work(board: JoinedBoard) -> int:
    return len(board.bores) + len(board.cuts) + len(board.features)


def _square(facts: Facts, drawn: Piece, board: JoinedBoard) -> Piece:
    """The piece with its board's faces named as in its own assembly."""
    return replace(drawn, exemplar=_squared(facts, board))


def _squared(facts: Facts, board: JoinedBoard) -> JoinedBoard:
    motion = facts.scene.instances[board.board.owner].motion
    return turned_board(board, squared(motion)) if is_turned(motion) else board


def _order(facts: Facts, say: Callable[[Doing], str]) -> tuple[Drawing, ...]:
    if len(facts.plan.order.steps) < FEW:
        return ()
    made = order_graph(facts.plan.order, words(facts, say), facts.width, facts.height)
    return made or ()


def _cutting(facts: Facts) -> dict[str, Drawing]:
    stocks = () if facts.plan.cutting is None else facts.plan.cutting.stocks
    return {same.first.source.id: _source(facts, stock, same) for stock in stocks for same in alike(stock)}


def _source(facts: Facts, stock: StockPlan, same: Alike) -> Drawing:
    """All of a stock at one scale; a small offcut somewhat larger. Few cuts leave room for a drawing the page is
    wide."""
    plan, style = same.first, facts.style
    longest = max(one.source.length for one in stock.sources)
    if plan.source.stock.kind == "stick":
        return stick(plan, style, facts.width, longest, same.name)
    share = max(float(plan.source.length / longest), SMALLEST)
    wide, high = room_for_sheet(facts, plan.source, rows(same, style), plan is stock.sources[0])
    made = sheet(plan, style, wide * share, high, same.name)
    if not made.aside:
        return made
    larger = sheet(plan, style, facts.width * share, HIGHEST, same.name)  # its list may go on on the next page
    return larger if larger.aside < made.aside else made


def _banks(facts: Facts) -> dict[str, Drawing]:
    return {banks[0].path: fronts(banks[0], *BANK, facts.style) for banks in alike_banks(facts)}
