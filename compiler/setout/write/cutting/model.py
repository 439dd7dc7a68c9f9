"""What the cutting pages are printed from."""

from __future__ import annotations

from dataclasses import dataclass

from setout.drawing import Drawing
from setout.write.facts.sizes import Length
from setout.write.facts.supply import Supply


@dataclass(frozen=True)
class Side:
    """What lies on one side of a cut. kind as in plan.cutting.model.Falls; `name` a mark, a board or a letter;
    `sizes` of boards and offcuts."""

    kind: str
    name: str
    sizes: tuple[Length, ...]


@dataclass(frozen=True)
class Row:
    """One cut on each of the sources that are cut alike. `how`: "guide", "fence" or "stop" (set to `setting`, from
    the board's `edge`), "trim" (takes
    `setting` off that edge, kerf included), "shave" (the guide at `setting`; the edge across is only just touched)
    or "none" (no saw can). `last`: what the blade takes of the board where that is less than its own width (nothing
    remains then)."""

    numbers: tuple[int, ...]
    kind: str
    saw: str
    how: str
    setting: Length
    edge: str
    board: str
    off: Side
    rest: Side | None
    last: Length | None = None


@dataclass(frozen=True)
class Yielded:
    """Boards of one mark that come out of a source."""

    mark: str
    count: int
    sizes: tuple[Length, ...]
    reserved: bool


@dataclass(frozen=True)
class SourceSheet:
    """One source, or several cut alike under one drawing. `names` what is written on them; `sizes` length and width,
    of sticks the length alone.
    `keep` it all on one page; `beside` the drawing is room for what comes out; `long_names` want a wider column."""

    name: str
    names: tuple[str, ...]
    kind: str
    on_hand: bool
    sizes: tuple[Length, ...]
    drawing: Drawing
    yields: tuple[Yielded, ...]
    rows: tuple[Row, ...]
    keep: bool
    beside: bool
    long_names: bool = False


@dataclass(frozen=True)
class Missing:
    mark: str
    count: int
    sizes: tuple[Length, ...]


@dataclass(frozen=True)
class StockSheet:
    title: str
    thick: Length
    supply: Supply
    percent: str
    missing: tuple[Missing, ...]
    sources: tuple[SourceSheet, ...]


@dataclass(frozen=True)
class Batch:
    """Cuts in the order of work at one setting, or (no `setting`) a breaking down by the drawings. `cuts` source and
    numbers; `makes` marks and how many."""

    saw: str
    how: str
    setting: Length | None
    cuts: tuple[tuple[str, str], ...]
    count: int
    makes: tuple[tuple[str, int], ...]


@dataclass(frozen=True)
class Equals:
    """Sizes that several boards have: how many, how many of them at one setting on both sides, and the marks of the
    boards of each of the others."""

    sizes: int
    at_one: int
    others: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Reserved:
    """A piece that waits for `measures`: what is cut for it now is a blank."""

    mark: str
    measures: tuple[str, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True)
class CuttingPages:
    """`cost` of all that is bought and has a price; `priceless` what has none. `kerfs` with the stocks planned with
    each, `saws` those that cut, with theirs. `rack` is text that another spec can include."""

    stocks: tuple[StockSheet, ...]
    cost: str
    priceless: tuple[str, ...]
    batches: tuple[Batch, ...]
    reserved: tuple[Reserved, ...]
    rack: str
    untouched: bool
    unsawn: tuple[int, ...]
    kerfs: tuple[tuple[Length, tuple[str, ...]], ...]
    trim: Length | None
    finished: bool
    broken_down: bool
    ripped: bool
    crosscut: bool
    saws: tuple[tuple[str, Length], ...] = ()
    equals: Equals = Equals(0, 0, ())

    @property
    def halves(self) -> bool:
        """Some cuts take less than the blade's width."""
        return any(row.last for stock in self.stocks for source in stock.sources for row in source.rows)

    @property
    def sheets(self) -> tuple[StockSheet, ...]:
        return tuple(stock for stock in self.stocks if stock.sources and stock.supply.kind == "sheet")

    @property
    def sticks(self) -> tuple[StockSheet, ...]:
        return tuple(stock for stock in self.stocks if stock.sources and stock.supply.kind == "stick")
