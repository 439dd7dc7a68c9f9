"""The nearest known names to one that isn't known: those that look like it, else those that share a word with it."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import suggest

_MOST_NAMES = 2000  # so many are compared at most


def nearest(word: str, known: Sequence[str], most: int = 3) -> tuple[str, ...]:
    """Up to `most` of the known names, the likeliest first; each name once."""
    names = list(dict.fromkeys(known))[:_MOST_NAMES]
    close = suggest.nearest(word, names, most)
    return close or tuple(name for name in names if _share_a_word(word, name))[:most]


def _share_a_word(word: str, name: str) -> bool:
    """`side` for `left_side`: one is a whole word of the other."""
    return word.lower() in name.lower().split("_") or name.lower() in word.lower().split("_")
