"""The work planned: the cutting and the order of building."""

from setout.plan.model import Plan
from setout.plan.order import Order, Reason, Step, StepId
from setout.plan.stage import Cut, plan

__all__ = ["Cut", "Order", "Plan", "Reason", "Step", "StepId", "plan"]
