"""Several alike, spread along an axis: evenly in a gap, so that the clear openings are equal, or at a pitch."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Face
from setout.place import amounts, problems
from setout.place.engine import Poisoned, Work, need
from setout.place.express import above_zero, length
from setout.place.express import count as counted
from setout.place.found import end
from setout.place.shapes import repeat_axis, repeat_of
from setout.place.site import Scope, Site
from setout.resolve.model import RepeatDef, ShelvesDef
from setout.source import Span
from setout.values import Value

MOST = 1000
"""Members of one repeat: more is a slip of the pen."""


@dataclass(frozen=True)
class Row:
    """Member i's low end is at start + i × opening + (i - 1) × size, or at start + (i - 1) × pitch."""

    start: Value
    opening: Value | None
    step: Value


def in_row(scope: Scope, name: str, member: int, at: Span) -> Work:
    """Where a member's low end is."""
    row: Row = yield from need("row", scope, name, span=at)
    before = amounts.times(member - 1, row.step, at) if member > 1 else None
    where = row.start
    if row.opening is not None:
        where = amounts.plus(where, amounts.times(member, row.opening, at), at)
    return amounts.plus(where, before, at) if before is not None else where


def count(site: Site, scope: Scope, name: str) -> Work:
    """Rule: how many members a repeat has."""
    repeat = repeat_of(scope, name)
    assert repeat is not None
    n = yield from counted(site, scope, repeat.count)
    if n > MOST:
        site.report(problems.too_many_members(name, n, MOST, repeat.count.span))
        raise Poisoned
    return n


def row(site: Site, scope: Scope, name: str) -> Work:
    """Rule: the Row that a repeat makes."""
    repeat = repeat_of(scope, name)
    axis = repeat_axis(scope, name)
    assert repeat is not None and axis is not None
    n = yield from need("count", scope, name, span=repeat.count.span)
    size = yield from end(scope, name, 1, axis, 0, repeat.span)
    if repeat.between is not None:
        return (yield from _divided(site, scope, name, repeat, axis, n, size))
    return (yield from _pitched(site, scope, name, repeat, axis, n, size))


def _divided(site: Site, scope: Scope, name: str, repeat: RepeatDef, axis: Axis, n: int, size: Value) -> Work:
    assert repeat.between is not None
    a, b = repeat.between
    low, high = yield from need("gap", scope, a, b, axis, repeat.span, span=repeat.span)
    gap = amounts.minus(high, low, repeat.span)
    taken = amounts.times(n, size, repeat.span)
    if taken.amount > gap.amount:
        site.report(problems.repeat_does_not_fit(site.style, name, n, size.amount, gap.amount, repeat.span))
        raise Poisoned
    clear = amounts.shared(amounts.minus(gap, taken, repeat.span), n + 1, repeat.span)
    words = f"one of {n + 1} equal openings between {'.'.join(a)} and {'.'.join(b)}"
    return Row(low, amounts.under_rule(words, clear, repeat.span), size)


def _pitched(site: Site, scope: Scope, name: str, repeat: RepeatDef, axis: Axis, n: int, size: Value) -> Work:
    assert repeat.pitch is not None
    filling = next((one for one in scope.body.shelves if one.part == name), None)
    if filling is not None:
        yield from _shelves(site, scope, filling, n, size)
    pitch = yield from above_zero(site, scope, repeat.pitch, f"how far apart `{name}` stands")
    start = amounts.zero(Face(axis, -1).word, repeat.span)
    if repeat.start is not None:
        start = yield from length(site, scope, repeat.start)
    if n > 1 and pitch.amount < size.amount:
        site.report(problems.pitch_too_small(site.style, name, pitch.amount, size.amount, repeat.pitch.span))
        raise Poisoned
    return Row(start, None, pitch)


def _shelves(site: Site, scope: Scope, filling: ShelvesDef, n: int, size: Value) -> Work:
    """Reports shelves of which there is no room for so many in their opening. Nobody wrote the pitch that they stand
    at: it is what the openings between them come to."""
    bay, style, name = filling.opening[0], site.style, filling.part
    ends = []
    for sign in (-1, 1):
        ends.append((yield from end(scope, bay, 0, Axis.HIGH, sign, filling.head)))
    gap = ends[1].amount - ends[0].amount
    if filling.pitch is None or filling.start is None:
        if n * size.amount > gap:
            site.report(problems.repeat_does_not_fit(style, name, n, size.amount, gap, filling.head))
            raise Poisoned
        return
    holes = yield from above_zero(site, scope, filling.pitch, "how far apart the pin holes are")
    start = yield from length(site, scope, filling.start)
    most = _most_on_pins(gap, size.amount, holes.amount, start.amount - ends[0].amount, n)
    if most < n:
        at = filling.pitch.span
        site.report(
            problems.shelves_do_not_fit(style, name, n, most, holes.amount, gap, filling.head)
            if most
            else problems.pins_too_far_apart(style, name, holes.amount, gap, at, filling.head)
        )
        raise Poisoned


def _most_on_pins(gap: Fraction, size: Fraction, holes: Fraction, start: Fraction, n: int) -> int:
    """How many shelves, `n` at most, clear one another and the floor when each comes down to the next hole; `start`
    of the row above the floor."""
    for many in range(n, 0, -1):
        each = (gap - many * size) / (many + 1)
        if (each + size) // holes * holes >= size and start + (each - start) // holes * holes >= 0:
            return many
    return 0
