"""Comments behind what they are about: those in adjoining lines begin in one column."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

AWAY = 2  # blanks before a comment, at least
FAR = 60  # columns; longer lines push no other comment to the right


@dataclass(frozen=True)
class Line:
    """`text` with its indentation, alone a comment's when there is nothing else; `remark` with its `#`, or empty."""

    text: str
    remark: str

    @property
    def indent(self) -> int:
        """Of a line whose comment is aligned with those above and below; -1 where there is none to align."""
        bare = self.text.lstrip()
        counts = self.remark and bare not in ("", "}") and len(self.text) <= FAR
        return len(self.text) - len(bare) if counts else -1


def aligned(lines: tuple[Line, ...]) -> Iterator[str]:
    for indent, run in groupby(lines, key=lambda line: line.indent):
        rows = list(run)
        column = max(len(row.text) for row in rows) if indent >= 0 else 0
        yield from (_line(row, column) for row in rows)


def _line(row: Line, column: int) -> str:
    if not row.text.strip():
        return (row.text + row.remark).rstrip()
    return f"{row.text:<{column}}{' ' * AWAY}{row.remark}" if row.remark else row.text
