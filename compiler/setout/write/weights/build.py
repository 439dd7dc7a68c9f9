"""Weights and lifts, sag under load, seasonal movement, tipping over: as found by inspect, those alike on one line."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeVar

from setout.inspect.model import Lifted, Moves, OnFeet, Sag, Standing
from setout.resolve.model import Stock
from setout.write.facts import Facts
from setout.write.facts.measures import fine, heavy, spread
from setout.write.facts.paths import Where, ranges, spoken
from setout.write.facts.sizes import Length, length
from setout.write.weights.sources import Known, Source, known, share_of_span, sources

T = TypeVar("T")
PART = 4  # a board that sags less than this part of its limit needs none either


@dataclass(frozen=True)
class Lift:
    """`weight` of one, `recommended` by the NIOSH equation up to where it stands ("" for a sheet, "none" where nobody
    should lift it alone), `people` to lift it."""

    kind: str
    title: str
    names: tuple[str, ...]
    count: int
    sizes: tuple[Length, ...]
    weight: str
    recommended: str
    people: int


@dataclass(frozen=True)
class SagRow:
    """Boards of one mark under the same load. `along` wide, high or deep; sags and limit as text, `share` of the limit
    in percent. `mends` what would hold it: kind "thick", "span" or "strip" with its length."""

    mark: str
    where: tuple[Where, ...]
    span: Length
    ends: str
    found: bool
    load: str
    said: bool
    first: str
    lasting: str
    allowed: str
    too_much: bool
    mends: tuple[tuple[str, Length], ...]


@dataclass(frozen=True)
class Move:
    mark: str
    where: tuple[Where, ...]
    species: str
    across: Length
    grows: str
    shrinks: str
    gap: str
    held: bool


@dataclass(frozen=True)
class Feet:
    name: str
    hardware: str
    count: int
    each: str
    weight: str
    too_much: bool
    carried: tuple[str, ...]


@dataclass(frozen=True)
class Tip:
    """Free-standing; `scope`: as tall, roomy and heavy as the standard is about; None: its weight isn't known."""

    names: tuple[str, ...]
    high: Length
    weight: str
    scope: bool | None


@dataclass(frozen=True)
class HeldBy:
    """Not screwed to a wall itself, but joined to what is; `through` these, the last one screwed to it."""

    names: tuple[str, ...]
    through: tuple[str, ...]


@dataclass(frozen=True)
class Weights:
    """`total` of all boards, "" when a stock's density isn't known; `no_density`, `no_stiffness` titles of those
    stocks. `held` what is screwed to a wall itself, `held_by` what is by way of others. `light` how many lighter
    assemblies have no line, `stiff` how many boards sag so little that they have none."""

    total: str
    limit: str
    sheet_alone: Length
    lifts: tuple[Lift, ...]
    light: int
    light_from: str
    no_density: tuple[str, ...]
    sags: tuple[SagRow, ...]
    stiff: int
    no_stiffness: tuple[str, ...]
    moves: tuple[Move, ...]
    feet: tuple[Feet, ...]
    held: tuple[str, ...]
    held_by: tuple[HeldBy, ...]
    tips: tuple[Tip, ...]
    stocks: tuple[Known, ...]
    share: str
    sources: tuple[Source, ...]
    waits: bool
    drawers: bool
    doors: bool


def build(facts: Facts) -> Weights | None:
    """None when there is nothing to say: nothing is inspected, or no stock says what it weighs nor how stiff it is and
    nothing stands tall."""
    found = facts.plan.inspected
    if found is None:
        return None
    stocks = _stocks(facts)
    weighed = tuple(lift for lift in found.lifts if lift.weight is not None)
    named = tuple(lift for lift in weighed if _counts(facts, lift))
    sags = tuple(sag for sag in found.sags if sag.lasting is not None)
    telling = tuple(sag for sag in sags if sag.said or (sag.lasting or 0) > sag.allowed / PART)
    if not (weighed or sags or found.moves or found.on_feet or any(one.scope is not False for one in found.standing)):
        return None
    return Weights(
        total=_total(facts),
        limit=heavy(facts.project.practice.value("lift_alone"), facts.style),
        sheet_alone=length(facts.project.practice.value("sheet_alone"), facts.style),
        lifts=tuple(_lift(facts, some) for some in _kinds(named, lambda one: _likeness(facts, one))),
        light=len(weighed) - len(named),
        light_from=heavy(_light(facts), facts.style),
        no_density=tuple(stock.title for stock in stocks if stock.density is None),
        sags=_sags(facts, telling),
        stiff=len(sags) - len(telling),
        no_stiffness=tuple(stock.title for stock in stocks if stock.stiffness is None),
        moves=tuple(_move(facts, some) for some in _kinds(found.moves, lambda one: _moving(facts, one))),
        feet=tuple(_feet(facts, one) for one in found.on_feet),
        held=ranges(one.path for one in found.standing if one.fixed and not one.through),
        held_by=_held_by(one for one in found.standing if one.through),
        tips=tuple(_tip(facts, some) for some in _kinds(found.standing, _stands) if not some[0].fixed),
        stocks=tuple(known(stock, facts.style) for stock in stocks if stock.density or stock.stiffness),
        share=share_of_span(),
        sources=sources(lifts=bool(weighed), sags=bool(sags), moves=bool(found.moves), tips=bool(found.standing)),
        waits=bool(facts.open_measures),
        drawers=bool(facts.scene.banks),
        doors=bool(facts.scene.doors),
    )


