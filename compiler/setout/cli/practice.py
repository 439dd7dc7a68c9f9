"""`setout practice`: the tables that everything rests on. Each row says who says so."""

from __future__ import annotations

import sys
from argparse import Namespace
from collections.abc import Iterator
from fractions import Fraction

from setout.cli.codes import CLEAN, USAGE
from setout.cli.terminal import shown
from setout.diagnostics.suggest import did_you_mean
from setout.practice import Row, standard
from setout.strength import Figure, Panel, Species, all_panels, all_species, figures
from setout.units import exact

TABLES = ("rows", "figures", "species", "panel")
_HEADS = {
    "rows": "Rules of thumb. A spec sets a row: practice { NAME VALUE }",
    "figures": "Published figures of strength, moisture, lifting",
    "species": "Solid wood, said with `species` in a stock",
    "panel": "Sheets, said with `panel` in a stock",
}
Entry = Row | Figure | Species | Panel


def run(given: Namespace) -> int:
    tables = _tables()
    if given.name is None or given.name in TABLES:
        names = TABLES if given.name is None else (given.name,)
        print("\n\n".join("\n".join(_printed(name, tables[name])) for name in names))
        return CLEAN
    wanted = given.name.lower()
    known = [entry for entries in tables.values() for entry in entries]
    hits = [entry for entry in known if wanted in _calls(entry)]
    hits = hits or [entry for entry in known if entry.name.lower().startswith(wanted)]
    if not hits:
        hint = did_you_mean(wanted, [entry.name for entry in known])
        print(
            f"setout practice: there is no row {shown(given.name)}; {hint or 'practice alone lists them'}",
            file=sys.stderr,
        )
        return USAGE
    print("\n".join(line for entry in hits for line in _entry(entry)))
    return CLEAN


def _tables() -> dict[str, list[Entry]]:
    return {
        "rows": list(standard().rows.values()),
        "figures": list(figures().values()),
        "species": list(all_species().values()),
        "panel": list(all_panels().values()),
    }


def _calls(entry: Entry) -> list[str]:
    return [name.lower() for name in (entry.name, *getattr(entry, "also", ()))]


def _printed(table: str, entries: list[Entry]) -> Iterator[str]:
    yield _HEADS[table]
    yield ""
    for entry in entries:
        yield from _entry(entry)


def _entry(entry: Entry) -> Iterator[str]:
    """Its value, then what it means, then its source."""
    if isinstance(entry, Species):
        told, means = _wood(entry), _also(entry)
    elif isinstance(entry, Panel):
        told, means = _sheet(entry), _also(entry)
    else:
        told, means = _worth(entry), entry.means
    yield f"{entry.name}: {told}"
    if means:
        yield f"    {means}"
    yield f"    source: {entry.source}"


def _worth(entry: Row | Figure) -> str:
    unit = "" if entry.unit in ("ratio", "count") else f" {entry.unit}"
    if isinstance(entry, Row) and entry.steps:
        return ", ".join(f"{exact(at)} → {exact(value)}" for at, value in entry.steps) + unit
    if isinstance(entry, Row) and entry.choices:
        return ", ".join(map(exact, entry.choices)) + unit
    return f"{_number(entry.value or Fraction(0), entry.unit)}{unit}"


def _number(value: Fraction, unit: str) -> str:
    """Lengths as on a tape; other numbers as decimals where those end."""
    if unit == "in" and value.denominator in (1, 2, 4, 8, 16, 32, 64):
        return exact(value)
    text = f"{float(value):.10g}"
    return text if Fraction(text) == value else str(value)


def _wood(wood: Species) -> str:
    flat, quarter = (f"{float(change) * 100:.3f} %" for change in (wood.tangential, wood.radial))
    return (
        f"{float(wood.density):.1f} lb/ft3, {int(wood.modulus)} psi, specific gravity {float(wood.gravity):g}, "
        f"across the grain {flat} (flat-sawn), {quarter} (quarter-sawn) for 1 % of moisture"
    )


def _sheet(panel: Panel) -> str:
    creep = f"sag after months {float(panel.creep):g} times the first"
    return f"{float(panel.density):g} lb/ft3, {int(panel.modulus)} psi, {creep}"


def _also(entry: Species | Panel) -> str:
    return f"also: {', '.join(entry.also)}" if entry.also else ""
