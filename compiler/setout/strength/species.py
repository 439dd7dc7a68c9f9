"""Solid woods: weight, stiffness, and how much they move across the grain."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any, Literal

from setout.strength.moisture import change_coefficient
from setout.strength.tables import figure, table


@dataclass(frozen=True)
class Species:
    """One wood at 12 % moisture. `gravity`: ovendry weight over volume at 12 %; `design`: the specific gravity by which
    screws are reckoned (its own where no table gives one: lower, so on the safe side); `modulus`: psi, clear wood;
    `radial`, `tangential`: change of size per 1 % of moisture, as shares."""

    name: str
    also: tuple[str, ...]
    kind: Literal["hardwood", "softwood"]
    gravity: Fraction
    design: Fraction
    modulus: Fraction
    radial: Fraction
    tangential: Fraction
    source: str

    @property
    def density(self) -> Fraction:
        """lb/ft3 at 12 % moisture: Wood Handbook, ch. 4."""
        return self.gravity * figure("water_density") * figure("moist_share")


@cache
def all_species() -> Mapping[str, Species]:
    """By the name under which the Wood Handbook has it, in the table's order."""
    return {name: _species(name, row) for name, row in table("species").items()}


def find_species(said: str) -> Species | None:
    """The wood of that name, or of one that a shop uses ("poplar", "hard maple"); upper and lower case are alike."""
    return _names().get(" ".join(said.lower().split()))


@cache
def _names() -> Mapping[str, Species]:
    return {name.lower(): wood for wood in all_species().values() for name in (wood.name, *wood.also)}


def _species(name: str, row: Mapping[str, Any]) -> Species:
    if "change" in row:
        radial, tangential = map(Fraction, row["change"])
    else:
        radial, tangential = (change_coefficient(Fraction(s)) for s in row["shrinkage"])
    gravity = Fraction(row["gravity"])
    return Species(
        name=name,
        also=tuple(row["also"]),
        kind=row["kind"],
        gravity=gravity,
        design=Fraction(row.get("design", gravity)),
        modulus=Fraction(row["modulus"]),
        radial=radial,
        tangential=tangential,
        source=row["source"],
    )
