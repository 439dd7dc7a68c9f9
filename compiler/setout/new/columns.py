"""What the columns of a table mean, by their heads."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from setout.new.amounts import UNITS
from setout.new.model import Column, Header, Row

# Of several heads in a row that mean one thing, the one that comes first here is taken.
_HEADS = {
    "name": "name, part name, part, piece, item, component, board, description, label, title, what",
    "length": "length, long, len, l, cut length, finished length, final length",
    "width": "width, wide, w, cut width, finished width, final width",
    "count": "quantity, qty, count, pieces, pcs, how many, amount, number, no, nr, q",
    "material": "material, stock, wood, sheet, board material",
    "thickness": "thickness, thick, thk, t",
    "grain": "grain, grain direction, grain runs",
    "unit": "unit, units",
}
_SEARCHED = 20  # rows in which the heads may stand
_UNIT = re.compile(rf"(?<![^\W_])({'|'.join(sorted(UNITS, key=len, reverse=True))})[\s)\]]*$")


def header(rows: Sequence[Row]) -> Header | None:
    """The first row that names a length and a width."""
    for row in rows[:_SEARCHED]:
        found = Header(row, tuple(_columns(row)), ())
        if found.column("length") and found.column("width"):
            used = {column.at for column in found.columns}
            unused = tuple(cell for i, cell in enumerate(row.cells) if cell and i not in used)
            return Header(row, found.columns, unused)
    return None


def _columns(row: Row) -> Iterator[Column]:
    heads = [_parted(cell) for cell in row.cells]
    for means, spellings in _HEADS.items():
        known = spellings.split(", ")
        ranked = [(known.index(head), i) for i, (head, _) in enumerate(heads) if head in known]
        if ranked:
            _, at = min(ranked)
            yield Column(at, row.cells[at], means, heads[at][1])


def _parted(cell: str) -> tuple[str, str]:
    """The head without its unit, and the unit: `Length (mm)`, `length_in`, `Width [cm]`."""
    text = cell.casefold().replace('"', " in ").strip()
    match = _UNIT.search(text)
    head = text[: match.start()].strip(" _([,/").removesuffix(" in") if match else ""
    return (_plain(head), UNITS[match[1]]) if match and head else (_plain(text), "")


def _plain(head: str) -> str:
    return " ".join(re.sub(r"[\W_]+", " ", head).split())
