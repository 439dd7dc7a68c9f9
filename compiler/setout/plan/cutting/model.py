"""Which board comes out of which sheet, offcut or stick, and the cuts in the order to make them.

Lengths are exact inches. On a source `x` runs along its long side (a sheet's grain, where it has one, runs as its stock
says) and `y` across; the origin is the corner the trim is measured from. Sticks have `y` 0 and a width of their own.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from setout.resolve.model import Saw, Stock


@dataclass(frozen=True)
class Source:
    """One board of material. kind "sheet" or "stick" (bought or on hand) or "offcut" (from the rack).

    `id` is what is written on it and on its drawing: "ply 1", "ply offcut 2". `price` is None when the spec says none;
    0 on hand.
    """

    id: str
    stock: Stock
    kind: str
    on_hand: bool
    length: Fraction
    width: Fraction
    grain: str | None  # "length", "width" or None: which way the grain runs on this source
    price: Fraction | None


@dataclass(frozen=True)
class Laid:
    """One board placed: `piece` is its mark, `copy` counts the boards of that mark from 1. `length` along x, `width`
    along y as laid. `turned` when its own length lies across. `reserved`: its size waits for a measure; what is cut is
    a blank of its largest size."""

    mark: str
    copy: int
    x: Fraction
    y: Fraction
    length: Fraction
    width: Fraction
    turned: bool
    reserved: bool = False


@dataclass(frozen=True)
class Leftover:
    """A rectangle left. `keep` when it is worth keeping; `name` then is its letter on the drawing ("a"), else ""."""

    x: Fraction
    y: Fraction
    length: Fraction
    width: Fraction
    keep: bool
    name: str


@dataclass(frozen=True)
class Falls:
    """What a cut leaves on one side. kind "piece" (then `mark`, `copy`), "reserved" (the same, but a blank for a piece
    that waits for a measure), "board" (goes on; `board` names it), "offcut" (`board` is the leftover's name) or
    "waste". `length` along x, `width` along y of the source."""

    kind: str
    mark: str
    copy: int
    board: str
    length: Fraction
    width: Fraction


@dataclass(frozen=True)
class Cut:
    """One straight cut through `board` from edge to edge.

    `number` counts over the whole job. `kind` "rip" (the kept strip is narrower than the cut is long: set by the
    fence), "crosscut" (to a stop), "trim" or "break down" (by a saw that is brought to the sheet). `across` is "x" when
    the cut line stands across the source's x axis. `setting` is measured from the reference edge to the near side of
    the kerf: what the fence or stop is set to. `cut_length` how far the saw travels. `off` falls off at `setting`,
    `rest` remains. `at` is where the kerf begins on the source, on the axis `across`. `reference` "low" measures from
    the board's edge nearest to the source's origin (then `off` is [at - setting, at]), "high" from its far edge (then
    `off` is [at + kerf, at + kerf + setting]). `rest` None: the blade shaves the edge, nothing remains beyond the kerf.
    """

    number: int
    source: str
    board: str
    kind: str
    across: str
    setting: Fraction
    at: Fraction
    cut_length: Fraction
    kerf: Fraction
    saw: Saw | None  # None: no saw of the shop can make it
    off: Falls
    rest: Falls | None
    reference: str = "low"


@dataclass(frozen=True)
class SourcePlan:
    """What becomes of one source, cuts in order."""

    source: Source
    laid: tuple[Laid, ...]
    leftovers: tuple[Leftover, ...]
    cuts: tuple[Cut, ...]


@dataclass(frozen=True)
class StockPlan:
    """All of one stock. `bound` is the least number of new sources any plan needs (and of money, `bound_cost`);
    `missing` are marks with counts that found no place when the stock is limited. `yield_` is the area of boards over
    the area of sources used."""

    stock: Stock
    sources: tuple[SourcePlan, ...]
    bound: int
    bound_cost: Fraction | None
    missing: tuple[tuple[str, int], ...]
    cost: Fraction | None
    yield_: Decimal
    kerf: Fraction = Fraction(0)  # planned with; a saw with a finer kerf leaves a little more
    trim: Fraction = Fraction(0)  # off each factory edge of a whole sheet
    proven: bool = (
        False  # no plan can do with fewer new sheets; for sticks, with less money (length, where no price is said)
    )

    @property
    def bought(self) -> int:
        return sum(not plan.source.on_hand for plan in self.sources)


@dataclass(frozen=True)
class Setting:
    """One fence or stop setting, in the order to set them: the cuts made at it."""

    saw: Saw
    kind: str
    setting: Fraction
    cuts: tuple[int, ...]


@dataclass(frozen=True)
class Cutting:
    """The whole cutting plan. `finished` is False when it was stopped early (the best so far)."""

    stocks: tuple[StockPlan, ...]
    settings: tuple[Setting, ...]
    rack: tuple[tuple[str, Fraction, Fraction, str | None], ...]  # stock, length, width, grain: what is worth keeping
    finished: bool
    untouched: tuple[
        tuple[str, Fraction, Fraction, str | None], ...
    ] = ()  # offcuts of the rack that this job leaves alone
