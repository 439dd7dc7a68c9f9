"""The first sheet: what the job is, how big, how much of everything, and how to read the rest."""

from __future__ import annotations

from dataclasses import dataclass

from setout.drawing import Drawing
from setout.resolve.model import Stock
from setout.write.facts import Facts
from setout.write.facts.lines import FastenerLine, HoleLine, fastener_lines, hole_lines
from setout.write.facts.paths import Where, ranges, spoken
from setout.write.facts.sizes import Length, area, length, over_scenes, run, size
from setout.write.facts.supply import Supply, supply
from setout.write.facts.totals import Fitted, Material, Totals, totals


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
    """`amount` square feet or metres of sheet, feet or metres of stick; `least` so many of `each` at the very least,
    where
    no cutting plan gives its `supply`."""

    title: str
    kind: str
    boards: int
    amount: str
    least: int
    each: tuple[Length, ...]
    supply: Supply | None


@dataclass(frozen=True)
class ToMeasure:
    name: str
    title: str
    sized: tuple[str, ...]
    worked: tuple[str, ...]


@dataclass(frozen=True)
class JobSheet:
    title: str
    things: tuple[Thing, ...]
    loose: bool
    overall: tuple[Length, ...]
    view: Drawing | None
    pieces: int
    boards: int
    stuff: tuple[Stuff, ...]
    planned: bool
    holes: tuple[HoleLine, ...]
    fasteners: tuple[FastenerLine, ...]
    fitted: tuple[Fitted, ...]
    glue: str
    to_measure: tuple[ToMeasure, ...]
    example: Example | None


def build(facts: Facts, view: Drawing | None) -> JobSheet:
    counted = totals(facts.plan)
    return JobSheet(
        title=facts.project.title,
        things=_things(facts),
        loose=bool(facts.scene.loose),
        overall=_overall(facts),
        view=view,
        pieces=counted.pieces,
        boards=counted.boards,
        stuff=tuple(_stuff(facts, material) for material in counted.materials),
        planned=facts.plan.cutting is not None,
        holes=hole_lines(facts, counted.bores),
        fasteners=fastener_lines(facts, counted.fasteners),
        fitted=counted.fitted,
        glue=_glue(facts, counted),
        to_measure=tuple(_to_measure(facts, name) for name in facts.open_measures),
        example=_example(facts),
    )


def room_for_view(facts: Facts) -> float:
    """Height, in points, that keeps the views on the first page."""
    boxed = 36 + 19 * len(facts.open_measures) if facts.open_measures else 0
    return min(420.0, max(260.0, facts.height - 92 - 20 * (len(_things(facts)) + 1) - boxed))


def _things(facts: Facts) -> tuple[Thing, ...]:
    """Top-level assemblies, those alike on one line, in the order placed."""
    alike: dict[tuple, list[str]] = {}
    for instance in facts.scene.instances.values():
        if instance.parent == "" and instance.box is not None:
            exact = instance.motion.own_sizes(instance.box.sizes)
            key = instance.definition, instance.title, exact, facts.sizes_over_scenes(instance.path)
            alike.setdefault(key, []).append(instance.path)
    return tuple(
        Thing(facts.letter(definition), title or definition, ranges(names), len(names), sizes)
        for (definition, title, _, sizes), names in alike.items()
    )


def _lengths(facts: Facts, sizes: tuple) -> tuple[Length, ...]:
    return tuple(length(value, facts.style) for value in sizes)


def _overall(facts: Facts) -> tuple[Length, ...]:
    scenes = [scene.whole.sizes for scene in facts.in_scenes]
    return tuple(over_scenes(values, facts.style) for values in zip(*scenes))


def _stuff(facts: Facts, material: Material) -> Stuff:
    stock = material.stock
    is_sheet = stock.kind == "sheet"
    amount = area(material.area, facts.style) if is_sheet else run(material.run, facts.style)
    each = (stock.long, stock.short) if is_sheet else (material.longest,)
    known = tuple(value for value in each if value is not None)
    return Stuff(
        stock.title, stock.kind, material.boards, amount, material.least, _lengths(facts, known), _supply(facts, stock)
    )


def _supply(facts: Facts, stock: Stock) -> Supply | None:
    stocks = () if facts.plan.cutting is None else facts.plan.cutting.stocks
    return next((supply(plan, facts.style) for plan in stocks if plan.stock.name == stock.name), None)


def _glue(facts: Facts, counted: Totals) -> str:
    return area(counted.glue, facts.style) if counted.glue else ""


def _to_measure(facts: Facts, name: str) -> ToMeasure:
    pieces = facts.plan.pieces.pieces
    sized = tuple(piece.mark for piece in pieces if name in piece.sized_by)
    worked = tuple(piece.mark for piece in pieces if name in piece.worked_by)
    return ToMeasure(spoken(name), facts.project.measures[name].title, sized, worked)


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
