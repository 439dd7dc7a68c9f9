"""The cutting plan as JSON. Lengths are exact, so that another program can cut the sources up again."""

from __future__ import annotations

from fractions import Fraction

from setout.plan.cutting.model import Cut, Cutting, Falls, Laid, Leftover, Setting, SourcePlan, StockPlan
from setout.write.job.values import Json, length


def cutting_of(cutting: Cutting | None) -> Json | None:
    if cutting is None:
        return None
    return {
        "finished": cutting.finished,
        "stocks": [_stock(stock) for stock in cutting.stocks],
        "settings": [_setting(setting) for setting in cutting.settings],
        "rack": [_offcut(*offcut) for offcut in cutting.rack],
        "untouched": [_offcut(*offcut) for offcut in cutting.untouched],
    }


def _stock(plan: StockPlan) -> Json:
    return {
        "stock": plan.stock.name,
        "bought": plan.bought,
        "bound": plan.bound,
        "proven": plan.proven,
        "cost": _money(plan.cost),
        "bound_cost": _money(plan.bound_cost),
        "yield": str(plan.yield_),
        "kerf": length(plan.kerf),
        "trim": length(plan.trim),
        "missing": [{"mark": mark, "count": count} for mark, count in plan.missing],
        "sources": [_source(source) for source in plan.sources],
    }


def _money(amount: Fraction | None) -> str | None:
    return None if amount is None else str(amount)


def _source(plan: SourcePlan) -> Json:
    source = plan.source
    return {
        "id": source.id,
        "kind": source.kind,
        "on_hand": source.on_hand,
        "length": length(source.length),
        "width": length(source.width),
        "grain": source.grain,
        "price": _money(source.price),
        "laid": [_laid(laid) for laid in plan.laid],
        "leftovers": [_leftover(leftover) for leftover in plan.leftovers],
        "cuts": [_cut(cut) for cut in plan.cuts],
    }


def _laid(laid: Laid) -> Json:
    return {
        "mark": laid.mark,
        "copy": laid.copy,
        "x": length(laid.x),
        "y": length(laid.y),
        "length": length(laid.length),
        "width": length(laid.width),
        "turned": laid.turned,
        "reserved": laid.reserved,
    }


def _leftover(leftover: Leftover) -> Json:
    return {
        "name": leftover.name,
        "keep": leftover.keep,
        "x": length(leftover.x),
        "y": length(leftover.y),
        "length": length(leftover.length),
        "width": length(leftover.width),
    }


def _cut(cut: Cut) -> Json:
    return {
        "number": cut.number,
        "board": cut.board,
        "kind": cut.kind,
        "across": cut.across,
        "setting": length(cut.setting),
        "reference": cut.reference,
        "at": length(cut.at),
        "kerf": length(cut.kerf),
        "cut_length": length(cut.cut_length),
        "saw": None if cut.saw is None else cut.saw.name,
        "off": _falls(cut.off),
        "rest": None if cut.rest is None else _falls(cut.rest),
    }


def _falls(falls: Falls) -> Json:
    return {
        "kind": falls.kind,
        "mark": falls.mark or None,
        "copy": falls.copy or None,
        "board": falls.board or None,
        "length": length(falls.length),
        "width": length(falls.width),
    }


def _setting(setting: Setting) -> Json:
    return {
        "saw": setting.saw.name,
        "kind": setting.kind,
        "setting": length(setting.setting),
        "cuts": list(setting.cuts),
    }


def _offcut(stock: str, long: Fraction, wide: Fraction, grain: str | None) -> Json:
    return {"stock": stock, "length": length(long), "width": length(wide), "grain": grain}
