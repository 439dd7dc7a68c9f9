"""Steps at the bench: measure, cut, machine, assemble, cure, fit."""

from __future__ import annotations

from collections.abc import Iterable

from setout.place.model import Fitting
from setout.plan.order.batches import Batch, Batches
from setout.plan.order.book import Book, waiting_for
from setout.plan.order.draft import Draft, Priority
from setout.plan.order.gluing import in_order, is_glued
from setout.plan.order.model import StepId
from setout.plan.order.things import Thing

CUT, MACHINE, ASSEMBLE, CURE, FIT = range(5)


def measure(book: Book) -> None:
    for name in book.placed.open_measures:
        span = book.placed.project.measures[name].span
        book.add(Draft(StepId("measure", name), "", Priority(0), frozenset(), (), span))


def cut_and_machine(book: Book, batches: Batches) -> None:
    """Boards of held sizes are cut after the measuring; what has holes, housings or cut-outs is machined after the
    sawing, and where only those hang on a measure it is this that waits for it."""
    for batch in batches.cut:
        cut = _of_batch(book, "cut", batch, batch.boards, CUT)
        book.measured(batch.measures, cut, "measure-first", book.span(batch.boards[0]))
    for batch in batches.machined:
        machined = [p for p in batch.boards if _is_machined(book, p)]
        if machined:
            cuts, span = dict.fromkeys(book.prepared[p] for p in machined), book.span(machined[0])
            machine = _of_batch(book, "machine", batch, machined, MACHINE)
            for cut in cuts:
                book.link(cut, machine, "cut-first", span)
            book.measured(batch.measures, machine, "measure-holes", span)


def assemble(book: Book) -> None:
    """One step for each assembly in place, and one to let its glue cure."""
    for thing in book.things.by_path.values():
        if thing.is_assembled:
            _assemble(book, thing)


def fit(book: Book) -> None:
    """One step for all hardware of a kind on one thing."""
    groups: dict[tuple[str, str], list[Fitting]] = {}
    for fitting in book.scene.fittings:
        if fitting.board in book.things.of_board:  # its board may have been left out for a mistake
            groups.setdefault((book.things.of_board[fitting.board], fitting.hardware.name), []).append(fitting)
    for (path, name), fittings in groups.items():
        ident = StepId("fit", f"{path}.{name}" if path else name)
        thing, span = book.things.by_path[path], fittings[0].span
        boards = frozenset(f.board for f in fittings)
        ids = tuple(f.id for f in fittings)
        owner, priority = book.owner(path), book.bench(path, FIT)
        book.add(Draft(ident, owner, priority, boards, thing.within, span, fittings=ids, about=(path,)))
        book.wait_for(path, ident, span)
        put = book.put_step(book.things.unit_of[path])
        book.link(ident, put, f"fit-before-{put.verb}", span)


def _of_batch(book: Book, verb: str, batch: Batch, boards: Iterable[str], phase: int) -> StepId:
    boards = tuple(boards)
    things = list(dict.fromkeys(book.things.of_board[p] for p in boards))
    within = tuple(dict.fromkeys(i for t in things for i in book.things.by_path[t].within))
    owner = book.owner(things[0]) if len(things) == 1 else ""
    priority = min(book.bench(t, phase) for t in things)
    ident = StepId(verb, batch.name)
    span = book.span(boards[0])
    marks, about = book.marks(boards), tuple(things)
    book.add(Draft(ident, owner, priority, frozenset(boards), within, span, marks=marks, about=about))
    book.prepared.update(dict.fromkeys(boards, ident))
    return ident


def _assemble(book: Book, thing: Thing) -> None:
    parts = (*thing.boards, *thing.loose)
    boards, owner, span = book.boards_in(thing), book.owner(thing.path), book.span_of_thing(thing)
    joints = in_order(thing.joints, book.joints, book.contacts, book.scene)
    made = StepId("assemble", thing.path)
    priority = book.bench(thing.path, ASSEMBLE)
    marks = book.marks(parts)
    book.add(Draft(made, owner, priority, frozenset(boards), thing.within, span, marks=marks, joints=joints))
    for path in parts:
        book.link(book.prepared[path], made, waiting_for(book.prepared[path]), book.span(path))
    book.measured(book.moving.inside(boards), made, "measure-inside", span)
    for inner in thing.inner:
        book.wait_for(inner, made, span, {"assemble-first": "inner-first"})
    book.finished[thing.path] = made, "assemble-first"
    glued = next((book.joints[j] for j in joints if is_glued(book.joints[j])), None)
    if glued:
        cure = StepId("cure", thing.path)
        priority = book.bench(thing.path, CURE)
        book.add(Draft(cure, owner, priority, frozenset(boards), thing.within, glued.span, wait=book.cure_hours))
        book.link(made, cure, "assemble-first", glued.span)
        book.finished[thing.path] = cure, "glue-cures"


def _is_machined(book: Book, path: str) -> bool:
    made = book.joined.boards.get(path)
    return made is not None and bool(made.bores or made.cuts or made.features)
