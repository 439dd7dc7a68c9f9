"""Sheets and sticks: as the cutting plan takes them; without one, the least that their area or length comes to."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from math import ceil

from setout.piece.model import Piece, Pieces
from setout.plan.buying.model import BuyLine
from setout.plan.cutting.model import Cutting, StockPlan
from setout.resolve.model import Stock

_Key = tuple[Fraction, Fraction, "Fraction | None"]


def materials(pieces: Pieces, cutting: Cutting | None) -> list[BuyLine]:
    if cutting is not None:
        return [line for plan in cutting.stocks for line in _planned(plan)]
    of: dict[str, list[Piece]] = {}
    for piece in pieces.pieces:
        of.setdefault(piece.stock.name, []).append(piece)
    return [_least(some[0].stock, some) for some in of.values()]


def _planned(plan: StockPlan) -> list[BuyLine]:
    """One line for each size bought; what is on hand or on the rack isn't bought."""
    stock = plan.stock
    bought: Counter[_Key] = Counter()
    for one in plan.sources:
        if not one.source.on_hand:
            bought[(one.source.length, one.source.width, one.source.price)] += 1
    lines = []
    for (length, width, price), count in sorted(bought.items(), key=lambda item: item[0][:2]):
        sizes = (length, width) if stock.kind == "sheet" else (length,)
        lines.append(_line(stock, Fraction(count), Fraction(0), price, sizes, False))
    return lines


def _least(stock: Stock, pieces: list[Piece]) -> BuyLine:
    if stock.kind == "sheet":
        assert stock.long is not None
        sizes: tuple[Fraction, ...] = (stock.long, stock.short)
        whole = stock.long * stock.short
        used = sum((p.length.reserve * p.width.reserve * p.count for p in pieces), Fraction(0))
    else:
        sizes = (max(stock.lengths),)
        whole = sizes[0]
        used = sum((p.length.reserve * p.count for p in pieces), Fraction(0))
    key = None if stock.kind == "sheet" else sizes[0]
    on_hand = sum(count for length, count in stock.on_hand if length == key)
    price = dict(stock.prices).get(key)
    return _line(stock, Fraction(ceil(used / whole)), Fraction(on_hand), price, sizes, True)


def _line(
    stock: Stock, need: Fraction, on_hand: Fraction, price: Fraction | None, sizes: tuple[Fraction, ...], guess: bool
) -> BuyLine:
    buy = ceil(max(need - on_hand, Fraction(0)))
    return BuyLine(
        stock.kind, stock.name, stock.title, need, on_hand, Fraction(1), buy, price, sizes=sizes, estimate=guess
    )
