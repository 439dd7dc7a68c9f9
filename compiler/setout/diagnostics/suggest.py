"""Did you mean: the known names nearest to a word."""

from __future__ import annotations

from collections.abc import Iterable

_LONGEST = 60  # longer words are nobody's misspelling, and comparing them takes long


def nearest(word: str, known: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """Up to `most` of the known names that look like `word`, the likeliest first; capitals don't count."""
    if len(word) > _LONGEST:
        return ()
    from difflib import get_close_matches  # late: most specs have nothing misspelt

    by_lower = {name.lower(): name for name in sorted(set(known), reverse=True) if len(name) <= _LONGEST}
    close = get_close_matches(word.lower(), sorted(by_lower), n=most, cutoff=0.65)
    return tuple(by_lower[name] for name in close)


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """The nearest names as a question, or "" when none is near."""
    names = [f"`{name}`" for name in nearest(word, known)]
    return f"did you mean {' or '.join(names)}?" if names else ""
