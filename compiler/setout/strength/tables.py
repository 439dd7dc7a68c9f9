"""The figures of strength, weight and moisture as data, each with its source. Read once."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any

Number = int | float | Fraction


@dataclass(frozen=True)
class Figure:
    """One published figure. `unit` is printed as it stands: "in", "lb", "lb/ft2", "ratio", "percent" …"""

    name: str
    value: Fraction
    unit: str
    means: str
    source: str


def figure(name: str) -> Fraction:
    """The figure of that name, exactly as published. KeyError when there is none (our bug, not the builder's)."""
    return figures()[name].value


@cache
def figures() -> dict[str, Figure]:
    """All of `figures.toml`, by name."""
    return {
        name: Figure(name, Fraction(row["value"]), row["unit"], row["means"], row["source"])
        for name, row in table("figures").items()
    }


def table(name: str) -> dict[str, Any]:
    """One of the tables beside this file, as TOML has it."""
    return tomllib.loads((files("setout.strength") / f"{name}.toml").read_text("utf-8"))
