"""One finding for many places or scenes."""

from __future__ import annotations

from collections.abc import Sequence


def more_like_it(message: str, count: int) -> str:
    others = "one more place" if count == 2 else f"{count - 1} more places"
    return f"{message}; so in {others}"


def when_measured(message: str, taken: Sequence[tuple[str, str]]) -> str:
    values = ", ".join(f"{name} = {value}" for name, value in taken)
    return f"{message} (when {values})"
