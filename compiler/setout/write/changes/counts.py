"""Numbers before and after, as lines of print."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from setout.compare.model import Changes, Delta
from setout.units import Style, as_metric, exact
from setout.write.changes.model import Table
from setout.write.facts.measures import heavy
from setout.write.facts.sizes import area, decimal, run

_PLAIN = {
    "boards": "boards",
    "pieces": "kinds of pieces",
    "steps": "steps",
    "unweighed": "boards of unknown weight",
    "unpriced": "things without a price",
    "weight": "weight of the boards",
    "money": "money",
}


_ORDER = (
    "sheet", "stick", "edging", "hardware", "money", "unpriced", "boards", "pieces", "weight", "unweighed",
    "screws", "pockets", "brads", "dowels", "glue", "hole", "pocket", "steps",
)  # fmt: skip


def numbers(changes: Changes, style: Style) -> Table:
    known = [delta for delta in changes.numbers if delta.kind != "unweighed" or _tells(delta, changes.numbers)]
    ordered = sorted(known, key=lambda delta: _ORDER.index(delta.kind))
    rows = tuple(row for row in (_row(delta, style) for delta in ordered) if re.search("[1-9]", row[-1]))
    least = any(delta.least for delta in changes.numbers)
    note = "Sheets and sticks are the least number by area; a cutting plan may ask for more." if least else ""
    return Table("numbers", "Numbers", note, ("What", "Before", "Now", "Difference"), rows)


def _tells(unweighed: Delta, numbers: Sequence[Delta]) -> bool:
    """Whether more is unknown than that there are more boards or fewer."""
    return all(delta.kind != "boards" or delta.by != unweighed.by for delta in numbers)


def _row(delta: Delta, style: Style) -> tuple[str, str, str, str]:
    sign = "+" if delta.by > 0 else "−"
    return _what(delta), _amount(delta, delta.old, style), _amount(delta, delta.new, style), (
        sign + _amount(delta, abs(delta.by), style)
    )


def _what(delta: Delta) -> str:
    sizes = " × ".join(exact(size) for size in delta.sizes)
    if delta.kind in ("hole", "pocket"):
        return f"{'pocket holes' if delta.kind == 'pocket' else 'holes'}, {_drill(delta.sizes[0])}"
    if delta.kind in ("screws", "pockets", "brads", "dowels"):
        word = "pocket screws" if delta.kind == "pockets" else delta.kind
        return f"{word}, {' × '.join(part for part in (delta.name, sizes) if part)} in"
    if delta.kind == "sheet":
        return f"sheets of {delta.name}"
    if delta.kind == "stick":
        return f"sticks of {delta.name}, {sizes} in long"
    if delta.kind == "glue":
        return f"{delta.name}, joints glued"
    return _PLAIN.get(delta.kind, delta.name)


def _drill(diameter: Fraction) -> str:
    """As the drill is sold."""
    return as_metric(diameter) or f"{exact(diameter)} in"


def _amount(delta: Delta, value: Fraction, style: Style) -> str:
    if delta.kind == "weight":
        return heavy(value, style)
    if delta.kind == "money":
        return decimal(value, 2)
    if delta.kind == "glue":
        return f"{area(value, style)} {'m²' if style.metric else 'sq ft'}"
    if delta.kind == "edging":
        return f"{run(value, style)} {'m' if style.metric else 'ft'}"
    return exact(value)
