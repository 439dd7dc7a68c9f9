"""Sizes to be taken on site, with blanks for them and for what follows from them."""

from __future__ import annotations

from dataclasses import dataclass

from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import Length, length, size
from setout.write.to_measure.standing import Stands, standing


@dataclass(frozen=True)
class Follows:
    """One size of one piece. `side` "length" or "width"."""

    mark: str
    count: int
    side: str
    size: Length


@dataclass(frozen=True)
class Measure:
    """`follows` sizes that hang on it; `drilled` marks of pieces whose holes or cuts alone hang on it; `stands`
    what moves with it."""

    name: str
    title: str
    low: Length
    high: Length
    follows: tuple[Follows, ...]
    drilled: tuple[str, ...]
    stands: tuple[Stands, ...]


@dataclass(frozen=True)
class ToMeasure:
    measures: tuple[Measure, ...]


def build(facts: Facts) -> ToMeasure | None:
    """None when everything is known."""
    measures = tuple(_measure(facts, name) for name in facts.open_measures)
    return ToMeasure(measures) if measures else None


def _measure(facts: Facts, name: str) -> Measure:
    measure = facts.project.measures[name]
    low, high = (length(value, facts.style) for value in (measure.low, measure.high))
    follows = _follows(facts, name)
    drilled = tuple(piece.mark for piece in facts.plan.pieces.pieces if name in piece.worked_by)
    return Measure(spoken(name), measure.title or spoken(name), low, high, follows, drilled, standing(facts, name))


def _follows(facts: Facts, name: str) -> tuple[Follows, ...]:
    sides = (
        (piece, side, value)
        for piece in facts.plan.pieces.pieces
        for side, value in (("length", piece.length), ("width", piece.width))
    )
    return tuple(
        Follows(piece.mark, piece.count, side, size(value, facts.style))
        for piece, side, value in sides
        if name in value.hangs_on(piece.measures)
    )
