"""The table as data. It is read once; a spec's overrides make a new table."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import cache
from importlib.resources import files


@dataclass(frozen=True)
class Row:
    """One rule of thumb. `unit`: "in" (lengths, inches), "count", "ratio", "hours", "minutes", "degrees", "lb", "in2".

    One of three is given: `value`; `steps`, pairs (thickness, length or gauge; value), smallest first; or `choices`,
    what is on sale, smallest first. `above_zero`: something is divided by it.
    """

    name: str
    value: Fraction | None
    unit: str
    means: str
    source: str
    steps: tuple[tuple[Fraction, Fraction], ...] = ()
    choices: tuple[Fraction, ...] = ()
    above_zero: bool = False


@dataclass(frozen=True)
class Practice:
    """Rows by name."""

    rows: Mapping[str, Row]
    _nearest: dict[tuple[str, Fraction], Fraction] = field(init=False, default_factory=dict, repr=False, compare=False)

    def value(self, name: str) -> Fraction:
        """The row's single value. KeyError when there is no such row (our bug, not the builder's)."""
        value = self.rows[name].value
        if value is None:
            raise KeyError(name)
        return value

    def nearest(self, name: str, size: Fraction) -> Fraction:
        """The value of the step nearest to `size` (the smaller step on a tie); the single value of a row overridden."""
        steps = self.rows[name].steps
        if not steps:
            return self.value(name)
        if (name, size) not in self._nearest:  # few thicknesses are asked for, and often
            self._nearest[name, size] = min(steps, key=lambda step: (abs(step[0] - size), step[0]))[1]
        return self._nearest[name, size]

    def choices(self, name: str) -> tuple[Fraction, ...]:
        """What is on sale, smallest first; only the one value of a row overridden."""
        return self.rows[name].choices or (self.value(name),)

    def overridden(self, values: Mapping[str, Fraction]) -> Practice:
        """The table with those rows replaced by single values; the source then reads "this spec"."""
        changed = {
            n: replace(self.rows[n], value=v, source="this spec", steps=(), choices=()) for n, v in values.items()
        }
        return Practice({**self.rows, **changed})


def _fraction(text: str) -> Fraction:
    whole, dash, part = text.partition("-")
    return Fraction(whole) + Fraction(part) if dash and whole else Fraction(text)


@cache
def standard() -> Practice:
    """The table that setout ships, from `rows.toml` beside this file."""
    data = tomllib.loads((files("setout.practice") / "rows.toml").read_text("utf-8"))
    return Practice({name: _row(name, row) for name, row in data.items()})


def _row(name: str, row: Mapping) -> Row:
    steps = tuple(sorted((_fraction(k), _fraction(v)) for k, v in row.get("steps", {}).items()))
    choices = tuple(sorted(map(_fraction, row.get("choices", ()))))
    value = _fraction(row["value"]) if "value" in row else None
    return Row(name, value, row["unit"], row["means"], row["source"], steps, choices, row.get("above_zero", False))
