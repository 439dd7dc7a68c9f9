"""The first sheet: what the job is, how big, how much of everything, and how to read the rest."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from setout.drawing import Drawing
from setout.write.facts import Facts
from setout.write.facts.faces import own_sizes
from setout.write.facts.lines import FastenerLine, HoleLine, fastener_lines, hole_lines
from setout.write.facts.paths import Where, ranges, spoken
from setout.write.facts.sizes import Length, area, length, run, size
from setout.write.facts.totals import Fitted, Material, Totals, totals

GAP = 14.0  # points between two drawings in a row


@dataclass(frozen=True)
class Thing:
    """One assembly standing in the job. `sizes` wide, high, deep."""

    letter: str
    title: str
    names: tuple[str, ...]
    count: int
    sizes: tuple[Length, ...]


@dataclass(frozen=True)
class Example:
    """A mark to learn the marks from. `letter_of` the assembly its letter stands for; "" the job itself."""

    mark: str
    letter: str
    number: str
    letter_of: str
    count: int
    where: tuple[Where, ...]
    length: Length
    width: Length


@dataclass(frozen=True)
class Stuff:
    """`amount` square feet or metres of sheet, feet or metres of stick; `least` so many of `each` at the very least."""

    title: str
    kind: str
    boards: int
    amount: str
    least: int
    each: tuple[Length, ...]


@dataclass(frozen=True)
class ToMeasure:
    name: str
    title: str
    pieces: tuple[str, ...]


@dataclass(frozen=True)
class JobSheet:
    title: str
    things: tuple[Thing, ...]
    loose: bool
    overall: tuple[Length, ...]
    views: tuple[tuple[Drawing, ...], ...]
    pieces: int
    boards: int
    stuff: tuple[Stuff, ...]
    holes: tuple[HoleLine, ...]
    fasteners: tuple[FastenerLine, ...]
    fitted: tuple[Fitted, ...]
    glue: str
    to_measure: tuple[ToMeasure, ...]
    example: Example | None


def build(facts: Facts, views: Mapping[str, Drawing]) -> JobSheet:
    counted = totals(facts.plan)
    return JobSheet(
        title=facts.project.title,
        things=_things(facts),
        loose=bool(facts.scene.loose),
        overall=_overall(facts),
        views=_in_rows(tuple(views.values()), facts.width),
        pieces=counted.pieces,
        boards=counted.boards,
        stuff=tuple(_stuff(facts, material) for material in counted.materials),
        holes=hole_lines(facts, counted.bores),
        fasteners=fastener_lines(facts, counted.fasteners),
        fitted=counted.fitted,
        glue=_glue(facts, counted),
        to_measure=tuple(_to_measure(facts, name) for name in facts.open_measures),
        example=_example(facts),
    )


def _in_rows(views: tuple[Drawing, ...], width: float) -> tuple[tuple[Drawing, ...], ...]:
    """As many side by side as the page is wide."""
    rows: list[list[Drawing]] = []
    for drawing in views:
        if rows and sum(d.width + GAP for d in rows[-1]) + drawing.width <= width:
            rows[-1].append(drawing)
        else:
            rows.append([drawing])
    return tuple(map(tuple, rows))


def _things(facts: Facts) -> tuple[Thing, ...]:
    """Top-level assemblies, those alike on one line, in the order placed."""
    alike: dict[tuple, list[str]] = {}
    for instance in facts.scene.instances.values():
        if instance.parent == "" and instance.box is not None:
            sizes = own_sizes(instance.motion, instance.box.sizes)
            alike.setdefault((instance.definition, instance.title, sizes), []).append(instance.path)
    return tuple(
        Thing(facts.letter(definition), title or definition, ranges(names), len(names), _lengths(facts, sizes))
        for (definition, title, sizes), names in alike.items()
    )


def _lengths(facts: Facts, sizes: tuple) -> tuple[Length, ...]:
    return tuple(length(value, facts.style) for value in sizes)


def _overall(facts: Facts) -> tuple[Length, ...]:
    return () if facts.outline is None else _lengths(facts, facts.outline.sizes)


def _stuff(facts: Facts, material: Material) -> Stuff:
    stock = material.stock
    is_sheet = stock.kind == "sheet"
    amount = area(material.area, facts.style) if is_sheet else run(material.run, facts.style)
    each = (stock.long, stock.short) if is_sheet else (material.longest,)
    known = tuple(value for value in each if value is not None)
    return Stuff(stock.title, stock.kind, material.boards, amount, material.least, _lengths(facts, known))


def _glue(facts: Facts, counted: Totals) -> str:
    return area(counted.glue, facts.style) if counted.glue else ""


def _to_measure(facts: Facts, name: str) -> ToMeasure:
    held = tuple(piece.mark for piece in facts.plan.pieces.pieces if name in piece.measures)
    return ToMeasure(spoken(name), facts.project.measures[name].title, held)


def _example(facts: Facts) -> Example | None:
    """A piece that stands in place with most boards teaches most; among equals the first."""
    pieces = [piece for piece in facts.plan.pieces.pieces if not piece.held]
    if not pieces:
        return None
    best = max(pieces, key=lambda piece: (piece.loose is None, piece.count))
    letter = best.mark.rstrip("0123456789")
    return Example(
        mark=best.mark,
        letter=letter,
        number=best.mark[len(letter) :],
        letter_of=_letter_of(facts, letter),
        count=best.count,
        where=facts.where(best),
        length=size(best.length, facts.style),
        width=size(best.width, facts.style),
    )


def _letter_of(facts: Facts, letter: str) -> str:
    definition = next((name for name, given in facts.plan.pieces.letters.items() if given == letter), "")
    return facts.definition_title(definition)
