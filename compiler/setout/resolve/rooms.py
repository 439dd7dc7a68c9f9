"""The space that the job goes into."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from setout.geometry import Axis
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.model import Room
from setout.resolve.paths import axis_of

if TYPE_CHECKING:
    from setout.resolve.constants import Amounts

LARGEST = Fraction(6000)  # inches; 500 ft


def room_made(room: r.RoomStatement, amounts: Amounts) -> Room | None:
    """The room with its sizes worked out. None once the reason has been reported."""
    ctx = amounts.ctx
    sizes: dict[Axis, Fraction] = {}
    said: set[Axis] = set()
    for name, expr in room.size:
        axis = axis_of(name.text)
        if axis is None or axis in said:
            continue
        said.add(axis)
        size = amounts.length(expr, "the room")
        if size is not None and not 0 < size <= LARGEST:
            ctx.say(problems.absurd_size("the room", axis.word, size, LARGEST, expr.span, ctx.world.style))
        elif size is not None:
            sizes[axis] = size
    missing = [axis.word for axis in Axis if axis not in said]
    if missing:
        ctx.say(problems.room_size_wanted(room, missing))
    studs = _studs(room, amounts)
    return Room(room.title.value if room.title else "", sizes, studs, room.span) if len(sizes) == 3 else None


def _studs(room: r.RoomStatement, amounts: Amounts) -> tuple[Fraction, Fraction] | None:
    """(spacing, the first one's distance from the left wall)."""
    if room.studs is None:
        return None
    every, first = room.studs
    spacing = amounts.length(every, "the studs")
    start = amounts.from_left(first, "the studs") if first is not None else spacing
    if spacing is None or start is None:
        return None
    if spacing <= 0 or start < 0:
        amounts.ctx.say(problems.odd_studs(every.span.to(first.span) if first is not None else every.span))
        return None
    return spacing, start
