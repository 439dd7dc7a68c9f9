"""Findings for the pages. Inches exact; pounds, psi and sags may be floats: none of them decides a size.

A weight is None where a stock says neither `density`, `species` nor `panel`. Holes, glue, fasteners and bought hardware
are not in it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from setout.geometry import Axis, Box
from setout.strength import CarriedIn, CleatEstimate


@dataclass(frozen=True)
class Lifted:
    """Something lifted as one: a placed assembly, a big board on its own (`kind` "assembly", "board"), a whole sheet
    ("sheet", `path` its stock). `unknown` stocks have no density and are left out of `weight`. `limit` of one person
    whatever the lift. `recommended` by the NIOSH equation, from the floor up to where it stands; 0 for what nobody
    should lift alone, None for a sheet. `alone`: whether one person may (None: not known)."""

    path: str
    kind: str
    title: str
    sizes: tuple[Fraction, Fraction, Fraction]
    weight: Fraction | None
    unknown: tuple[str, ...]
    limit: Fraction
    recommended: Fraction | None
    alone: bool | None

    @property
    def people(self) -> int | None:
        """How many lift it, so that nobody has more than the limit."""
        if self.alone is None:
            return None
        return 1 if self.alone else max(2, ceil((self.weight or 0) / self.limit))


@dataclass(frozen=True)
class Sag:
    """One board under load. `along` is the axis of its span; `ends` "simple" (on two supports) or "cantilever" (one).
    `found`: they were found; else it is taken to rest on its ends. `load` lb/ft2, `said` in the spec or by the table.
    `first` sag and the `lasting` one after months, against `allowed`; None without a stiffness. What would mend it:
    thickness, the longest span, the height of a strip glued under an edge (None where none of the usual does).
    """

    board: str
    along: Axis
    span: Fraction
    ends: str
    found: bool
    load: Fraction
    said: bool
    stiffness: Fraction | None
    first: float | None
    lasting: float | None
    allowed: float
    thickness_needed: Fraction | None  # None also where that is hardly more than it has: no sheet is sold so
    longest_span: Fraction | None
    strip: Fraction | None

    @property
    def too_much(self) -> bool:
        return self.lasting is not None and self.lasting > self.allowed


@dataclass(frozen=True)
class Hung:
    """What hangs on the wall by screws alone: an estimate, never to be printed without `strength.CAUTION`. `units` are
    the paths hung together, `boards` those that the screws go through. `carried` what else bears on these screws: it
    stands on the units or is held by nothing but them. `weight` of all these, `contents` what may be put in. `estimate`
    None where a weight isn't known."""

    units: tuple[str, ...]
    boards: tuple[str, ...]
    weight: Fraction | None
    contents: Fraction
    screws: int
    gauge: int
    length: Fraction
    estimate: CleatEstimate | None
    carried: tuple[str, ...] = ()
    thin: bool = False  # the screws go through thin panels alone


@dataclass(frozen=True)
class Standing:
    """An assembly. `fixed`: held to a wall, by its own screws or `through` others that it is joined to. `scope`: it is
    not, and is as tall, roomy and heavy as what the tip-over standard is about; None where its weight isn't known."""

    path: str
    high: Fraction
    weight: Fraction | None
    fixed: bool
    scope: bool | None
    through: tuple[str, ...] = ()  # from it to the wall


@dataclass(frozen=True)
class Moves:
    """A solid-wood board over the year, across the grain: along `across` it may grow and shrink by so many inches;
    `gap` is what to leave beside it on the day. `held`: fastened or housed at both edges across the grain."""

    board: str
    species: str
    across: Axis
    size: Fraction
    grows: Fraction
    shrinks: Fraction
    gap: Fraction
    held: bool


@dataclass(frozen=True)
class OnFeet:
    """What stands on feet or casters, each of which says what it may carry: pounds, evenly shared. `carried`: the units
    that bear on it, whose share is in the weight."""

    unit: str
    hardware: str
    count: int
    each: Fraction  # may be on one
    weight: Fraction  # with contents, on all
    carried: tuple[str, ...] = ()


@dataclass(frozen=True)
class CarriedUnit:
    """How an assembly, or a board of the job's own, comes in. `carried` None where the room says nothing of the way."""

    path: str
    outline: Box
    carried: CarriedIn | None


@dataclass(frozen=True)
class Inspected:
    """`weights` of boards, loose ones with all their copies, and assemblies by path; pounds."""

    weights: Mapping[str, Fraction | None]
    lifts: tuple[Lifted, ...]
    sags: tuple[Sag, ...]
    hung: tuple[Hung, ...]
    standing: tuple[Standing, ...]
    moves: tuple[Moves, ...]
    carried: tuple[CarriedUnit, ...]
    on_feet: tuple[OnFeet, ...] = ()
