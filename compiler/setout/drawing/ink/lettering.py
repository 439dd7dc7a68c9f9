"""How wide text comes out in the drawings' font, and text cut to fit. Sizes are points."""

from __future__ import annotations

from functools import cache, lru_cache
from unicodedata import normalize

from setout.drawing.ink.advances import BOLD, REGULAR

FONT = "IBM Plex Sans Condensed"
SMALL = 9.0  # no text is printed smaller
LEADING = 1.2
CAP = 0.7  # height of a capital, in ems

_UNKNOWN = 1000  # a character of some other font: at worst a full em


@lru_cache(8192)
def width(text: str, size: float = SMALL, bold: bool = False) -> float:
    """The printed width of one line of text."""
    table = _advances(bold)
    return sum(_advance(c, table) for c in text) * size / 1000


def wrapped(text: str, room: float, lines: int, size: float = SMALL, bold: bool = False) -> tuple[str, ...]:
    """The words in at most `lines` lines no wider than `room`; what is left over ends in `…`."""
    out: list[str] = []
    words = text.split()
    while words and len(out) < lines:
        last = len(out) == lines - 1
        count = _fitting(words, room, size, bold)
        line = " ".join(words if last else words[:count])
        out.append(shortened(line, room, size, bold))
        words = [] if last else words[count:]
    return tuple(out)


def shortened(text: str, room: float, size: float = SMALL, bold: bool = False) -> str:
    """The text, or as much of its start as fits with `…` behind it."""
    if width(text, size, bold) <= room:
        return text
    kept = 0
    left = room - width("…", size, bold)
    table = _advances(bold)
    for c in text:
        left -= _advance(c, table) * size / 1000
        if left < 0:
            break
        kept += 1
    return text[:kept].rstrip() + "…"


def _fitting(words: list[str], room: float, size: float, bold: bool) -> int:
    """How many of the words go on one line; one at least."""
    used = width(words[0], size, bold)
    for n, word in enumerate(words[1:], 1):
        used += width(" " + word, size, bold)
        if used > room:
            return n
    return len(words)


def _advance(c: str, table: dict[str, int]) -> int:
    found = table.get(c)
    if found is None:
        found = table.get(normalize("NFD", c)[:1], _UNKNOWN)
    return found


@cache
def _advances(bold: bool) -> dict[str, int]:
    return {c: wide for wide, chars in (BOLD if bold else REGULAR).items() for c in chars}
