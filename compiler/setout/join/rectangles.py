"""Cells of a plane gathered into rectangles."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

Flat = tuple[int, int]
Rectangle = tuple[int, int, int, int]


def rectangles(cells: set[Flat], u: Sequence[Fraction], v: Sequence[Fraction]) -> Iterator[Rectangle]:
    """Rectangles of cells that together make up `cells`: the largest first, then the largest of what is left.

    Cell (i, j) reaches from u[i] to u[i + 1] and v[j] to v[j + 1]. A rectangle is u_lo, u_hi, v_lo, v_hi, indices into
    u and v. Of equal ones the lowest comes first.
    """
    left = set(cells)
    while left:
        best = max(_whole(left), key=lambda r: ((u[r[1]] - u[r[0]]) * (v[r[3]] - v[r[2]]), -r[0], -r[2]))
        yield best
        left -= {(i, j) for i in range(best[0], best[1]) for j in range(best[2], best[3])}


def _whole(cells: set[Flat]) -> Iterator[Rectangle]:
    """Every rectangle of `cells` that is as wide as it can be for its rows."""
    rows: dict[int, set[int]] = {}
    for i, j in cells:
        rows.setdefault(i, set()).add(j)
    for first in sorted(rows):
        common, last = rows[first], first
        while common:
            for lo, hi in _runs(common):
                yield first, last + 1, lo, hi
            last += 1
            common = common & rows.get(last, set())


def _runs(numbers: set[int]) -> Iterator[Flat]:
    """Stretches of consecutive numbers, as half-open pairs."""
    start = None
    for n in sorted(numbers):
        if n - 1 not in numbers:
            start = n
        if n + 1 not in numbers:
            assert start is not None
            yield start, n + 1
