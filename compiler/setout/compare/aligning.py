"""Members of a repeat or a bank, before and now, in their order: with drawer 2 left out, 3 is the second."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

T = TypeVar("T")
Unlike = tuple[int, ...]
"""How unlike two members are, what weighs most first."""


def aligned(old: Sequence[T], new: Sequence[T], unlike: Callable[[T, T], Unlike | None]) -> list[tuple[T, T]]:
    """As many pairs as can be without two that cross, and of those ways the one whose pairs are the most alike.
    `unlike` is None for two that are no pair at all."""
    if len(old) == len(new) and all(unlike(a, b) is not None for a, b in zip(old, new)):
        return list(zip(old, new))  # no other way has as many
    same = 0
    while same < min(len(old), len(new)) and not any(unlike(old[same], new[same]) or (1,)):
        same += 1
    return [*zip(old[:same], new[:same]), *_aligned(old[same:], new[same:], unlike)]


def _aligned(old: Sequence[T], new: Sequence[T], unlike: Callable[[T, T], Unlike | None]) -> list[tuple[T, T]]:
    nothing: Unlike = ()
    best: list[list[tuple[int, Unlike]]] = [[(0, nothing)] * (len(new) + 1) for _ in range(len(old) + 1)]
    for i in range(len(old) - 1, -1, -1):
        for j in range(len(new) - 1, -1, -1):
            best[i][j] = min([*_pairing(old[i], new[j], best[i + 1][j + 1], unlike), best[i + 1][j], best[i][j + 1]])
    return list(_followed(old, new, best, unlike))


def _pairing(a: T, b: T, rest: tuple[int, Unlike], unlike: Callable[[T, T], Unlike | None]) -> list[tuple[int, Unlike]]:
    """Number of pairs (below nought, as more is better) and how unlike they are, with this one the first; if it may."""
    far = unlike(a, b)
    if far is None:
        return []
    pairs, sum_ = rest
    return [(pairs - 1, tuple(x + y for x, y in zip(far, sum_ or (0,) * len(far))))]


def _followed(old, new, best, unlike):
    i = j = 0
    while i < len(old) and j < len(new):
        if best[i][j] in _pairing(old[i], new[j], best[i + 1][j + 1], unlike):
            yield old[i], new[j]
            i, j = i + 1, j + 1
        elif best[i][j] == best[i + 1][j]:
            i += 1
        else:
            j += 1
