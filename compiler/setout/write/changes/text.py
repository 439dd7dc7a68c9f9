"""The sheet on a terminal, and in Markdown for a review."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from textwrap import wrap

from setout.write.changes.model import Sheet, Table

UNITS = {"in": "inches", "mm": "millimetres"}
WIDTH = 112
GAP = 2
NARROW = 34
"""A column but the last is wider than this only where there is room to spare."""


def as_text(sheet: Sheet) -> str:
    return "\n".join(_text(sheet)) + "\n"


def _text(sheet: Sheet) -> Iterator[str]:
    unit = f" (lengths in {UNITS[sheet.unit]})" if sheet.changed else ""
    yield from wrap(f"{sheet.title}{': ' if sheet.title else ''}{sheet.old} → {sheet.new}{unit}", WIDTH)
    for sentence in sheet.summary:
        yield from wrap(sentence, WIDTH)
    for table in sheet.tables:
        yield ""
        yield table.title
        yield from (f"  {line}" for line in wrap(table.note, WIDTH - 2))
        widths = _widths(table)
        yield from (f"  {line}".rstrip() for row in table.rows for line in _row(row, widths))


def _widths(table: Table) -> list[int]:
    """As wide as what stands in them, if all fit; else the widest give way, the last not below a third of the line."""
    widths = [max(1, *(len(row[n]) for row in table.rows)) for n in range(len(table.heads))]
    room = WIDTH - 2 - GAP * (len(widths) - 1)
    last = min(widths[-1], max(room // 3, room - sum(min(width, NARROW) for width in widths[:-1])))
    front = widths[:-1]
    while sum(front) > max(room - last, len(front)):
        front[front.index(max(front))] -= 1
    return [*front, last]


def _row(row: Sequence[str], widths: Sequence[int]) -> Iterator[str]:
    cells = [wrap(cell, width) or [""] for cell, width in zip(row, widths)]
    for n in range(max(map(len, cells))):
        parts = [cell[n] if n < len(cell) else "" for cell in cells]
        yield (" " * GAP).join(part.ljust(width) for part, width in zip(parts, widths))


def as_markdown(sheet: Sheet) -> str:
    return "\n".join(_markdown(sheet)) + "\n"


def _markdown(sheet: Sheet) -> Iterator[str]:
    yield f"# {_plain(sheet.title)}: what changes" if sheet.title else "# What changes"
    yield ""
    yield f"{_plain(sheet.old)} → {_plain(sheet.new)}. Lengths in {UNITS[sheet.unit]}."
    yield ""
    yield from (f"- {_plain(sentence)}" for sentence in sheet.summary)
    for table in sheet.tables:
        yield ""
        yield f"## {table.title}"
        yield ""
        if table.note:
            yield _plain(table.note)
            yield ""
        yield _line(table.heads)
        yield _line(["---"] * len(table.heads))
        yield from (_line([_plain(cell) for cell in row]) for row in table.rows)


def _line(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _plain(text: str) -> str:
    """Text of a spec that means nothing in Markdown, nor in the HTML that it may hold."""
    return re.sub(r"([\\`*_{}\[\]<>#|~!&@])", r"\\\1", " ".join(text.split()))