def _stocks(facts: Facts) -> tuple[Stock, ...]:
    return tuple({piece.stock.name: piece.stock for piece in facts.plan.pieces.pieces}.values())


def _total(facts: Facts) -> str:
    """Of everything that is made, loose boards too."""
    assert facts.plan.inspected is not None
    weights = facts.plan.inspected.weights
    paths = (*facts.scene.boards, *(loose.path for loose in facts.scene.loose))
    each = [weights.get(path) for path in paths]
    return "" if None in each else heavy(sum((w for w in each if w is not None), Fraction(0)), facts.style)


def _counts(facts: Facts, lift: Lifted) -> bool:
    """Whether it deserves a line: what stands in the job, whole sheets, and whatever is heavy."""
    instance = facts.scene.instances.get(lift.path)
    outermost = instance is not None and instance.parent == ""
    return lift.weight is not None and (lift.weight >= _light(facts) or outermost or not lift.alone)


def _light(facts: Facts) -> Fraction:
    return facts.project.practice.value("lift_light")


def _likeness(facts: Facts, lift: Lifted) -> tuple:
    instance = facts.scene.instances.get(lift.path)
    return lift.kind, lift.title if instance else lift.path, lift.sizes, lift.weight, lift.recommended


def _lift(facts: Facts, some: tuple[Lifted, ...]) -> Lift:
    one, style = some[0], facts.style
    least = min((s.recommended for s in some if s.recommended is not None), default=None)
    assert one.weight is not None and one.people is not None
    names = () if one.kind == "sheet" else ranges(lift.path for lift in some)
    return Lift(
        kind=one.kind,
        title=one.title if one.kind != "board" else facts.mark_of[one.path],
        names=names,
        count=len(some),
        sizes=tuple(length(size, style) for size in one.sizes),
        weight=heavy(one.weight, style),
        recommended="" if least is None else heavy(least, style) if least else "none",
        people=one.people,
    )


def _sags(facts: Facts, sags: Iterable[Sag]) -> tuple[SagRow, ...]:
    """The worst first."""
    kinds = _kinds(sags, lambda sag: (facts.mark_of[sag.board], sag.span, sag.ends, sag.load, sag.lasting))
    worst = sorted(kinds, key=lambda some: -(some[0].lasting or 0) / some[0].allowed)
    return tuple(_sag(facts, some) for some in worst)


def _sag(facts: Facts, some: tuple[Sag, ...]) -> SagRow:
    one, style = some[0], facts.style
    assert one.first is not None and one.lasting is not None
    mends = (("thick", one.thickness_needed), ("span", one.longest_span), ("strip", one.strip))
    return SagRow(
        mark=facts.mark_of[one.board],
        where=facts.places(sag.board for sag in some),
        span=length(one.span, style),
        ends=one.ends,
        found=one.found,
        load=spread(one.load, style),
        said=one.said,
        first=fine(one.first, style),
        lasting=fine(one.lasting, style),
        allowed=fine(one.allowed, style),
        too_much=one.too_much,
        mends=tuple((kind, _rough(facts, value)) for kind, value in mends if value is not None) if one.too_much else (),
    )


def _rough(facts: Facts, value: Fraction) -> Length:
    """A size nobody cuts to, to a coarse mark: half an inch or ten millimetres for what is long, rounded down."""
    step = Fraction(50, 127) if facts.style.metric else Fraction(1, 2)
    return length(value if value < 4 else value // step * step, facts.style)


def _moving(facts: Facts, one: Moves) -> tuple:
    return facts.mark_of[one.board], one.size, one.gap, one.held


def _move(facts: Facts, some: tuple[Moves, ...]) -> Move:
    one, style = some[0], facts.style
    where = facts.places(wood.board for wood in some)
    said = (fine(value, style) for value in (one.grows, one.shrinks, one.gap))
    return Move(facts.mark_of[one.board], where, one.species, length(one.size, style), *said, held=one.held)


def _feet(facts: Facts, one: OnFeet) -> Feet:
    each, weight = heavy(one.each, facts.style), heavy(one.weight, facts.style)
    carried = tuple(map(spoken, one.carried))
    return Feet(spoken(one.unit), one.hardware, one.count, each, weight, one.weight > one.each * one.count, carried)


def _held_by(some: Iterable[Standing]) -> tuple[HeldBy, ...]:
    kinds = _kinds(some, lambda one: one.through)
    return tuple(HeldBy(ranges(one.path for one in kind), tuple(map(spoken, kind[0].through))) for kind in kinds)


def _stands(one: Standing) -> tuple:
    return one.high, one.weight, one.fixed, one.scope


def _tip(facts: Facts, some: tuple[Standing, ...]) -> Tip:
    one = some[0]
    weight = "" if one.weight is None else heavy(one.weight, facts.style)
    names = ranges(standing.path for standing in some)
    return Tip(names, length(one.high, facts.style), weight, one.scope)


def _kinds(things: Iterable[T], kind: Callable[[T], Hashable]) -> tuple[tuple[T, ...], ...]:
    """Those alike together, in order of first appearance."""
    found: dict[Hashable, list[T]] = {}
    for thing in things:
        found.setdefault(kind(thing), []).append(thing)
    return tuple(tuple(some) for some in found.values())
