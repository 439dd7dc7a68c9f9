"""Which stock of one plan is which of the other, and which measure."""

from __future__ import annotations

import re
from collections.abc import Hashable, Iterator, Mapping
from dataclasses import dataclass

from setout.piece.letters import mark_order
from setout.piece.numbers import form, form_text
from setout.piece.outline import Outline
from setout.piece.parse import bare, measures_of, parse_shape
from setout.piece.shape import VERSION, shape
from setout.plan.model import Plan
from setout.resolve.model import MeasureDef, Stock


@dataclass(frozen=True)
class Names:
    """By its own name, the name that a stock or measure of one plan is compared under, where that is another."""

    stocks: Mapping[str, str]
    measures: Mapping[str, str]

    def stock(self, name: str) -> str:
        return self.stocks.get(name, name)

    def shape(self, text: str) -> str:
        """A piece's shape under these names."""
        if self.measures and self.measures.keys() & measures_of(text):
            text = _measured(text, self.measures)
        return re.sub(r"\b(sheet|stick) (\w+) ", lambda m: f"{m[1]} {self.stock(m[2])} ", text)


def common_names(old: Plan, new: Plan) -> tuple[Names, Names]:
    """What was merely renamed keeps the later of its two names, so that it is the same both ways round. A stock that
    kept its name and became another material has two: no board of the one is taken for a board of the other."""
    before, after = _stocks(old), _stocks(new)
    stocks = _common(*({name: _stock(one) for name, one in some.items()} for some in (before, after)))
    measures = _common(*({name: _measure(one) for name, one in _measures(plan).items()} for plan in (old, new)))
    for name in sorted(set(before) & set(after)):
        if not _one_material(before[name], after[name]):
            titles = before[name].title, after[name].title
            stocks[0][name], stocks[1][name] = (f"{name}.{title}".replace(" ", "_") for title in titles)
    return Names(stocks[0], measures[0]), Names(stocks[1], measures[1])


def renamed_measures(names: tuple[Names, Names]) -> dict[str, str]:
    """Old → new."""
    now = {common: name for name, common in names[1].measures.items()}
    return {name: now[common] for name, common in names[0].measures.items()}


def _common(old: Mapping[str, Hashable], new: Mapping[str, Hashable]) -> tuple[dict[str, str], dict[str, str]]:
    names: tuple[dict[str, str], dict[str, str]] = ({}, {})
    for name, other in _renamed(old, new):
        names[0][name] = names[1][other] = max(name, other)
    return names


def _renamed(old: Mapping[str, Hashable], new: Mapping[str, Hashable]) -> Iterator[tuple[str, str]]:
    """Names that are gone, each with a fresh one of which the same is known."""
    fresh = {new[name]: name for name in sorted(set(new) - set(old), reverse=True)}
    for name in sorted(set(old) - set(new)):
        if old[name] in fresh:
            yield name, fresh.pop(old[name])


# --- stocks ----------------------------------------------------------------------------------------------


def _stocks(plan: Plan) -> dict[str, Stock]:
    return {p.stock.name: p.stock for p in sorted(plan.pieces.pieces, key=lambda p: mark_order(p.mark))}


def _stock(stock: Stock) -> Hashable:
    return stock.kind, stock.title, stock.long, stock.short, stock.thick, stock.grain, stock.lengths


def _one_material(a: Stock, b: Stock) -> bool:
    """Sizes apart. What only one of them says of its wood is no contradiction."""
    said = ((a.species, b.species), (a.panel, b.panel))
    return a.kind == b.kind and a.title == b.title and all(x == y or not (x and y) for x, y in said)


# --- measures --------------------------------------------------------------------------------------------


def _measures(plan: Plan) -> Mapping[str, MeasureDef]:
    return plan.pieces.joined.placed.project.measures


def _measure(measure: MeasureDef) -> Hashable:
    return measure.title, measure.low, measure.high, measure.taken


def _measured(text: str, names: Mapping[str, str]) -> str:
    """A held shape with its measures called so. Which way a board is laid, and in which order its measures stand, may
    hang on what they are called."""
    outline = parse_shape(bare(text))
    if outline is not None:
        return f"{VERSION} {shape(_called(outline, names)).text}"
    # It follows no straight line: what it hangs on is listed in front, and only its sizes may be formulas.
    front, _, rest = text.partition(": ")
    version, varies, *measures = front.split(" ")
    front = " ".join((version, varies, *sorted(names.get(m, m) for m in measures)))
    return f"{front}: {re.sub(r'[(][^)]*[)]', lambda found: _formula(found[0], names), rest)}"


def _called(outline: Outline, names: Mapping[str, str]) -> Outline:
    constants, *slopes = outline.columns
    by_name = {names.get(m, m): column for m, column in zip(outline.measures, slopes)}
    measures = tuple(sorted(by_name))
    return Outline(outline.skeleton, (constants, *(by_name[m] for m in measures)), measures)


def _formula(text: str, names: Mapping[str, str]) -> str:
    said = {names.get(m, m): k for m, k in form(text).items()}
    measures = sorted(m for m in said if m)
    return form_text([said[""], *(said[m] for m in measures)], measures)
