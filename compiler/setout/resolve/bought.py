"""What hardware says of buying: rolls of edging, boxes of fasteners, how many are on hand."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from setout.read import model as r
from setout.resolve import problems
from setout.resolve.banding import metric_file
from setout.resolve.model import Edging, Serves
from setout.resolve.sized import sized

if TYPE_CHECKING:
    from setout.resolve.constants import Amounts

_WIDEST, _THICKEST, _LONGEST = Fraction(12), Fraction(1), Fraction(60_000)  # inches: common practice, no source
_MOST = 100_000
KG = Fraction("0.45359237")  # kilograms in a pound: exact, by definition
_FOOT = Fraction(144)  # square inches in a square foot
_METRE = Fraction(10_000, 254) ** 2  # square inches in a square metre


def edging_of(clauses: Mapping[str, r.StockClause], name: str, amounts: Amounts) -> Edging | None:
    clause = clauses.get("edging")
    if clause is None:
        return None
    width = sized(clause, 0, name, "width", _WIDEST, amounts)
    thick = sized(clause, 1, name, "thickness", _THICKEST, amounts)
    long = sized(clause, 2, name, "length", _LONGEST, amounts)
    if width is None or thick is None or long is None:
        return None
    return Edging(max(width, thick), min(width, thick), long)


def serves_of(clauses: Mapping[str, r.StockClause], name: str, amounts: Amounts) -> Serves | None:
    """What joints use it up: fasteners of a size, or glue by area."""
    clause = next((c for key, c in clauses.items() if key.startswith("serves")), None)
    if clause is None:
        return None
    kind = clause.key.removeprefix("serves_")
    if kind == "glue":
        area = amounts.plain(clause.values[0], "the area that it covers")
        if area is not None and not 0 < area <= _MOST:
            amounts.ctx.say(problems.odd_number_of(clause.values[0].span, "an area that one covers", "`covers 30`"))
            return None
        each = _METRE if metric_file(clause.span.file, amounts.ctx) else _FOOT
        return Serves(kind, None, None, None, area * each) if area is not None else None
    long = sized(clause, len(clause.values) - 1, name, "length", Fraction(24), amounts)
    gauge = amounts.count(clause.values[0], "a gauge") if kind == "screws" else None
    diameter = sized(clause, 0, name, "diameter", Fraction(4), amounts) if kind == "dowels" else None
    return Serves(kind, gauge, long, diameter, None)


def load_of(clauses: Mapping[str, r.StockClause], amounts: Amounts) -> Fraction | None:
    """Pounds; kilograms in a metric file."""
    clause = clauses.get("slideload")
    load = amounts.plain(clause.values[0], "a load") if clause is not None else None
    if load is None or clause is None:
        return None
    if not 0 < load <= _MOST:
        amounts.ctx.say(problems.odd_number_of(clause.values[0].span, "a load that it carries", "`load 75`"))
        return None
    return load / KG if metric_file(clause.span.file, amounts.ctx) else load


def on_hand_of(clauses: Mapping[str, r.StockClause], amounts: Amounts) -> int:
    clause = clauses.get("on_hand")
    if clause is None:
        return 0
    if len(clause.values) > 1:
        amounts.ctx.say(problems.odd_number_of(clause.values[1].span, "how many there are", "`on hand 12`"))
    count = amounts.count(clause.values[0], "how many there are")
    if count is not None and count > _MOST:
        amounts.ctx.say(problems.odd_number_of(clause.values[0].span, "how many there are", "`on hand 12`"))
    return count or 0
