"""Terminals of the grammar in the builder's words."""

from __future__ import annotations

from collections.abc import Sequence

from setout.geometry import AXIS_WORDS, FACE_WORDS
from setout.read.table import Table
from setout.read.tokens import Token

_CLASSES = {
    "STRING": "a text in quotes",
    "LENGTH": "a number",
    "PATH": "a name",
    "_SEP": "the end of the line",
    "$END": "the end of the line",
}
# Where one of these can stand, an amount begins; and nobody needs to be told of brackets and signs.
_BEGINS_AMOUNT = {"LENGTH", "PATH", "NEGATIVE", "FUNCTION", "LPAR", "NOT"}
_NEVER_TOLD = {"SUBJECT", "FUNCTION", "NEGATIVE", "MINUS", "NOT", "AND", "OR"}
_GROUPS = ((FACE_WORDS, f"a face ({', '.join(FACE_WORDS)})"), (AXIS_WORDS, f"an axis ({', '.join(AXIS_WORDS)})"))


def expected_words(terminals: Sequence[str], table: Table) -> str:
    """`a, b or c`, words in the order of the grammar."""
    can = set(terminals)
    words: list[str] = []
    if {"LENGTH", "PATH"} <= can:
        words.append("a size or a name")
        can -= _BEGINS_AMOUNT
    words += dict.fromkeys(said for terminal, said in _CLASSES.items() if terminal in can)
    for group, said in _GROUPS:
        own = {table.keywords[word] for word in group}
        if own <= can:
            words.append(said)
            can -= own
    words += [f"`{text}`" for text, t in table.literals.items() if t in can and _worth_telling(text, t, can)]
    return listed(words or [f"`{text}`" for text, t in table.literals.items() if t in can])


def beginning_words(terminals: Sequence[str], table: Table) -> tuple[str, ...]:
    """The words that a statement or clause may begin with, in the order of the grammar."""
    can = set(terminals)
    words = tuple(text for text, t in table.keywords.items() if t in can)
    return words or tuple(said for terminal, said in _CLASSES.items() if terminal in can and terminal[0] != "_")


def listed(words: Sequence[str]) -> str:
    """`a`, `a or b`, `a, b or c`."""
    return " or ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def found_words(token: Token) -> str:
    kind = token.type or token.types[0]
    if kind == "$END":
        return "the end of the file"
    if kind == "_SEP":
        return "the end of the line" if token.text == "\n" else "`;`"
    if kind == "STRING":
        return f"the text {short(token.text)}"
    return f"`{short(token.text)}`"


def short(text: str, most: int = 40) -> str:
    return text if len(text) <= most else text[: most - 1] + "…"


def _worth_telling(text: str, terminal: str, can: set[str]) -> bool:
    """Operators are left out: they can follow any amount."""
    if terminal in _NEVER_TOLD:
        return False
    return text[0].isalpha() or text in "{}(),:x" or (text == "=" and not can & {"STAR", "SLASH"})
