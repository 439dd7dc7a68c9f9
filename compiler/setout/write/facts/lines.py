"""Counted things as lines of print."""

from __future__ import annotations

from dataclasses import dataclass

from setout.write.facts.model import Facts
from setout.write.facts.sizes import Count, Length, bored, maybe_bought
from setout.write.facts.totals import Bored, Fasteners


@dataclass(frozen=True)
class FastenerLine:
    """`gauge`, `length`, `diameter` None where the kind has none."""

    kind: str
    gauge: int | None
    length: Length | None
    diameter: Length | None
    count: Count


@dataclass(frozen=True)
class HoleLine:
    """`kind` as in join.model.Bore."""

    kind: str
    diameter: Length
    count: Count


def fastener_lines(facts: Facts, counted: tuple[Fasteners, ...]) -> tuple[FastenerLine, ...]:
    return tuple(_fastener(facts, fasteners) for fasteners in counted)


def hole_lines(facts: Facts, counted: tuple[Bored, ...]) -> tuple[HoleLine, ...]:
    return tuple(HoleLine(hole.kind, bored(hole.diameter, facts.style), hole.count) for hole in counted)


def _fastener(facts: Facts, f: Fasteners) -> FastenerLine:
    long, across = (maybe_bought(value, facts.style) for value in (f.length, f.diameter))
    return FastenerLine(f.kind, f.gauge, long, across, f.count)
