"""Words that several problems share."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.resolve.suggest import nearest
from setout.units import Style, exact, said

_WITH_ARTICLE = {
    "let": "a `let`",
    "measure": "a measure",
    "stock": "a stock",
    "hardware": "hardware",
    "saw": "a saw",
    "assembly": "an assembly",
    "parameter": "a parameter",
    "part": "a part",
    "loose part": "a loose part",
    "place": "a placed assembly",
    "opening": "an opening",
    "face": "a face",
    "axis": "a direction",
    "room": "the room",
}


def a(kind: str) -> str:
    """The kind of thing with its article: "a stock"."""
    return _WITH_ARTICLE[kind]


def listed(names: Sequence[str], joint: str = "and", most: int = 8) -> str:
    """`a`, `b` and `c`."""
    shown = [f"`{name}`" for name in names[:most]]
    if len(names) > most:
        return f"{', '.join(shown)} …"
    return f" {joint} ".join([", ".join(shown[:-1]), shown[-1]] if len(shown) > 1 else shown)


def perhaps(word: str, known: Sequence[str], otherwise: str) -> str:
    """What may have been meant; else all there are, if they are few; else `otherwise`."""
    near = nearest(word, known)
    if near:
        return f"did you mean {listed(near, 'or')}?"
    if 0 < len(known) <= 6:
        return f"{'these are' if len(known) > 1 else 'this is'} known here: {listed(list(dict.fromkeys(known)))}"
    return otherwise


def amount(value: Fraction, dim: int, style: Style) -> str:
    """A value as it may be shown: `18 in`, `4`."""
    if dim == 1:
        return said(value, style) if abs(value) < 10**9 else "that length"
    return exact(value) if value.denominator < 10**6 and abs(value) < 10**15 else "that number"
