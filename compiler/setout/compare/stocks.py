"""Which stock of one plan is which of the other."""

from __future__ import annotations

from collections.abc import Mapping

from setout.piece.letters import mark_order
from setout.plan.model import Plan
from setout.resolve.model import Stock

Names = Mapping[str, str]


def common_names(old: Plan, new: Plan) -> tuple[Names, Names]:
    """The name that each stock is compared under, where that isn't its own.

    One that was merely renamed keeps the later of its two names, so that it is the same both ways round. One that
    kept its name and became another material has two: no board of the one is taken for a board of the other.
    """
    before, after = _stocks(old), _stocks(new)
    names: tuple[dict[str, str], dict[str, str]] = ({}, {})
    fresh = {_facts(after[name]): name for name in sorted(set(after) - set(before), reverse=True)}
    for name in sorted(set(before) - set(after)):
        other = fresh.pop(_facts(before[name]), None)
        if other is not None:
            names[0][name] = names[1][other] = max(name, other)
    for name in sorted(set(before) & set(after)):
        if not _one_material(before[name], after[name]):
            titles = before[name].title, after[name].title
            names[0][name], names[1][name] = (f"{name}.{title}".replace(" ", "_") for title in titles)
    return names


def _stocks(plan: Plan) -> dict[str, Stock]:
    return {p.stock.name: p.stock for p in sorted(plan.pieces.pieces, key=lambda p: mark_order(p.mark))}


def _facts(stock: Stock) -> tuple:
    return stock.kind, stock.title, stock.long, stock.short, stock.thick, stock.grain, stock.lengths


def _one_material(a: Stock, b: Stock) -> bool:
    """Sizes apart. What only one of them says of its wood is no contradiction."""
    said = ((a.species, b.species), (a.panel, b.panel))
    return a.kind == b.kind and a.title == b.title and all(x == y or not (x and y) for x, y in said)
