"""What the packet is written from, worked out from the pieces."""

from __future__ import annotations

from setout.diagnostics import Checked
from setout.piece.model import Pieces
from setout.plan.model import Plan
from setout.plan.order import order


def plan(pieces: Pieces) -> Checked[Plan]:
    """Plan the work on the pieces."""
    made = order(pieces)
    return Checked(None if made.value is None else Plan(pieces, made.value), made.diagnostics)
