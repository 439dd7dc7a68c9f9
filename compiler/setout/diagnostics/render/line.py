"""One line of a source, made fit for a terminal: tabs spread, wide characters counted, nothing that steers it."""

from __future__ import annotations

import unicodedata

_TAB = 4
_LONGEST = 100  # characters of a line that are shown
_BEFORE = 40  # of these, how many before the place pointed at


def safe(text: str) -> str:
    """The text with every character that can't be seen spelled out, `\\x1b`; newlines stay."""
    return "".join(c if c == "\n" else _shown(c, 0) for c in text)


def excerpt(line: str, at: int, length: int) -> tuple[str, int, int]:
    """The line as shown, how many columns lie before character `at`, and how many columns `length` characters take.

    A long line is cut to a window round `at`, `…` standing for what is left out.
    """
    start = max(0, min(at - _BEFORE, len(line) - _LONGEST)) if len(line) > _LONGEST else 0
    end = min(len(line), start + _LONGEST)
    shown, before, width, columns = "…" if start else "", 0, 0, int(start > 0)
    for i in range(start, end):
        if i == at:
            before = columns
        piece = _shown(line[i], columns)
        wide = sum(map(_columns, piece))
        width += wide if at <= i < at + length else 0
        shown += piece
        columns += wide
    if at >= end:
        before = columns
    return shown + ("…" if end < len(line) else ""), before, max(width, 1)


def _shown(char: str, column: int) -> str:
    if char == "\t":
        return " " * (_TAB - column % _TAB)
    if unicodedata.category(char) == "Zs":
        return " "
    # Cc, Cf, Cs, Co, Cn, and the separators of lines and paragraphs
    if unicodedata.category(char)[0] == "C" or char in "\u2028\u2029":
        return char.encode("unicode_escape").decode("ascii")
    return char


def _columns(char: str) -> int:
    if unicodedata.category(char) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(char) in "WF" else 1
