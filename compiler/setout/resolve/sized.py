"""Lengths of bought things that are neither nothing nor absurd."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from setout.read import model as r
from setout.resolve import problems

if TYPE_CHECKING:
    from setout.resolve.constants import Amounts


def sized(
    clause: r.StockClause | None,
    i: int,
    name: str,
    what: str,
    most: Fraction,
    amounts: Amounts,
    least: Fraction | None = Fraction(0),
) -> Fraction | None:
    """A length above `least` (None: nothing is allowed too) and at most `most`."""
    if clause is None or len(clause.values) <= i:
        return None
    size = amounts.length(clause.values[i], f"`{name}`")
    if size is None:
        return None
    if size > most or size < 0 or (least is not None and size <= least):
        amounts.ctx.say(problems.absurd_size(name, what, size, most, clause.values[i].span, amounts.ctx.world.style))
        return None
    return size
