"""What the packet is written from, worked out from the pieces."""

from __future__ import annotations

from collections.abc import Callable

from setout.diagnostics import Checked
from setout.inspect.model import Inspected
from setout.piece.model import Pieces
from setout.plan.buying import buying
from setout.plan.cutting.checks import larger_than_usable
from setout.plan.cutting.model import Cutting
from setout.plan.model import Plan
from setout.plan.order import order

Cut = Callable[[Pieces], Checked[Cutting]]


def plan(pieces: Pieces, inspected: Inspected, cut: Cut | None = None) -> Checked[Plan]:
    """Plan the work on the pieces. Laying boards out takes seconds: it is done only where `cut` says how."""
    made = order(pieces)
    sawn = Checked(None, larger_than_usable(pieces)) if cut is None else cut(pieces)
    found = (*made.diagnostics, *sawn.diagnostics)
    if made.value is None:
        return Checked(None, found)
    return Checked(Plan(pieces, made.value, sawn.value, inspected, buying(pieces, sawn.value)), found)
