"""buy.csv: one line a thing to buy, for a spreadsheet, as cutlist.csv is. `COLUMNS` says what each column means."""

from __future__ import annotations

import csv
from io import StringIO

from setout.write.buy_list.build import BuySheet, Row
from setout.write.cutlist import harmless

COLUMNS = {
    "kind": "sheet, stick, hardware, pockets, screws, brads, dowels, glue or edging",
    "what": "its title in the spec, or the fastener's kind",
    "size": "of one: length x width, a stick's length, a screw's gauge x length, a dowel's diameter x length",
    "need": "pieces, spares counted in; glue and banding with their unit",
    "on_hand": "what is there already",
    "packs": "to buy: sheets, sticks or packs",
    "in_a_pack": "how much one of these is",
    "price": "of one, in the spec's own money; empty: not said",
    "cost": "of all of them",
}


def table(sheet: BuySheet | None) -> str:
    """The whole file; only its heading when nothing is bought."""
    out = StringIO()
    lines = csv.writer(out)
    lines.writerow(COLUMNS)
    for counter in sheet.counters if sheet else ():
        for row in counter.rows:
            lines.writerow(harmless(cell) for cell in _cells(row))
    return out.getvalue()


def _cells(row: Row) -> tuple[str, ...]:
    what = row.title or row.kind
    return (row.kind, what, _size(row), row.need, row.on_hand, str(row.packs), row.pack, row.price, row.cost)


def _size(row: Row) -> str:
    across = row.diameter if row.kind == "dowels" else None  # the others go by gauge or by length alone
    sizes = [*row.sizes, *(one for one in (across, row.length) if one is not None)]
    gauge = [] if row.gauge is None else [f"no. {row.gauge}"]
    return " x ".join(gauge + [size.text for size in sizes])
