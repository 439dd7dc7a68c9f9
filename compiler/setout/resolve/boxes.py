"""What of the room must stay clear or is in the way; the doorway and the ceiling on the way in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from setout.geometry import Axis, Box, Face
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.evaluate import Unworkable, as_length, evaluate
from setout.resolve.expressions import bound
from setout.resolve.model import BoundExpr, FaceRef, Room, RoomBox, SizeRef
from setout.resolve.paths import axis_of
from setout.values import Trace, Value

if TYPE_CHECKING:
    from setout.resolve.constants import Amounts

_LARGEST = Fraction(6000)
Ends = tuple[Fraction, Fraction]


def room_furnished(room: Room, statement: r.RoomStatement, amounts: Amounts) -> Room:
    """The room with its doorway, ceiling and boxes. Lets may stand in all of them."""
    made = [_box(box, room, amounts) for box in statement.boxes]
    return replace(
        room,
        door=_door(statement, amounts),
        ceiling=_height(statement.ceiling, amounts) if statement.ceiling is not None else None,
        boxes=tuple(box for box in made if box is not None),
    )


def _door(statement: r.RoomStatement, amounts: Amounts) -> Ends | None:
    if not statement.door:
        return None
    sizes = {axis_of(name.text): _height(expr, amounts) for name, expr in statement.door}
    if set(sizes) != {Axis.WIDE, Axis.HIGH}:
        amounts.ctx.say(problems.odd_doorway(statement.door[0][0].span.to(statement.door[-1][1].span)))
        return None
    wide, high = sizes[Axis.WIDE], sizes[Axis.HIGH]
    return (wide, high) if wide is not None and high is not None else None


def _height(expr: r.Expr, amounts: Amounts) -> Fraction | None:
    size = amounts.length(expr, "the way in")
    if size is not None and not 0 < size <= _LARGEST:
        amounts.ctx.say(problems.absurd_size("the room", "way in", size, _LARGEST, expr.span, amounts.ctx.world.style))
        return None
    return size


def _box(box: r.RoomBox, room: Room, amounts: Amounts) -> RoomBox | None:
    """Where nothing is said of an axis it takes the whole room."""
    ends: dict[Axis, Ends] = {axis: (Fraction(0), room.sizes[axis]) for axis in Axis}
    wrong = []
    for span in box.spans:
        axis = axis_of(span.axis.text)
        got = _ends(span, box, room, amounts)
        if axis is None or got is None:
            return None
        if _sticks_out(span, axis, got, box, room, amounts):
            return None
        ends[axis] = got
        if got[0] >= got[1]:
            wrong.append(axis.word)
    if wrong:
        amounts.ctx.say(problems.box_not_in_room(box.title.value, box.span, wrong))
        return None
    lo, hi = ([ends[axis][i] for axis in Axis] for i in (0, 1))
    return RoomBox(box.kind, box.title.value, Box(tuple(lo), tuple(hi)), box.span)  # type: ignore[arg-type]


def _ends(span: r.SpanClause, box: r.RoomBox, room: Room, amounts: Amounts) -> Ends | None:
    kinds = ("from_to", "size_from", "size_to", "size_on")
    if span.kind not in kinds or (span.kind == "size_on" and span.b is not None):
        amounts.ctx.say(problems.box_span(span.span, box.title.value))
        return None
    a = _position(span.a, span, box, room, amounts)
    b = _position(span.b, span, box, room, amounts) if span.b is not None else Fraction(0)
    if a is None or b is None:
        return None
    if span.kind == "size_on":
        axis = axis_of(span.axis.text)
        middle = room.sizes[axis] / 2  # type: ignore[index]
        return middle - a / 2, middle + a / 2
    return {"from_to": (a, b), "size_from": (b, b + a), "size_to": (b - a, b)}[span.kind]


def _sticks_out(span: r.SpanClause, axis: Axis, ends: Ends, box: r.RoomBox, room: Room, amounts: Amounts) -> bool:
    """Whether the box leaves the room here, which is told: with the clause turned round, if it would be inside so."""
    lo, hi = ends
    size = room.sizes[axis]
    if lo >= hi or (0 <= lo and hi <= size):
        return False
    face, by = (Face(axis, 1), hi - size) if hi - size >= -lo else (Face(axis, -1), -lo)
    counted_from = {"size_from": lo, "size_to": hi}.get(span.kind)
    turned = None
    if counted_from == _room_end(face, size) and hi - lo <= size:
        turned = "to" if span.kind == "size_from" else "from"
    amounts.ctx.say(
        problems.box_outside(box.kind, box.title.value, span, face, by, hi - lo, turned, amounts.ctx.world.style)
    )
    return True


def _room_end(face: Face, size: Fraction) -> Fraction:
    return size if face.sign > 0 else Fraction(0)


def _position(expr: r.Expr | None, span: r.SpanClause, box: r.RoomBox, room: Room, amounts: Amounts) -> Fraction | None:
    """An amount in which the room's own face words may stand."""
    ctx = amounts.ctx
    ctx.constant = False
    try:
        made = bound(expr, ctx) if expr is not None else None
    finally:
        ctx.constant = True
    if made is None:
        return None
    if any(not _of_room(leaf) for leaf in _faces(made)):
        ctx.say(problems.box_span(span.span, box.title.value))
        return None
    try:
        value = as_length(evaluate(made, _Lookup(room.sizes, amounts)), span.span)
    except Unworkable as stuck:
        ctx.say(problems.unworkable(stuck.mismatch, ctx.world.style))
        return None
    except amounts.spoiled:
        ctx.spoil()
        return None
    if value.held:
        ctx.say(problems.constant_held("the room", sorted(value.held), span.span))
        return None
    return value.amount


class _Lookup:
    """As for any constant; a face word is where the room has that face."""

    def __init__(self, sizes: Mapping[Axis, Fraction], amounts: Amounts) -> None:
        self.sizes, self.amounts = sizes, amounts

    def __call__(self, leaf: BoundExpr) -> Value:
        if isinstance(leaf, FaceRef):
            at = _room_end(leaf.face, self.sizes[leaf.face.axis])
            return Value(at, 1, None, Trace("rule", f"the room's {leaf.face.word}", at, 1))
        return self.amounts.lookup(leaf)


def _faces(made: BoundExpr) -> list[BoundExpr]:
    args = getattr(made, "args", None)
    if args is not None:
        return [leaf for arg in args for leaf in _faces(arg)]
    return [made] if isinstance(made, (FaceRef, SizeRef)) else []


def _of_room(leaf: BoundExpr) -> bool:
    return leaf.thing in ((), ("room",))  # type: ignore[union-attr]
