"""The steps and links as they are written down, and what is looked up meanwhile."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from setout.join.model import Contact
from setout.piece.letters import mark_order
from setout.piece.model import Pieces
from setout.plan.order.draft import Draft, Link, Priority
from setout.plan.order.model import StepId
from setout.plan.order.moving import Moving
from setout.plan.order.things import Thing, Things
from setout.source import Span


class Book:
    """`prepared` gives each board the last step of its own, `finished` each assembled thing the step after which it is
    whole and the kind of waiting for it."""

    def __init__(self, pieces: Pieces, things: Things) -> None:
        self.pieces = pieces
        self.things = things
        self.placed = pieces.joined.placed
        self.joined = pieces.joined.drawn
        self.scene = self.joined.scene
        self.cure_hours = self.placed.project.practice.value("glue_cure_hours")
        self.joints = {j.id: j for j in self.scene.joints}
        self.contacts: dict[str, list[Contact]] = {}
        for contact in self.joined.contacts:
            self.contacts.setdefault(contact.joint, []).append(contact)
        self.moving = Moving(pieces.joined)
        self.sides_of = {d.path: bank.sides for bank in self.scene.banks for d in bank.drawers}
        self.drawer_of = {f"{d.path}.front_panel": d.path for bank in self.scene.banks for d in bank.drawers}
        self.drafts: dict[StepId, Draft] = {}
        self.links: list[Link] = []
        self.prepared: dict[str, StepId] = {}
        self.finished: dict[str, tuple[StepId, str]] = {}
        self._loose = {b.path: b for b in self.scene.loose}
        self._thing_at = {path: i for i, path in enumerate(things.by_path)}
        self._unit_at = {t.path: i for i, t in enumerate(things.units)}

    def add(self, draft: Draft) -> StepId:
        self.drafts[draft.id] = draft
        return draft.id

    def link(self, before: StepId, after: StepId, kind: str, span: Span | None) -> None:
        self.links.append(Link(before, after, kind, span))

    def measured(self, measures: Iterable[str], after: StepId, kind: str, span: Span | None) -> None:
        for name in measures:
            self.link(StepId("measure", name), after, kind, span)

    def wait_for(self, thing: str, after: StepId, span: Span | None, renamed: dict[str, str] | None = None) -> None:
        """`after` waits until a thing is whole; `renamed` gives kinds of waiting another name."""
        for step, kind in self._finish(thing):
            self.link(step, after, (renamed or {}).get(kind, kind), span)

    def bench(self, thing: str, phase: int) -> Priority:
        return Priority(1, self._unit_at[self.things.unit_of[thing]], self._thing_at[thing], phase)

    def placing(self, unit: str, phase: int) -> Priority:
        return Priority(2, self._unit_at[unit], 0, phase)

    def put_step(self, unit: str) -> StepId:
        return StepId("hang" if self.things.by_path[unit].hung else "set", unit)

    def owner(self, thing: str) -> str:
        return thing if thing in self.scene.instances else ""

    def boards_in(self, thing: Thing) -> tuple[str, ...]:
        """All placed boards of a thing and of what is joined into it."""
        found: list[str] = []
        waiting = [thing]
        while waiting:
            one = waiting.pop()
            found.extend(one.boards)
            waiting.extend(self.things.by_path[path] for path in one.inner)
        return tuple(found)

    def marks(self, boards: Iterable[str]) -> tuple[tuple[str, int], ...]:
        counts: Counter[str] = Counter()
        for path in boards:
            loose = self._loose.get(path)
            counts[self.pieces.mark_of[path]] += loose.count if loose else 1
        return tuple(sorted(counts.items(), key=lambda entry: mark_order(entry[0])))

    def span(self, board: str) -> Span:
        return self.scene.boards[board].head if board in self.scene.boards else self._loose[board].span

    def span_of_thing(self, thing: Thing) -> Span:
        if thing.path and thing.path in self.scene.instances:
            return self.scene.instances[thing.path].span
        return self.span((*thing.boards, *thing.loose)[0])

    def _finish(self, path: str) -> Iterator[tuple[StepId, str]]:
        if path in self.finished:
            yield self.finished[path]
        elif path in self.things.by_path:
            thing = self.things.by_path[path]
            for step in dict.fromkeys(self.prepared[p] for p in (*thing.boards, *thing.loose)):
                yield step, waiting_for(step)
            for inner in thing.inner:
                yield from self._finish(inner)


def waiting_for(step: StepId) -> str:
    """The kind of reason for which one waits for a board's cutting or machining."""
    return f"{step.verb}-first"
