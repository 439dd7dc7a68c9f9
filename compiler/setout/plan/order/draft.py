"""Steps before they are sorted, and the links between them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from setout.plan.order.model import StepId
from setout.source import Span


class Priority(NamedTuple):
    """Of the steps that may come next, the least comes next.

    stage  0 measure, so that no board waits for a number; 1 at the bench; 2 putting in place; 3 the rest
    unit   what is put in place as one, in the order placed: a box is begun when the one before it is done
    thing  assemblies inside it: what goes into another before it, what stands in it loosely after it
    phase  cut, machine, assemble, cure, fit; or set, fasten: boards are cut when their turn comes, the pile stays small
    tie    -1 and 1 for the builder's own steps just before and just after another
    """

    stage: int
    unit: int = 0
    thing: int = 0
    phase: int = 0
    tie: int = 0


@dataclass(frozen=True)
class Draft:
    """A step without its number. `boards` are what it is about (what an order line may name it by), `within` all the
    instances that hold it, `span` the line of the spec it comes from, `text` that of the builder's own step.
    `about` are the things it works on, () the one that is its target; `each` names them where several steps have been
    made one."""

    id: StepId
    owner: str
    priority: Priority
    boards: frozenset[str]
    within: tuple[str, ...]
    span: Span | None
    marks: tuple[tuple[str, int], ...] = ()
    joints: tuple[str, ...] = ()
    fittings: tuple[str, ...] = ()
    wait: Fraction = Fraction(0)
    text: str = ""
    about: tuple[str, ...] = ()
    each: tuple[str, ...] = ()

    @property
    def things(self) -> tuple[str, ...]:
        return self.about or (self.id.target,)


@dataclass(frozen=True)
class Link:
    """`before` comes before `after`. `kind` is a Reason's; `span` what in the spec causes it. `line` numbers the order
    lines (-1: no line)."""

    before: StepId
    after: StepId
    kind: str
    span: Span | None
    line: int = -1


YIELDING = ("fit-before-hang", "fit-before-set")
"""Kinds that are a habit only: an order line that says the very opposite wins."""
