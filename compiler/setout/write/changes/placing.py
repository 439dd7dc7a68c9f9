"""Assemblies that came, went, grew or moved, and boards that only stand elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.compare.model import AssemblyChange, BoardChange, Changes
from setout.geometry import AXIS_WORDS
from setout.units import Style
from setout.write.changes import wording
from setout.write.changes.model import Table
from setout.write.facts.paths import ranges

SLIGHT = Fraction(1, 8)
"""Something that is resized shifts as well; so little is told in a word."""
_RANK = ("added", "gone", "resized", "renamed", "moved")


@dataclass(frozen=True)
class _Entry:
    """What is said of one path. Entries of equal `kind`, `says`, `stands` and `within` stand in one row. `before`: what
    it was called, "" if the same; `sizes`: before and after, told where they are the same all along the row."""

    kind: str
    says: str
    within: str
    path: str
    before: str = ""
    sizes: str = ""
    stands: str = ""


def placing(changes: Changes, style: Style) -> Table:
    rows: dict[tuple[str, ...], list[_Entry]] = {}
    for entry in (*_assemblies(changes, style), *_boards(changes, style)):
        if entry.says or entry.stands or entry.before:
            rows.setdefault((entry.kind, entry.says, entry.stands, entry.within), []).append(entry)
    ordered = sorted(rows.values(), key=lambda row: _RANK.index(row[0].kind))
    cells = tuple((", ".join(ranges(entry.path for entry in row)), _says(row)) for row in ordered)
    return Table("assemblies", "Where things stand", "", ("What", "Change"), cells)


def elsewhere(changes: Changes) -> list[BoardChange]:
    """Boards that are as they were, but moved; not by as much as their assembly grew, with a side of which they go."""
    grown = {a.new: {s.axis: s.by for s in a.sized} for a in changes.assemblies if a.new is not None}
    alone = (c for c in changes.boards if c.old and c.new and set(c.how) <= {"moved", "rejoined", "marked", "renamed"})
    return [c for c in alone if c.moved and c.new and not _goes_along(c.moved, grown.get(c.new.owner, {}))]


def stands_elsewhere(change: AssemblyChange) -> bool:
    """Whether it moved by more than its own growth brings with it."""
    by = wording.shifted(change)
    return by is not None and (not change.sized or max(map(abs, by)) > SLIGHT)


def _goes_along(moved: Sequence[Fraction], grown: Mapping[str, Fraction]) -> bool:
    return all(not by or by == grown.get(axis) for axis, by in zip(AXIS_WORDS, moved))


def _says(row: Sequence[_Entry]) -> str:
    words = row[0].says
    sizes = {entry.sizes for entry in row}
    if len(sizes) == 1 and row[0].sizes:
        words += f" ({row[0].sizes})"
    words = "; ".join(part for part in (words, row[0].stands) if part)
    before = [entry.before for entry in row if entry.before]
    if before:
        called = f"{'was' if len(before) == 1 else 'were'} called {', '.join(ranges(before))}"
        words = f"{called}; {words}" if words else called
    return words


def _assemblies(changes: Changes, style: Style) -> Iterator[_Entry]:
    for change in changes.assemblies:
        kind = next(word for word in _RANK if word in change.how or word == "moved")
        path, before = change.new or change.old or "", ""
        within = ""
        if "renamed" in change.how and change.old is not None:
            before, within = change.old, f"{_stem(change.old)} > {_stem(path)}"
        sizes = wording.old_and_new(change.sized, style)
        stands = wording.standing(change, style, SLIGHT if change.sized else Fraction(0))
        yield _Entry(kind, wording.assembly(change, style), within, path, before, sizes, stands)


def _stem(path: str) -> str:
    """What members of a repeat share."""
    stem, _, last = path.rpartition(".")
    return stem if last.isdecimal() else path


def _boards(changes: Changes, style: Style) -> Iterator[_Entry]:
    """The boards of an assembly in one row, however far each has moved."""
    of: dict[str, list[BoardChange]] = {}
    for change in elsewhere(changes):
        assert change.new is not None
        of.setdefault(change.new.owner, []).append(change)
    for owner, some in of.items():
        farthest = wording.farthest([change.moved for change in some if change.moved], style)
        for change in some:
            assert change.new is not None and change.moved is not None
            says = farthest if owner else wording.moves(change.moved, style)
            yield _Entry("moved", "", owner, change.new.path, stands=says)
