"""What the search is asked and what it answers. Whole numbers only: it knows rectangles and lengths, nothing of
furniture.

Kerf is the caller's: a saw that takes `k` on every cut is the same problem with every item and every bin `k` longer
and wider.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True)
class Item:
    """`count` equal rectangles, `width` along x and `height` along y. `turnable`: may also be laid with its sides
    exchanged.

    Items that share a `group` (not None) are cut out of one strip, one beside the other in the order given.
    """

    width: int
    height: int
    count: int = 1
    turnable: bool = False
    group: int | None = None


@dataclass(frozen=True)
class Bin:
    """`copies` equal rectangles to cut from (None: as many as wanted), each at `cost`. At equal cost a lower `rank` is
    used first."""

    width: int
    height: int
    cost: int
    copies: int | None = None
    rank: int = 0


@dataclass(frozen=True)
class Budget:
    """How long to search. `work` counts places looked at, so that two machines with the same seed agree; `seconds` is
    the clock's limit.

    `stop` is asked now and then; when it says True the best so far is returned.
    """

    work: int | None = 2_000_000
    seconds: float | None = None
    seed: int = 1
    stop: Callable[[], bool] | None = None


@dataclass(frozen=True)
class Piece:
    """One item laid: its index in the items asked for, its lower left corner, its sizes as laid."""

    item: int
    x: int
    y: int
    width: int
    height: int
    turned: bool


@dataclass(frozen=True)
class Region:
    """A rectangle cut apart by parallel cuts. `along` is "x" when its parts lie side by side along x (the cuts stand
    across x), else "y".

    Parts lie from the lower left corner on without gaps. A part narrower than the region (across `along`) needs a
    trimming cut of its own, and what the parts don't fill along `along` is left over at the far end.
    """

    x: int
    y: int
    width: int
    height: int
    along: str
    parts: tuple[Region | Piece, ...]


@dataclass(frozen=True)
class Leftover:
    """A rectangle that no item covers, as it falls off by the cuts of the tree."""

    x: int
    y: int
    width: int
    height: int


@dataclass(frozen=True)
class Used:
    """One bin that is cut: its index in the bins asked for, and the whole of it (`root` is as large as the bin)."""

    bin: int
    root: Region


@dataclass(frozen=True)
class Bound:
    """What no plan can do without: `bins` counts bins, `cost` their money."""

    bins: int
    cost: int


@dataclass(frozen=True)
class Layout:
    """`missing` pairs an item's index with how many found no place. `finished` is False when time, work or `stop` ended
    the search before the bound was met (the plan is good all the same)."""

    used: tuple[Used, ...]
    missing: tuple[tuple[int, int], ...]
    cost: int
    bound: Bound
    work: int
    finished: bool


@dataclass(frozen=True)
class Stick:
    """A length on sale or on hand."""

    length: int
    cost: int
    copies: int | None = None


@dataclass(frozen=True)
class UsedStick:
    """`times` sticks cut alike: the stick's index, and the indexes of the lengths cut from it, longest first."""

    stick: int
    lengths: tuple[int, ...]
    times: int


@dataclass(frozen=True)
class StickLayout:
    """Like `Layout`. `proven`: no plan is cheaper."""

    used: tuple[UsedStick, ...]
    missing: tuple[tuple[int, int], ...]
    cost: int
    bound: int
    proven: bool
    work: int


@dataclass(frozen=True)
class Progress:
    """Told to whoever watches: the cost of the best plan so far, the bound, and the work done."""

    cost: int
    bound: int
    work: int
    missing: int
