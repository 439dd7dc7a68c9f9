"""Exact amounts with dimensions, and how each came about."""

from setout.values.arithmetic import CONDITION, LIMIT, apply, literal, named, stretched
from setout.values.mismatch import Mismatch
from setout.values.model import Trace, Value
from setout.values.wanted import condition, count, length, plain

__all__ = [
    "CONDITION",
    "LIMIT",
    "Mismatch",
    "Trace",
    "Value",
    "apply",
    "condition",
    "count",
    "length",
    "literal",
    "named",
    "plain",
    "stretched",
]
