"""Where the figures of the weights' sheet come from."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.resolve.model import Stock
from setout.resolve.wood import LB_PER_FT3, PSI
from setout.strength import figure, figures, find_panel, find_species
from setout.units import Style
from setout.write.facts.sizes import decimal


@dataclass(frozen=True)
class Source:
    """`about` "sag", "load", "limit", "moves", "lift" or "tip"."""

    about: str
    text: str


@dataclass(frozen=True)
class Known:
    """What is taken of a stock: density in lb/ft3 or kg/m3, stiffness in psi or N/mm2, creep; "" where not known.
    `kind` the row of the table, "" where the spec says its own numbers."""

    title: str
    density: str
    stiffness: str
    creep: str
    kind: str
    source: str


_FIGURES = (
    ("sag", "sag_spread_simple"),
    ("load", "shelf_load"),
    ("limit", "casework_share"),
    ("moves", "indoor_driest"),
    ("lift", "lift_load"),
)


def sources(*, lifts: bool, sags: bool, moves: bool, tips: bool) -> tuple[Source, ...]:
    wanted = {"sag": sags, "load": sags, "limit": sags, "moves": moves, "lift": lifts, "tip": tips}
    said = [Source(about, figures()[name].source) for about, name in _FIGURES if wanted[about]]
    return tuple(said) + ((Source("tip", "ASTM F2057-23"),) if tips else ())


def known(stock: Stock, style: Style) -> Known:
    row = find_species(stock.species) if stock.species else find_panel(stock.panel) if stock.panel else None
    return Known(
        title=stock.title,
        density="" if stock.density is None else _density(stock.density, style),
        stiffness="" if stock.stiffness is None else _stiffness(stock.stiffness, style),
        creep=decimal(stock.creep, 1),
        kind="" if row is None else row.name,
        source="" if row is None else row.source,
    )


def share_of_span() -> str:
    """The limit of a sag is the span divided by this."""
    return decimal(figure("casework_share"), 0)


def _density(value: Fraction, style: Style) -> str:
    return decimal(value / LB_PER_FT3 if style.metric else value, 0)


def _stiffness(value: Fraction, style: Style) -> str:
    if style.metric:
        return decimal(value / PSI, 0)
    return f"{int(value):,}"
