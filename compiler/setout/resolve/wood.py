"""What a stock weighs and how stiff it is: its own numbers, else those of the kind of wood or sheet that it says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from setout.read import model as r
from setout.resolve import problems
from setout.resolve.banding import metric_file
from setout.resolve.model import Stock
from setout.strength import Panel, Species, all_panels, all_species, figure, find_panel, find_species

if TYPE_CHECKING:
    from setout.resolve.constants import Amounts

_KG = Fraction("0.45359237")  # kilograms in a pound: exact, by definition
_INCH = Fraction(254, 10000)  # metres in an inch: exact, by definition
_FOOT = 12 * _INCH
_GRAVITY = Fraction("9.80665")  # m/s2: standard, by definition
LB_PER_FT3 = _FOOT**3 / _KG  # in 1 kg/m3
LB_PER_FT2 = _FOOT**2 / _KG  # in 1 kg/m2
PSI = Fraction(1_000_000) * _INCH**2 / (_KG * _GRAVITY)  # in 1 N/mm2

# Least and most that any board has, with room to spare, from foam board to steel: common practice, no source.
_DENSITIES = (Fraction(2), Fraction(100))
_STIFFNESSES = (Fraction(5_000), Fraction(30_000_000))


def with_wood(made: Stock, stock: r.StockStatement, amounts: Amounts) -> Stock:
    """The stock with its density, stiffness and creep, as far as the spec settles them."""
    clauses = {c.key: c for c in reversed(stock.clauses)}
    wood, sheet = _species(clauses.get("species"), amounts), _panel(clauses.get("panel"), amounts)
    if "species" in clauses and "panel" in clauses:
        amounts.ctx.say(problems.species_and_panel(clauses["panel"].span, clauses["species"].span))
    kind = wood or sheet
    density = _number(clauses.get("density"), LB_PER_FT3, _DENSITIES, amounts)
    stiffness = _number(clauses.get("stiffness"), PSI, _STIFFNESSES, amounts)
    return replace(
        made,
        density=density or (kind.density if kind else None),
        stiffness=stiffness or (kind.modulus if kind else None),
        species=wood.name if wood else None,
        panel=sheet.name if sheet else None,
        creep=sheet.creep if sheet else figure("creep_wood"),
    )


def _species(clause: r.StockClause | None, amounts: Amounts) -> Species | None:
    if clause is None or clause.words is None:
        return None
    found = find_species(_text(clause.words))
    if found is None:
        amounts.ctx.say(problems.unknown_wood(clause, _text(clause.words), _names(all_species())))
    return found


def _panel(clause: r.StockClause | None, amounts: Amounts) -> Panel | None:
    if clause is None or clause.words is None:
        return None
    found = find_panel(_text(clause.words))
    if found is None:
        amounts.ctx.say(problems.unknown_wood(clause, _text(clause.words), _names(all_panels())))
    return found


def _names(table: Mapping[str, Species] | Mapping[str, Panel]) -> list[str]:
    return [name for row in table.values() for name in (row.name, *row.also)]


def _text(words: r.Name | r.Text) -> str:
    return words.text if isinstance(words, r.Name) else words.value


def _number(
    clause: r.StockClause | None, metric: Fraction, bounds: tuple[Fraction, Fraction], amounts: Amounts
) -> Fraction | None:
    """In lb/ft3 or psi; `metric` is how much of it one metric unit makes."""
    if clause is None:
        return None
    amount = amounts.plain(clause.values[0], clause.key)
    if amount is None:
        return None
    is_metric = metric_file(clause.span.file, amounts.ctx)
    value = amount * metric if is_metric else amount
    if not bounds[0] <= value <= bounds[1]:
        unit = metric if is_metric else Fraction(1)
        amounts.ctx.say(problems.odd_strength(clause, is_metric, bounds[0] / unit, bounds[1] / unit))
        return None
    return value
