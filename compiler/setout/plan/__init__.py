"""The work planned: the order of building."""

from setout.plan.model import Plan
from setout.plan.order import Order, Reason, Step, StepId
from setout.plan.stage import plan

__all__ = ["Order", "Plan", "Reason", "Step", "StepId", "plan"]
