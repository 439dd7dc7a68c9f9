"""Sheet goods: weight, stiffness, and how far a sheet may be from the size on its label. Inches, lb, psi, lb/ft3."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from setout.strength.tables import Number, figure, table

CUBIC_FOOT = 1728


@dataclass(frozen=True)
class Panel:
    """One kind of sheet. `density` lb/ft3; `modulus` psi, on the safe side; `gravity` and `moduli`, the ranges printed
    (None where none is); `creep`: sag after months of load, in first sags. Sheets of one kind differ by some 15 %."""

    name: str
    also: tuple[str, ...]
    density: Fraction
    modulus: Fraction
    gravity: tuple[Fraction, Fraction] | None
    moduli: tuple[Fraction, Fraction] | None
    creep: Fraction
    source: str


@cache
def all_panels() -> Mapping[str, Panel]:
    """By name, in the table's order."""
    return {name: _panel(name, row) for name, row in table("panels").items()}


def find_panel(said: str) -> Panel | None:
    """The kind of that name, or of one that a shop uses; upper and lower case are alike."""
    return _names().get(" ".join(said.lower().split()))


def weight(volume: Number, density: Number) -> Number:
    """Pounds of so many cubic inches at so many lb/ft3."""
    return volume * density / Fraction(CUBIC_FOOT)


def thickness_range(category: Fraction, sanded: bool = False) -> tuple[Fraction, Fraction]:
    """Thinnest and thickest that plywood of a performance category may be: US PS 1-19, at 9 % moisture."""
    kind = "sanded" if sanded else "sheet"
    fixed = category <= figure(f"{kind}_thickness_up_to")
    off = figure(f"{kind}_thickness") if fixed else category * figure(f"{kind}_thickness_thick")
    return category - off, category + off


def size_range(size: Fraction) -> tuple[Fraction, Fraction]:
    """Shortest and longest that a sheet's length or width may be: US PS 1-19."""
    return size - figure("sheet_short"), size


def diagonals_differ(longest: Fraction) -> Fraction:
    """How much the diagonals of a sheet may differ, by its longest edge: US PS 1-19."""
    return figure("sheet_square") * longest / 12


@cache
def _names() -> Mapping[str, Panel]:
    return {name.lower(): panel for panel in all_panels().values() for name in (panel.name, *panel.also)}


def _panel(name: str, row: Mapping[str, Any]) -> Panel:
    return Panel(
        name=name,
        also=tuple(row["also"]),
        density=Fraction(row["density"]),
        modulus=Fraction(row["modulus"]),
        gravity=_pair(row.get("gravity")),
        moduli=_pair(row.get("range")),
        creep=figure(row["creep"]),
        source=row["source"],
    )


def _pair(texts: list[str] | None) -> tuple[Fraction, Fraction] | None:
    return None if texts is None else (Fraction(texts[0]), Fraction(texts[1]))
