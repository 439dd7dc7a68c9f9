"""The bytes of a table as rows of cells."""

from __future__ import annotations

import csv
from codecs import BOM_UTF16_BE, BOM_UTF16_LE
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
    text, encoding = _decoded(data)
    if "\0" in text:
        return Table((), "it is not plain text")
    found: list[Row] = []
    more = 0
    try:
        for row in _read(text):
            if len(found) <= MAX_ROWS:
                found.append(row)
            else:
                more += 1
    except csv.Error:  # the only one: a value longer than the module reads
        return Table((), "a value in it has no end, as where a closing quotation mark is missing")
    return Table(tuple(found), "" if found else "there is nothing in it", encoding, more)


def _read(text: str) -> Iterator[Row]:
    reader = csv.reader(StringIO(text, newline=""), delimiter=_separator(text), skipinitialspace=True)
    for number, cells in enumerate(reader, 1):
        if any(cell.strip() for cell in cells):
            yield Row(number, tuple(cell.strip()[:_MOST_IN_CELL] for cell in cells[:_MOST_CELLS]))


def _separator(text: str) -> str:
    start = text[:2000]
    return max(_SEPARATORS, key=start.count)


def _decoded(data: bytes) -> tuple[str, str]:
    if data.startswith((BOM_UTF16_LE, BOM_UTF16_BE)):
        return data.decode("utf-16", "replace"), "UTF-16"
    try:
        return data.decode("utf-8-sig"), "UTF-8"
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace"), "Windows-1252"
