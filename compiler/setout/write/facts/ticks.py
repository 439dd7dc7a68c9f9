"""How many boxes to tick."""

from __future__ import annotations

MOST = 12  # more boxes than that take a row over; a written tally serves better


def ticks(count: int) -> int:
    """A box for each, or 0 where a tally is to be written."""
    return count if count <= MOST else 0
