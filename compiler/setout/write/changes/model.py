"""A change sheet as it is printed: sections of tables, all cells text."""

from __future__ import annotations

from dataclasses import dataclass

from setout.write.facts.ticks import ticks


@dataclass(frozen=True)
class Table:
    """`heads` one a column; the last column is the long one. `counts`: of how many boards each row is, which
    on paper are ticked off."""

    id: str
    title: str
    note: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    counts: tuple[int, ...] = ()

    @property
    def ticks(self) -> tuple[tuple[int, int], ...]:
        """For each row so many boxes to tick, or 0, and of how many boards."""
        return tuple((ticks(count), count) for count in self.counts)


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
