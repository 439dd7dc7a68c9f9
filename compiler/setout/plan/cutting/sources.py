"""What there is to cut from: the rack's offcuts, whole boards on hand, and what can be bought."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.plan.cutting.model import Source
from setout.plan.cutting.saws import able
from setout.resolve.model import Project, RackBoard, Saw, Stock


@dataclass(frozen=True)
class Supply:
    """Boards that are alike: `copies` of them (None: any number). `trim` is taken off each edge before it is cut up."""

    kind: str  # as in Source
    on_hand: bool
    length: Fraction
    width: Fraction
    grain: str | None
    price: Fraction | None
    copies: int | None
    trim: Fraction

    @property
    def usable(self) -> tuple[Fraction, Fraction]:
        return self.length - 2 * self.trim, self.width - 2 * self.trim


def supplies(project: Project, stock: Stock) -> tuple[Supply, ...]:
    """Offcuts first, then what is on hand, then what is bought; the smaller first."""
    offcuts = [_offcut(board, stock) for board in project.rack if board.stock == stock.name]
    offcuts.sort(key=lambda s: (s.length * s.width, s.length, s.grain or ""))
    whole = _sheets(project, stock) if stock.kind == "sheet" else _sticks(stock)
    return tuple(s for s in (*_gathered(offcuts), *whole) if s.copies != 0 and min(s.usable) > 0)


def planned_kerf(saws: Sequence[Saw], stock: Stock) -> Fraction:
    """The widest kerf of the saws that may come to cut this stock, so that the plan holds whichever is taken."""
    return max((saw.kerf for saw in able(saws, stock) or saws), default=Fraction(0))


def named(supply: Supply, stock: Stock, number: int) -> Source:
    word = " offcut" if supply.kind == "offcut" else ""
    sizes = supply.length, supply.width, supply.grain
    return Source(f"{stock.name}{word} {number}", stock, supply.kind, supply.on_hand, *sizes, supply.price)


def _offcut(board: RackBoard, stock: Stock) -> Supply:
    width = stock.short if board.width is None else board.width
    return Supply("offcut", True, board.length, width, board.grain, Fraction(0), board.count, Fraction(0))


def _gathered(offcuts: Iterable[Supply]) -> list[Supply]:
    """Equal offcuts that stand in several lines are one supply."""
    found: dict[tuple, Supply] = {}
    for one in offcuts:
        key = (one.length, one.width, one.grain)
        before = found[key].copies if key in found else 0
        found[key] = Supply("offcut", True, *key, Fraction(0), (before or 0) + (one.copies or 0), Fraction(0))
    return list(found.values())


def _sheets(project: Project, stock: Stock) -> list[Supply]:
    assert stock.long is not None
    grain = {"long": "length", "short": "width"}.get(stock.grain or "")
    trim = project.practice.value("edge_trim")
    price = dict(stock.prices).get(None)
    there, most = dict(stock.on_hand).get(None, 0), dict(stock.at_most).get(None)
    return [
        Supply("sheet", True, stock.long, stock.short, grain, Fraction(0), there, trim),
        Supply("sheet", False, stock.long, stock.short, grain, price, most, trim),
    ]


def _sticks(stock: Stock) -> list[Supply]:
    there, most, prices = dict(stock.on_hand), dict(stock.at_most), dict(stock.prices)
    one = Fraction(0)
    only = len(stock.lengths) == 1

    def of(table: dict, length: Fraction):
        return table.get(length, table.get(None) if only else None)

    have = [Supply("stick", True, n, stock.short, "length", one, of(there, n) or 0, one) for n in stock.lengths]
    buy = [Supply("stick", False, n, stock.short, "length", of(prices, n), of(most, n), one) for n in stock.lengths]
    return have + buy
