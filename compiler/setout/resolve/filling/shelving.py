"""`shelves in bay of ply { … }` as one part, repeated."""

from __future__ import annotations

from setout.read import model as r
from setout.resolve.filling.doors import board
from setout.resolve.filling.shop import Shop
from setout.resolve.filling.wording import Pen


def made(s: r.ShelvesStatement, door: r.DoorStatement | None, shop: Shop) -> list[r.Statement]:
    """Clear openings are equal; on pins each shelf comes down to the next hole. They stand behind an inset `door`."""
    pen, bay = Pen(s.head), s.opening.text
    clear = pen.ex(s.clear) if s.clear is not None else pen.plain(0)
    count = pen.ex(s.count) if s.count is not None else pen.plain(1)
    thick = pen.path(s.of.text, "thick")
    each = (pen.path(bay, "high") - count * thick) / (count + 1)
    pitch, first = each + thick, pen.path(bay, "bottom") + each
    if s.pitch is not None and s.start is not None:
        zero = pen.inches(0)  # type: ignore[arg-type]
        row, start = pen.ex(s.pitch) + zero, pen.ex(s.start)
        pitch = pen.call("floor", pitch, row)
        first = start + pen.call("floor", first - start, row)
    repeat = r.Repeat(count.expr, pen.name("high"), None, pitch.expr, first.expr, pen.span)
    wide = pen.spread("wide", pen.path(bay, "left") + clear, pen.path(bay, "right") - clear)
    front = pen.path(bay, "front")
    front = front + pen.path(door.of.text, "thick") if door is not None else front
    deep = pen.spread("deep", front, pen.path(bay, "back") - clear)
    return [
        board(
            pen, f"{bay}.shelf", s.of, "level", (wide, deep), (), show="top", grain="wide", repeat=repeat, span=s.span
        )
    ]
