"""Whether a box comes through a doorway, and whether it can be stood up under the ceiling. Exact: squares, no roots."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import permutations

Box = tuple[Fraction, Fraction, Fraction]  # wide, high, deep, as it stands in the room
Doorway = tuple[Fraction, Fraction]  # wide, high

WIDE, HIGH, DEEP = range(3)


@dataclass(frozen=True)
class Way:
    """One way through: the axis that goes first (0 wide, 1 high, 2 deep), the axes then across and up, and whether the
    box is tilted in the doorway because it only passes slanting."""

    first: int
    across: int
    up: int
    tilted: bool

    @property
    def upright(self) -> bool:
        """Whether it is carried as it stands."""
        return self.up == HIGH and not self.tilted


@dataclass(frozen=True)
class CarriedIn:
    """`ways` through the doorway, upright first; whether it stays upright or else `stands_up` under the ceiling."""

    ways: tuple[Way, ...]
    upright: bool
    stands_up: bool

    @property
    def possible(self) -> bool:
        """Whether it ends up standing in the room."""
        return bool(self.ways) and (self.upright or self.stands_up)


def carried_in(box: Box, doorway: Doorway, ceiling: Fraction) -> CarriedIn:
    """A box carried straight through a doorway and set up behind it. Turning round a corner is not looked at: what is
    told to pass still needs room to be walked with."""
    ways = ways_through(box, doorway)
    return CarriedIn(ways, any(way.upright for way in ways) and box[HIGH] <= ceiling, stands_up(box, ceiling))


def ways_through(box: Box, doorway: Doorway) -> tuple[Way, ...]:
    """Every way in which the box's cross-section passes: upright ones first, then lying, then tilted."""
    straight = [
        Way(first, across, up, tilted=False)
        for first, across, up in permutations(range(3))
        if box[across] <= doorway[0] and box[up] <= doorway[1]
    ]
    turned = {way.first for way in straight}
    tilted = [
        Way(first, across, up, tilted=True)
        for first, across, up in ((DEEP, WIDE, HIGH), (WIDE, DEEP, HIGH), (HIGH, WIDE, DEEP))
        if first not in turned and fits_slanting((box[across], box[up]), doorway)
    ]
    return (*sorted(straight, key=lambda way: (not way.upright, -way.first)), *tilted)


def smallest_section(box: Box) -> tuple[Fraction, Fraction]:
    """The smallest cross-section, greater side first. If a box passes a doorway at all, this passes."""
    low, middle, _ = sorted(box)
    return middle, low


def fits_slanting(section: Doorway, doorway: Doorway) -> bool:
    """Whether a rectangle fits within another at some angle, touching allowed.

    At an angle with cosine c and sine s it fits when p c + q s <= a and p s + q c <= b. In u = c + s, v = c - s, which
    run on the circle u^2 + v^2 = 2, these two lines meet in one point: the arc reaches between them when that point is
    on the circle or outside.
    """
    p, q = max(section), min(section)
    a, b = max(doorway), min(doorway)
    if p <= a and q <= b:
        return True
    if q > b or p == q:
        return False
    return ((a + b) / (p + q)) ** 2 + ((a - b) / (p - q)) ** 2 >= 2


def stands_up(box: Box, ceiling: Fraction) -> bool:
    """Whether a box that comes in lying can be raised: over the edge of its shorter foot, its diagonal passes upright
    under the ceiling."""
    return rise_squared(box) <= ceiling**2


def rise_squared(box: Box) -> Fraction:
    """Square of the height that a box reaches while it is raised: its height and the shorter side of its foot."""
    return box[HIGH] ** 2 + min(box[WIDE], box[DEEP]) ** 2
