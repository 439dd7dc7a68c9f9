"""Steps done in one go: the drawers of a cabinet, their fronts, doors, shelves on pins, all hardware of one thing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import chain, count
from typing import NamedTuple

from setout.piece.letters import mark_order
from setout.place.model import Scene
from setout.plan.order.book import Book
from setout.plan.order.draft import Draft, Link, Priority
from setout.plan.order.model import StepId

WIDTHS = ("kind", "opening", "single")
"""How much is done in one go: what all cabinets of a definition hold, what one opening holds, or one thing a step."""

_SAWN = ("cut", "machine")


class Group(NamedTuple):
    """Things that are made alike: `word` for them, in `owners`, who are the cabinets or the opening of `holder`."""

    word: str
    holder: str
    owners: tuple[str, ...]


def together(book: Book, named: Iterable[frozenset[StepId]], width: str) -> tuple[dict[StepId, Draft], list[Link]]:
    """The book's drafts and links with like steps made one. `named` are the steps that each name in an order line
    stands for: what a line names stays apart from what it doesn't."""
    if width == "single":
        return dict(book.drafts), list(book.links)
    return _Together(book, named, width).made()


class _Together:
    def __init__(self, book: Book, named: Iterable[frozenset[StepId]], width: str) -> None:
        self.book = book
        self.group = _groups(book.scene, width)
        self.lines: dict[StepId, list[int]] = {}
        for i, steps in enumerate(dict.fromkeys(named)):
            for step in steps:
                self.lines.setdefault(step, []).append(i)
        self.measures: dict[StepId, list[str]] = {}
        for link in book.links:
            if link.before.verb == "measure":
                self.measures.setdefault(link.after, []).append(link.before.target)
        for link in book.links:  # what is drilled in a board that waits for the tape waits with it
            if link.after.verb == "machine" and link.before.verb == "cut" and link.before in self.measures:
                own = self.measures.get(link.after, [])
                self.measures[link.after] = list(dict.fromkeys((*self.measures[link.before], *own)))

    def made(self) -> tuple[dict[StepId, Draft], list[Link]]:
        alike: dict[tuple, list[Draft]] = {}
        for ident, draft in self.book.drafts.items():
            alike.setdefault(self._key(ident, draft), []).append(draft)
        drafts: dict[StepId, Draft] = {}
        now: dict[StepId, StepId] = {}
        for (first, *_), some in alike.items():
            one = self._one(first, some, drafts)
            drafts[one.id] = one
            now.update((d.id, one.id) for d in some)
        links = [replace(x, before=now[x.before], after=now[x.after]) for x in self.book.links]
        return drafts, list({(x.before, x.after, x.kind): x for x in reversed(links)}.values())[::-1]

    def _key(self, ident: StepId, draft: Draft) -> tuple:
        """What is alike in this goes together."""
        alike = self._group(ident, draft) or self._same(ident, draft)
        return alike, (ident.verb, *self.lines.get(ident, ())), tuple(self.measures.get(ident, ()))

    def _same(self, ident: StepId, draft: Draft) -> object:
        """Hardware goes onto one thing in one go, boards of one mark that wait for the tape are sawn in one, and what
        one line of the spec joins to its neighbours is fastened in one."""
        if ident.verb == "fit":
            return draft.things
        if ident.verb in _SAWN and ident in self.measures:
            return tuple(mark for mark, _ in draft.marks)
        return draft.span if ident.verb == "fasten" else ident

    def _group(self, ident: StepId, draft: Draft) -> Group | None:
        boxes = self.book.drawer_of if ident.verb in _SAWN else {}  # a drawer's front is sawn with its box
        found = {self.group.get(boxes.get(thing, thing)) for thing in draft.things}
        return next(iter(found)) if len(found) == 1 else None

    def _one(self, first: object, some: Sequence[Draft], given: Collection[StepId]) -> Draft:
        group = first if isinstance(first, Group) else None
        priority = max(self._turn(d) if group else d.priority for d in some)
        things = tuple(dict.fromkeys(t for d in some for t in d.things))
        if len(some) == 1 and (group is None or len(self._boxes(things)) == 1):
            return replace(some[0], priority=priority)
        owners = {d.owner for d in some}
        sawn = group is None and some[0].id.verb in _SAWN
        each = tuple(dict.fromkeys(d.id.target for d in some)) if sawn else things
        marks: Counter[str] = Counter()
        for draft in some:
            marks.update(dict(draft.marks))
        names = _names(some, group, things)
        return replace(
            some[0],
            id=next(i for name in names if (i := StepId(some[0].id.verb, name)) not in given),
            owner=owners.pop() if len(owners) == 1 else group.owners[0] if group and len(group.owners) == 1 else "",
            priority=priority,
            boards=frozenset().union(*(d.boards for d in some)),
            within=tuple(dict.fromkeys(i for d in some for i in d.within)),
            marks=tuple(sorted(marks.items(), key=lambda entry: mark_order(entry[0]))),
            joints=tuple(dict.fromkeys(j for d in some for j in d.joints)),
            fittings=tuple(f for d in some for f in d.fittings),
            wait=max(d.wait for d in some),
            about=things,
            each=each if len(each) > 1 and len(some) > 1 else (),
        )

    def _turn(self, draft: Draft) -> Priority:
        """When all the cabinets stand that the group goes into; their openings can be measured then."""
        if draft.id.verb not in _SAWN:
            return draft.priority
        return max(self.book.bench(thing, draft.priority.phase) for thing in self._boxes(draft.things))

    def _boxes(self, things: Sequence[str]) -> Sequence[str]:
        """Without the fronts of drawers, where the drawers are among them."""
        return [t for t in things if t not in self.book.drawer_of] or things


def _names(some: Sequence[Draft], group: Group | None, things: Sequence[str]) -> Iterator[str]:
    base = things[0] if some[0].id.verb == "fit" else some[0].id.target
    if group is not None:
        owners = dict.fromkeys(o for o in group.owners if any(t.startswith(f"{o}.") or not o for t in things))
        holder = next(iter(owners)) if len(owners) == 1 else group.holder
        base = f"{holder}.{group.word}" if holder else group.word
    if some[0].id.verb == "fit":
        kinds = {d.id.target.rpartition(".")[2] for d in some}
        base = ".".join(filter(None, (base, *kinds))) if len(kinds) == 1 else base
    return chain((base,), (f"{base} {i}" for i in count(2)))


def _groups(scene: Scene, width: str) -> dict[str, Group]:
    """The group of each thing that has one."""
    found: list[tuple[str, str, str, Iterable[str]]] = []
    for bank in scene.banks:
        found.append(("drawers", bank.path, bank.owner, [d.path for d in bank.drawers]))
        found.append(("fronts", bank.path, bank.owner, [f"{d.path}.front_panel" for d in bank.drawers]))
    found.extend(("doors", door.path, door.owner, door.boards) for door in scene.doors)
    found.extend(("shelves", bay.path, bay.owner, bay.boards) for bay in scene.shelves if bay.pins)
    owners: dict[tuple[str, str], dict[str, None]] = {}

    def holder(path: str, owner: str) -> str:
        return path if width == "opening" else scene.instances[owner].definition if owner else ""

    for word, path, owner, _ in found:
        owners.setdefault((word, holder(path, owner)), {})[path if width == "opening" else owner] = None
    groups = {key: Group(*key, tuple(some)) for key, some in owners.items()}
    return {thing: groups[word, holder(path, owner)] for word, path, owner, things in found for thing in things}
