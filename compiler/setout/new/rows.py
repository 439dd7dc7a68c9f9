"""The bytes of a table as rows of cells."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from io import StringIO

from setout.new.model import Row, Table

MAX_BYTES = 1_000_000
MAX_ROWS = 1000
_MOST_CELLS = 100  # in a row
_MOST_IN_CELL = 200  # characters
_SEPARATORS = ",;\t"


def rows_of(data: bytes) -> Table:
    """Rows in which something stands. The values are parted by whichever of comma, semicolon and tab there is most of
    at the beginning."""
    if len(data) > MAX_BYTES:
        return Table((), "it holds more than 1 MB")
    if b"\0" in data:
        return Table((), "it is not plain text")
    text, encoding = _decoded(data)
    found: list[Row] = []
    more = 0
    try:
        for row in _read(text):
            if len(found) <= MAX_ROWS:
                found.append(row)
            else:
                more += 1
    except csv.Error as trouble:
        return Table((), f"it can't be read as a table: {trouble}")
    return Table(tuple(found), "" if found else "there is nothing in it", encoding, more)


def _read(text: str) -> Iterator[Row]:
    reader = csv.reader(StringIO(text, newline=""), delimiter=_separator(text), skipinitialspace=True)
    for cells in reader:
        if any(cell.strip() for cell in cells):
            yield Row(reader.line_num, tuple(cell.strip()[:_MOST_IN_CELL] for cell in cells[:_MOST_CELLS]))


def _separator(text: str) -> str:
    start = text[:2000]
    return max(_SEPARATORS, key=start.count)


def _decoded(data: bytes) -> tuple[str, str]:
    try:
        return data.decode("utf-8-sig"), "UTF-8"
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace"), "Windows-1252"
