"""A source file held in memory, and half-open character ranges in it."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property


@dataclass(frozen=True)
class Span:
    """Characters `start` up to but not including `end` of the file `file`."""

    file: str
    start: int
    end: int

    def to(self, other: Span) -> Span:
        """The span from this one's start to the other's end (same file)."""
        return Span(self.file, min(self.start, other.start), max(self.end, other.end))


@dataclass(frozen=True)
class Source:
    """One file's text. `name` is the path the builder would type; it is what spans refer to."""

    name: str
    text: str

    @cached_property
    def line_starts(self) -> tuple[int, ...]:
        return (0, *(i + 1 for i, c in enumerate(self.text) if c == "\n"))

    def position(self, offset: int) -> tuple[int, int]:
        """Line and column of a character offset, both counted from 1."""
        line = bisect_right(self.line_starts, offset)
        return line, offset - self.line_starts[line - 1] + 1

    def line(self, number: int) -> str:
        """The text of line `number` (from 1), without its newline."""
        start = self.line_starts[number - 1]
        end = self.text.find("\n", start)
        return self.text[start : len(self.text) if end < 0 else end].rstrip("\r")
