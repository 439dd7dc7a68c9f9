"""Steps where it will stand: set or hang, and fasten."""

from __future__ import annotations

from fractions import Fraction

from setout.plan.order.book import Book
from setout.plan.order.draft import Draft
from setout.plan.order.gluing import in_order, is_glued
from setout.plan.order.model import StepId
from setout.plan.order.support import supports
from setout.plan.order.things import Thing

PUT, FASTEN = range(2)


def put(book: Book) -> None:
    """Units are put in place one by one, what carries before what it carries."""
    units = [t for t in book.things.units if book.boards_in(t)]
    for thing in units:
        _put(book, thing)
    for lower, upper, span in supports(book.scene, book.things):
        book.link(book.put_step(lower), book.put_step(upper), "stands-on", span)


def fasten(book: Book) -> None:
    """What is left to fasten once it is in place; what hangs on the wall is screwed to it in the hanging."""
    for thing in book.things.units:
        if not thing.apart and any(_left(book, thing, other) for _, other in thing.fastened):
            _fasten(book, thing)


def _put(book: Book, thing: Thing) -> None:
    ident, span = book.put_step(thing.path), book.span_of_thing(thing)
    priority = book.placing(thing.path, PUT)
    marks = () if thing.is_assembled else book.marks(thing.boards)
    joints = thing.wall if thing.hung else ()
    joints = tuple(dict.fromkeys(j for j, _ in thing.fastened)) if thing.apart else joints
    boards, owner = book.boards_in(thing), book.owner(thing.path)
    book.add(Draft(ident, owner, priority, frozenset(boards), thing.within, span, marks=marks, joints=joints))
    book.measured(book.moving.placing(boards, _holder(book, thing)), ident, "measure-place", span)
    book.wait_for(thing.path, ident, span)
    if thing.apart:
        _goes_in_last(book, thing, ident)
        return
    for outer in thing.within[1:2]:
        book.wait_for(outer, ident, span)
    sides = [book.things.of_board[side] for side in book.sides_of.get(thing.path, ()) if side in book.things.of_board]
    for unit in dict.fromkeys(book.things.unit_of[side] for side in sides):
        book.link(book.put_step(unit), ident, "runs-in", span)


def _holder(book: Book, thing: Thing) -> str | None:
    """A board of what a drawer, a front, a door or a shelf goes into, which stands by then: its place is in there."""
    held_by = thing.within[:1] if thing.apart else book.sides_of.get(thing.path, ())[:1]
    unit = next((book.things.unit_of.get(book.things.of_board.get(one, one)) for one in held_by), None)
    return next(iter(book.boards_in(book.things.by_path[unit])), None) if unit is not None else None


def _goes_in_last(book: Book, thing: Thing, ident: StepId) -> None:
    """A front goes on its box when that runs, a door on its case when that stands."""
    for outer in thing.within[:1]:
        unit = book.things.unit_of.get(outer)
        if unit is not None:
            book.link(book.put_step(unit), ident, "goes-on-last", book.span_of_thing(thing))


def _left(book: Book, thing: Thing, other: str | None) -> bool:
    """Whether that joint is left to be made once both stand."""
    if other is not None:
        return not book.things.by_path[other].apart
    return not thing.hung


def _fasten(book: Book, thing: Thing) -> None:
    fastened = [(j, other) for j, other in thing.fastened if _left(book, thing, other)]
    units = dict.fromkeys((thing.path, *(other for _, other in fastened if other is not None)))
    joints = in_order(dict.fromkeys(j for j, _ in fastened), book.joints, book.contacts, book.scene)
    ident, span = StepId("fasten", thing.path), book.joints[joints[0]].span
    priority = max(book.placing(unit, FASTEN) for unit in units)
    wait = book.cure_hours if any(is_glued(book.joints[j]) for j in joints) else Fraction(0)
    boards, owner = frozenset(book.boards_in(thing)), book.owner(thing.path)
    book.add(Draft(ident, owner, priority, boards, thing.within, span, joints=joints, wait=wait))
    for unit in units:
        book.link(book.put_step(unit), ident, "set-first", span)
