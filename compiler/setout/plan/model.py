"""What the packet is written from."""

from __future__ import annotations

from dataclasses import dataclass

from setout.inspect.model import Inspected
from setout.piece.model import Pieces
from setout.plan.buying.model import BuyList
from setout.plan.cutting.model import Cutting
from setout.plan.order.model import Order


@dataclass(frozen=True)
class Plan:
    pieces: Pieces
    order: Order
    cutting: Cutting | None = None
    inspected: Inspected | None = None
    buying: BuyList | None = None
