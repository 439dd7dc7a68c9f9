"""Text of unknown origin made into names, titles and comments of a spec."""

from __future__ import annotations

from collections.abc import Container

from setout.geometry import AXIS_WORDS, FACE_WORDS
from setout.read.table import grammar_table

_SHORT = 40  # characters of a name
_TITLE = 60
_TAKEN = {*AXIS_WORDS, *FACE_WORDS, "room", "project"}


def cleaned(text: str) -> str:
    """One line of what can be seen, not too long."""
    seen = "".join(c if c.isprintable() else " " for c in text)
    return " ".join(seen.split())[:_TITLE].rstrip()


def quoted(text: str) -> str:
    escaped = cleaned(text).replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def row_said(number: int, part: str) -> str:
    """`row 4 (left side)`."""
    return f"row {number} ({part})" if part else f"row {number}"


def named(text: str, otherwise: str, taken: Container[str]) -> str:
    """A name like the text that isn't taken yet; `otherwise` where the text has no letters."""
    marks = (c if c.isalpha() or c in "0123456789" else "_" for c in text.lower())
    words = [word for word in "".join(marks).split("_") if word]
    while words and not words[0][0].isalpha():
        words.pop(0)
    name = "_".join(words)[:_SHORT].rstrip("_") or otherwise
    if name in _TAKEN:
        name += "_board"
    return _free(name, taken)


def stock_named(text: str, taken: Container[str]) -> str:
    """The same for a stock, which is no word of the language either: `stock stick { stick … }` reads badly."""
    name = named(text, "boards", ())
    return _free(f"{name}_stock" if name in grammar_table().keywords else name, taken)


def _free(name: str, taken: Container[str]) -> str:
    if name not in taken:
        return name
    number = 2
    while f"{name}_{number}" in taken:
        number += 1
    return f"{name}_{number}"
