"""The sheets and sticks that a list of boards is cut from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil

from setout.new.amounts import thickness_in
from setout.new.model import Amount, Stock
from setout.new.names import cleaned, stock_named
from setout.new.woods import Nominal, nominal, solid
from setout.practice import standard
from setout.units import inches_per

MOST_LONG, MOST_WIDE, MOST_THICK = 500, 200, 5  # inches; larger than any board
_USUAL = {"in": (96, 48), "mm": (2440, 1220)}
_USUAL_LONG = {"in": (96, 120, 144, 192), "mm": (2400, 3000, 3600, 4800)}
_USUAL_THICK = {"in": Amount(Fraction(3, 4), "in", "3/4"), "mm": Amount(Fraction(18), "mm", "18")}
_TRIM = {"in": 1, "mm": 25}  # on each edge of a sheet made to measure
_WIDEST_STICK = 12  # inches; a wider board of solid wood is glued up
_NEAR = Fraction(1, 16)  # inches, between the dressed size and what the table says of it


@dataclass
class Pile:
    """Boards of one material and thickness. The largest sizes put on it, in inches: `length` along the grain, `width`
    across it; `widths` as they are written."""

    material: str
    thick: Amount | None
    length: Fraction = Fraction(0)
    width: Fraction = Fraction(0)
    grain: bool = False
    widths: dict[Fraction, Amount] = field(default_factory=dict)

    def put(self, long: Amount, wide: Amount, grain: bool) -> None:
        self.length = max(self.length, inches(long))
        self.width = max(self.width, inches(wide))
        self.grain = self.grain or grain
        self.widths[inches(wide)] = wide

    def stock(self, name: str, unit: str, alone: bool) -> Stock:
        """`alone`: no other stock has this material, so the title need not tell the thickness."""
        named = nominal(self.material)
        thick = self.thick or (named.thick if named else _USUAL_THICK[unit])
        said = "" if alone and self.material else f", {thick.text} {thick.unit}"
        title = (self.material or "boards") + said
        stick = self.stick()
        less = named is not None and stick is not None and inches(stick) - inches(named.width) > _NEAR
        guessed = self.thick is None and (named is None or less)
        if guessed and named and stick and named.sawn[0] == named.sawn[1]:
            thick = stick  # a 2x2 is square, dressed to whatever size
        if stick:
            needed = ceil(self.length / inches_per(unit))
            long = next((one for one in _USUAL_LONG[unit] if one >= needed), needed)
            return Stock(name, title, thick, long, 0, None, guessed, False, stick)
        size = tuple(self.size(most, usual, unit) for most, usual in zip((self.length, self.width), _USUAL[unit]))
        along = size[0] if self.grain else None
        return Stock(name, title, thick, max(size), min(size), along, guessed, size != _USUAL[unit], None, self.doubt())

    def stick(self) -> Amount | None:
        """How wide, where the boards are of one stick: of a size by name, or all of one width."""
        most = max(self.widths)
        widest = self.widths[most]
        if named := nominal(self.material):
            thick = self.thick is None or abs(inches(self.thick) - inches(named.thick)) <= _NEAR
            over = most - inches(named.width)
            near = widest if 0 < abs(over) <= _NEAR else named.width
            return near if thick and over <= _NEAR else widest if self.dressed_less(named, most) else None
        fits = solid(self.material) and len(self.widths) == 1 and most <= _WIDEST_STICK
        return widest if fits else None

    def dressed_less(self, named: Nominal, width: Fraction) -> bool:
        """All of one size between the dressed one and that of the name, as where a 2x4 is 45 x 95 mm."""
        bounds = [(inches(one) - _NEAR, full) for one, full in zip((named.width, named.thick), named.sawn)]
        thick = inches(self.thick or named.thick)
        return len(self.widths) == 1 and all(low <= is_ <= full for is_, (low, full) in zip((width, thick), bounds))

    def doubt(self) -> str:
        """Why what by its name is no sheet was made one all the same."""
        if named := nominal(self.material):
            return f"a {named.name} is {named.width.text} x {named.thick.text} in, and not all its boards are"
        return "solid wood by its name, its boards of several widths or too wide" if solid(self.material) else ""

    @staticmethod
    def size(most: Fraction, usual: int, unit: str) -> int:
        """Of one side of the sheet, its edges still to be trimmed."""
        needed = most / inches_per(unit)
        return usual if needed <= usual - _trimmed(unit) else ceil(needed) + 2 * _TRIM[unit]


@dataclass
class Piles:
    """Piles by material and thickness, in the order they are met."""

    found: dict[tuple[str, Fraction | None], Pile] = field(default_factory=dict)

    def pile(self, material: str, thick: Amount | None) -> Pile:
        title = cleaned(material)
        thick = thick or thickness_in(title)
        key = (title.casefold(), inches(thick) if thick else None)
        return self.found.setdefault(key, Pile(title, thick))

    def stocks(self, unit: str, taken: set[str]) -> Iterator[tuple[Pile, Stock]]:
        """Each pile with its stock, named apart from what is taken already."""
        materials = [pile.material.casefold() for pile in self.found.values()]
        names = set(taken)
        for pile in self.found.values():
            size = nominal(pile.material)
            name = stock_named(f"{size.rest or 'lumber'} {size.name}" if size else pile.material, names)
            names.add(name)
            yield pile, pile.stock(name, unit, materials.count(pile.material.casefold()) == 1)


def _trimmed(unit: str) -> Fraction | int:
    """What trimming both edges of a sheet takes; whole millimetres."""
    both = 2 * standard().value("edge_trim") / inches_per(unit)
    return ceil(both) if unit == "mm" else both


def inches(found: Amount) -> Fraction:
    return found.value * inches_per(found.unit)
