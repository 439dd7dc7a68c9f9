"""The steps that the structure of the job asks for, and what must come before what.

Kinds of reasons, the keys of their wording (a step waits for the one named):

    measure-first     a board's size hangs on a measure: its cutting waits for the measuring
    measure-holes     its size is known, but not all that is drilled and milled in it
    measure-inside    where a board goes in its assembly hangs on the measure
    measure-place     where a thing goes hangs on it
    cut-first         machining, putting together or putting in place waits for the sawing
    machine-first     putting together or in place waits for the pockets, housings and holes
    inner-first       an assembly waits for one that goes into it
    assemble-first    curing, fitting or putting in place waits for putting together
    glue-cures        what handles an assembly waits until its glue has cured
    fit-before-hang   hardware goes on at the bench, before hanging (a habit: an order line may say otherwise)
    fit-before-set    the same, before setting in place
    stands-on         what carries stands before what it carries
    set-first         two are fastened to each other, or one to the room, when they are in place
    runs-in           a drawer runs in when its case stands
    goes-on-last      a drawer's front, a door, a shelf on pins: when what holds it stands
                      (all of these between single things; together.py then makes like steps one)
    declared          a line of the spec's `order` says so
"""

from __future__ import annotations

from setout.piece.model import Pieces
from setout.plan.order import bench, placing
from setout.plan.order.batches import Batches
from setout.plan.order.book import Book
from setout.plan.order.things import Things


def structure(pieces: Pieces, things: Things, batches: Batches) -> Book:
    """All steps but the builder's own, with the links that follow from how the job is made."""
    book = Book(pieces, things)
    bench.measure(book)
    bench.cut_and_machine(book, batches)
    bench.assemble(book)
    placing.put(book)
    placing.fasten(book)
    bench.fit(book)
    return book
