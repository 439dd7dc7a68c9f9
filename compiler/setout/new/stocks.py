"""The sheets that a list of boards is cut from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil

from setout.new.amounts import thickness_in
from setout.new.model import Amount, Stock
from setout.new.names import cleaned, named
from setout.practice import standard
from setout.units import inches_per

MOST_LONG, MOST_WIDE, MOST_THICK = 500, 200, 5  # inches; larger than any board
_USUAL = {"in": (96, 48), "mm": (2440, 1220)}
_USUAL_THICK = {"in": Amount(Fraction(3, 4), "in", "3/4"), "mm": Amount(Fraction(18), "mm", "18")}
_TRIM = {"in": 1, "mm": 25}  # on each edge of a sheet made to measure


@dataclass
class Pile:
    """Boards of one material and thickness. The largest sizes put on it, in inches, the grain lengthwise."""

    material: str
    thick: Amount | None
    length: Fraction = Fraction(0)
    width: Fraction = Fraction(0)
    grain: bool = False

    def put(self, length: Fraction, width: Fraction, grain: bool) -> None:
        if not grain:
            length, width = max(length, width), min(length, width)
        self.length, self.width = max(self.length, length), max(self.width, width)
        self.grain = self.grain or grain

    def stock(self, name: str, unit: str, alone: bool) -> Stock:
        """`alone`: no other stock has this material, so the title need not tell the thickness."""
        thick = self.thick or _USUAL_THICK[unit]
        size = tuple(self.size(most, usual, unit) for most, usual in zip((self.length, self.width), _USUAL[unit]))
        title = self.material or "boards"
        said = "" if alone and self.material else f", {thick.text} {thick.unit}"
        along = size[0] if self.grain else None
        larger = size != _USUAL[unit]
        return Stock(name, title + said, thick, max(size), min(size), along, self.thick is None, larger)

    @staticmethod
    def size(most: Fraction, usual: int, unit: str) -> int:
        """`most` is what is cut of the sheet, once its edges are trimmed."""
        if most + 2 * standard().value("edge_trim") <= usual * inches_per(unit):
            return usual
        return ceil(most / inches_per(unit)) + 2 * _TRIM[unit]


@dataclass
class Piles:
    """Piles by material and thickness, in the order they are met."""

    found: dict[tuple[str, Fraction | None], Pile] = field(default_factory=dict)

    def pile(self, material: str, thick: Amount | None) -> Pile:
        title = cleaned(material)
        thick = thick or thickness_in(title)
        key = (title.casefold(), thick.value * inches_per(thick.unit) if thick else None)
        return self.found.setdefault(key, Pile(title, thick))

    def stocks(self, unit: str, taken: set[str]) -> Iterator[tuple[Pile, Stock]]:
        """Each pile with its stock, named apart from what is taken already."""
        materials = [pile.material.casefold() for pile in self.found.values()]
        names = set(taken)
        for pile in self.found.values():
            name = named(pile.material, "sheet", names)
            names.add(name)
            yield pile, pile.stock(name, unit, materials.count(pile.material.casefold()) == 1)
