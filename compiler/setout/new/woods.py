"""Sticks by the trade's names, and woods that are sold as boards rather than as sheets."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from setout.new.model import Amount
from setout.units import exact

# Dressed sizes of softwood lumber in inches, by its names: what is left of each side. Source: PS 20, American Softwood
# Lumber Standard, dry.
_THICK = {1: Fraction(3, 4), 2: Fraction(3, 2), 4: Fraction(7, 2)}
_WIDE = {
    **{named: named - Fraction(1, 2) for named in range(2, 7)},
    **{named: named - Fraction(3, 4) for named in range(8, 13, 2)},
}
_NAMED = re.compile(r"(?<![\w./-])([124])\s?[x×]\s?(2|3|4|5|6|8|10|12)(?![\w./]|\s?(?:mm|cm|m|ft|')\b)", re.IGNORECASE)
_SOLID = re.compile(
    r"\b(?:pine|fir|spruce|larch|cedar|hemlock|redwood|oak|maple|poplar|ash|alder|basswood|beech|birch|cherry|elm|hickory"
    r"|mahogany|sapele|teak|walnut|hardwood|softwood|lumber|timber|solid)\b"
)
_SHEET = re.compile(
    r"ply|mdf|hdf|osb|particle|chip|hardboard|fibre|fiber|flake|melamine|laminat|veneer|faced|panel|sheet|blockboard|multiplex"
)


@dataclass(frozen=True)
class Nominal:
    """`name` as in 1x6; `rest` of the material's name without it. `sawn`: width and thickness by name, in inches."""

    name: str
    rest: str
    width: Amount
    thick: Amount
    sawn: tuple[int, int]


def nominal(material: str) -> Nominal | None:
    """`2x4`, `1 x 6 pine`, `1×2`."""
    found = _NAMED.search(material)
    if found is None or _SHEET.search(material.casefold()):
        return None
    thick, wide = int(found[1]), int(found[2])
    if wide < thick or (thick == 4 and wide > 6):
        return None  # 4x8 is rather a sheet, in feet
    rest = f"{material[: found.start()]} {material[found.end() :]}".strip()
    return Nominal(f"{thick}x{wide}", rest, _inches(_WIDE[wide]), _inches(_THICK[thick]), (wide, thick))


def solid(material: str) -> bool:
    text = material.casefold()
    return bool(_SOLID.search(text)) and not _SHEET.search(text)


def _inches(value: Fraction) -> Amount:
    return Amount(value, "in", exact(value))
