"""The buy list, by shop counter: boards, hardware, fasteners by the box, glue, banding."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.plan.buying.model import BuyLine
from setout.write.facts import Facts
from setout.write.facts.sizes import Length, area, length, maybe_bought, rounded_up, run
from setout.write.facts.supply import money

COUNTERS = (
    ("boards", ("sheet", "stick")),
    ("hardware", ("hardware",)),
    ("fasteners", ("pockets", "screws", "brads", "dowels")),
    ("glue", ("glue",)),
    ("banding", ("edging",)),
)


@dataclass(frozen=True)
class Row:
    """`need`, `on_hand` and `pack` in pieces, glue in square feet or metres, banding in feet or metres; `price` of one
    pack, "" where none is said. `sizes` of one sheet or stick.
    `pairs`: it is counted and sold by the pair."""

    kind: str
    title: str
    sizes: tuple[Length, ...]
    gauge: int | None
    length: Length | None
    diameter: Length | None
    need: str
    on_hand: str
    packs: int
    pack: str
    price: str
    cost: str
    estimate: bool
    pairs: bool


@dataclass(frozen=True)
class Counter:
    kind: str
    rows: tuple[Row, ...]


@dataclass(frozen=True)
class BuySheet:
    """`unpriced` how many of the lines to buy have no price; `waits`: amounts hang on a measurement."""

    counters: tuple[Counter, ...]
    total: str
    unpriced: int
    priced: bool
    waits: bool


def build(facts: Facts) -> BuySheet | None:
    """None when nothing is bought."""
    bought = facts.plan.buying
    if bought is None or not bought.lines:
        return None
    return BuySheet(
        counters=tuple(counter for kind, of in COUNTERS if (counter := _counter(facts, kind, of)).rows),
        total=money(bought.total),
        unpriced=len(bought.unpriced),
        priced=any(line.packs and line.price is not None for line in bought.lines),
        waits=bool(facts.open_measures),
    )


def _counter(facts: Facts, kind: str, of: tuple[str, ...]) -> Counter:
    assert facts.plan.buying is not None
    return Counter(kind, tuple(_row(facts, line) for line in facts.plan.buying.lines if line.kind in of))


def _row(facts: Facts, line: BuyLine) -> Row:
    style = facts.style
    return Row(
        kind=line.kind,
        title=line.title,
        sizes=tuple(length(value, style) for value in line.sizes),
        gauge=line.gauge,
        length=maybe_bought(line.length, style),
        diameter=maybe_bought(line.diameter, style),
        need=_amount(facts, line.kind, line.need),
        on_hand=_amount(facts, line.kind, line.on_hand) if line.on_hand else "",
        packs=line.packs,
        pack=_amount(facts, line.kind, line.pack),
        price=money(line.price),
        cost=money(line.cost),
        estimate=line.estimate,
        pairs=_by_the_pair(facts, line),
    )


def _by_the_pair(facts: Facts, line: BuyLine) -> bool:
    hardware = facts.project.hardware.get(line.name)
    return line.kind == "hardware" and hardware is not None and hardware.slide is not None


def _amount(facts: Facts, kind: str, value: Fraction) -> str:
    if kind == "glue":
        return area(value, facts.style)
    if kind == "edging":
        return run(value, facts.style)
    return str(rounded_up(value))
