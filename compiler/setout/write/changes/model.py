"""A change sheet as it is printed: sections of tables, all cells text."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Table:
    """`heads` one a column; the last column is the long one. `ticks`: on paper each row has so many boxes
    to tick, one a board."""

    id: str
    title: str
    note: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    ticks: tuple[int, ...] = ()


@dataclass(frozen=True)
class Sheet:
    """`old`, `new`: what was compared, as the builder named it. `summary` sentences; tables without rows are left
    out."""

    title: str
    old: str
    new: str
    unit: str
    summary: tuple[str, ...]
    tables: tuple[Table, ...]
    changed: bool
