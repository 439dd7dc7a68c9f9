"""A board's cuts as a tree, exact, before anyone has ordered them. `dx`, `dy` are sizes along the source's x and y, as
planned."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


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
