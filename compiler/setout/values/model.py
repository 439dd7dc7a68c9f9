"""What an expression is worth: an exact amount, its dimension, and the chain that led to it."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from setout.source import Span


@dataclass(frozen=True)
class Trace:
    """One link of the chain from the spec to a number.

    kind: "literal" (text as written), "name" (a let, parameter, measure or reference; `text` is its path, one
    child: what it stands for), "operation" (`text` is + - * / min max …, children are the operands), "rule" (a
    rule of setout's own: `text` names it, e.g. "gap between", "thickness of ply", "housing depth").
    """

    kind: str
    text: str
    amount: Fraction
    dim: int
    parts: tuple[Trace, ...] = ()
    span: Span | None = None


@dataclass(frozen=True)
class Value:
    """`amount` in inches to the power `dim` (0 a plain number, 1 a length, 2 an area, 3 a volume).

    `flex` is set on a bare number: the inches that one of its file's units makes, should a length be wanted.
    `held` names the measures not taken yet that the amount hangs on.
    """

    amount: Fraction
    dim: int
    flex: Fraction | None
    trace: Trace
    held: frozenset[str] = field(default=frozenset())
