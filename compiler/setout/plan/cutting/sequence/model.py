"""A board's cuts as a tree, exact, before anyone has ordered them. `dx`, `dy` are sizes along the source's x and y, as
planned."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction

from setout.plan.cutting.model import Source
from setout.resolve.model import Saw


@dataclass(frozen=True)
class Blank:
    """A board to come out. `turned` as in Laid."""

    mark: str
    copy: int
    dx: Fraction
    dy: Fraction
    turned: bool
    reserved: bool


@dataclass(frozen=True)
class Job:
    """A board to be cut apart by parallel cuts: `along` "x" or "y" the parts lie side by side. A part may be smaller
    than the job across `along` (it is then cut to size on its own), and what the parts don't fill is left over at the
    far end."""

    dx: Fraction
    dy: Fraction
    along: str
    parts: tuple[Job | Blank, ...]


@dataclass(frozen=True)
class Limits:
    """What a stock asks of the shop. `heavy` says of a size whether a person shouldn't carry it; `keep` whether it is
    worth keeping. `ways` remembers how cuts are made."""

    saws: tuple[Saw, ...]
    kerf: Fraction
    heavy: Callable[[Fraction, Fraction], bool]
    keep: Callable[[Fraction, Fraction], bool]
    ways: dict = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True)
class Laying:
    """A source and the tree it is cut by; `trim` as in Supply."""

    source: Source
    job: Job
    trim: Fraction
    limits: Limits


def size(of: Job | Blank, axis: str) -> Fraction:
    return of.dx if axis == "x" else of.dy


def other(axis: str) -> str:
    return "y" if axis == "x" else "x"


def blanks(of: Job | Blank) -> list[Blank]:
    found, waiting = [], [of]
    while waiting:
        one = waiting.pop()
        if isinstance(one, Blank):
            found.append(one)
        else:
            waiting.extend(one.parts)
    return found
