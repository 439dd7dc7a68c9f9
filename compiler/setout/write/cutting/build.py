"""The cutting: what is cut from what, in which order, how the saws are set, what it takes and what is left."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from setout.drawing import Drawing
from setout.plan.cutting import rack_text
from setout.plan.cutting.model import Cut, Cutting, StockPlan
from setout.write.cutting.alike import Alike, alike
from setout.write.cutting.batches import batches, equals
from setout.write.cutting.cuts import rows, sizes_of
from setout.write.cutting.model import CuttingPages, Missing, Reserved, SourceSheet, StockSheet, Yielded
from setout.write.cutting.room import leaves_room_beside, shares_a_page
from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import Length, length
from setout.write.facts.supply import money, supply

SHORT = 8  # letters of a source's name that a narrow column has room for


def build(facts: Facts, drawings: Mapping[str, Drawing]) -> CuttingPages | None:
    """`drawings` by the name of a source (of those cut alike the first). None without a plan of anything."""
    cutting = facts.plan.cutting
    if cutting is None or not cutting.stocks:
        return None
    cuts = [cut for stock in cutting.stocks for plan in stock.sources for cut in plan.cuts]
    costs = [stock.cost for stock in cutting.stocks if stock.cost is not None]
    return CuttingPages(
        stocks=tuple(_stock(facts, stock, drawings) for stock in cutting.stocks),
        cost=money(sum(costs, Fraction(0))) if costs else "",
        priceless=tuple(stock.stock.title for stock in cutting.stocks if stock.cost is None),
        batches=batches(cutting, facts.style),
        reserved=_reserved(facts, cutting),
        rack=rack_text(cutting, facts.style),
        untouched=bool(cutting.untouched),
        unsawn=tuple(cut.number for cut in cuts if cut.saw is None),
        kerfs=_kerfs(facts, cutting),
        saws=_saws(facts, cuts),
        trim=next((length(stock.trim, facts.style) for stock in cutting.stocks if stock.trim), None),
        finished=cutting.finished or all(stock.proven for stock in cutting.stocks),
        broken_down=_any(cuts, "break down"),
        ripped=_any(cuts, "rip"),
        crosscut=_any(cuts, "crosscut"),
        equals=equals(cutting),
    )


def _kerfs(facts: Facts, cutting: Cutting) -> tuple[tuple[Length, tuple[str, ...]], ...]:
    """Kerfs planned with, and the stocks by title that each was planned with for."""
    titles: dict[Fraction, list[str]] = {}
    for stock in cutting.stocks:
        titles.setdefault(stock.kerf, []).append(stock.stock.title)
    return tuple((length(kerf, facts.style), tuple(of)) for kerf, of in titles.items())


def _saws(facts: Facts, cuts: list[Cut]) -> tuple[tuple[str, Length], ...]:
    """The saws that cut something, by title, with their kerfs."""
    used = {cut.saw.name for cut in cuts if cut.saw is not None}
    return tuple(
        (saw.title or saw.name, length(saw.kerf, facts.style)) for saw in facts.project.saws if saw.name in used
    )


def _any(cuts: list[Cut], kind: str) -> bool:
    return any(cut.kind == kind for cut in cuts)


def _stock(facts: Facts, plan: StockPlan, drawings: Mapping[str, Drawing]) -> StockSheet:
    return StockSheet(
        title=plan.stock.title,
        thick=length(plan.stock.thick, facts.style),
        supply=supply(plan, facts.style),
        percent=str((plan.yield_ * 100).quantize(Decimal(1), ROUND_HALF_UP)),
        missing=tuple(_missing(facts, mark, count) for mark, count in plan.missing),
        sources=tuple(_source(facts, one, drawings[one.first.source.id], n == 0) for n, one in enumerate(alike(plan))),
    )


def _missing(facts: Facts, mark: str, count: int) -> Missing:
    piece = facts.piece_by_mark[mark]
    is_sheet = piece.stock.kind == "sheet"
    return Missing(mark, count, sizes_of(piece.length.reserve, piece.width.reserve, is_sheet, facts.style))


def _source(facts: Facts, alike: Alike, drawing: Drawing, is_first: bool) -> SourceSheet:
    source, cuts = alike.first.source, rows(alike, facts.style)
    return SourceSheet(
        name=alike.name,
        names=alike.names,
        kind=source.kind,
        on_hand=source.on_hand,
        sizes=sizes_of(source.length, source.width, source.stock.kind == "sheet", facts.style),
        drawing=drawing,
        yields=_yields(facts, alike),
        rows=cuts,
        keep=shares_a_page(facts, cuts, drawing, is_first),
        beside=source.stock.kind == "sheet" and leaves_room_beside(facts, drawing),
        long_names=len(alike.first.source.id) > SHORT,
    )


def _yields(facts: Facts, alike: Alike) -> tuple[Yielded, ...]:
    is_sheet = alike.first.source.stock.kind == "sheet"
    count: Counter[tuple] = Counter()
    for laid in alike.first.laid:
        long, wide = (laid.width, laid.length) if laid.turned else (laid.length, laid.width)
        count[laid.mark, long, wide, laid.reserved] += 1
    return tuple(
        Yielded(mark, n, sizes_of(long, wide, is_sheet, facts.style), reserved)
        for (mark, long, wide, reserved), n in sorted(count.items())
    )


def _reserved(facts: Facts, cutting: Cutting) -> tuple[Reserved, ...]:
    """Pieces of held sizes by mark, with the sources that their blanks come from."""
    plans = [plan for stock in cutting.stocks for plan in stock.sources]
    held = (piece for piece in facts.plan.pieces.pieces if piece.sized_by)
    return tuple(
        Reserved(
            piece.mark,
            tuple(spoken(name) for name in piece.sized_by),
            tuple(spoken(p.source.id) for p in plans if any(laid.mark == piece.mark for laid in p.laid)),
        )
        for piece in held
    )
