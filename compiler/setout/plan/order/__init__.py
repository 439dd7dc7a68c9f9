"""The build order: numbered steps, each with why it stands where it stands."""

from setout.plan.order.model import Order, Reason, Step, StepId
from setout.plan.order.sorting import loops, stable_order
from setout.plan.order.stage import order

__all__ = ["Order", "Reason", "Step", "StepId", "loops", "order", "stable_order"]
