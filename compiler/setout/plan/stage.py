"""What the packet is written from, worked out from the pieces."""

from __future__ import annotations

from setout.diagnostics import Checked
from setout.inspect.model import Inspected
from setout.piece.model import Pieces
from setout.plan.buying import buying
from setout.plan.model import Plan
from setout.plan.order import order


def plan(pieces: Pieces, inspected: Inspected) -> Checked[Plan]:
    """Plan the work on the pieces."""
    made = order(pieces)
    if made.value is None:
        return Checked(None, made.diagnostics)
    return Checked(Plan(pieces, made.value, None, inspected, buying(pieces)), made.diagnostics)
