"""What an order line names: paths, definitions and hardware, looked up among the boards and among the steps."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property

from setout.piece.model import Pieces
from setout.place.model import Board, Instance, LooseBoard
from setout.plan.order.draft import Draft
from setout.plan.order.model import StepId
from setout.plan.order.things import Things
from setout.read.model import StepRef

PROJECT = "project"
"""The word for the whole job."""
SAME = {"set": ("set", "hang"), "hang": ("set", "hang")}
_MEMBER = re.compile(r"(\.\d+)+$")


class Names:
    """Looks names up. A scope is the path of the instance in whose definition a line stands, "" for the job's lines."""

    def __init__(self, pieces: Pieces, things: Things) -> None:
        self.scene = pieces.joined.drawn.scene
        self.things = things
        self.project = pieces.joined.placed.project
        self.loose = {b.path: b for b in self.scene.loose}

    def boards(self, text: str, scope: str) -> frozenset[str]:
        """The boards that a path stands for, and those of the assemblies that it stands for."""
        found: list[str] = []
        for path in self.paths(text, scope):
            found.extend(self._below.get(path, (path,)))
        return frozenset(found)

    def paths(self, text: str, scope: str) -> tuple[str, ...]:
        """Instances and boards of that name: by their path in the scope, else by definition, else by a path's end."""
        if text == PROJECT:
            return ("",)
        full = f"{scope}.{text}" if scope else text
        for index, key in ((self._by_path, full), (self._by_definition, text), (self._by_ending, text)):
            found = [p for p in index.get(key, ()) if not scope or p == scope or p.startswith(f"{scope}.")]
            if found:
                return tuple(dict.fromkeys(found))
        return self._of_class(text, scope)

    def _of_class(self, text: str, scope: str) -> tuple[str, ...]:
        """`drawers` in the scope, `left_base.drawers`, or those in one opening, `left_base.bay.drawers`."""
        where, _, word = text.rpartition(".")
        some = [p for p in self._classes.get(word, ()) if not scope or p.startswith(f"{scope}.")]
        if not where or not some:
            return tuple(some)
        full = f"{scope}.{where}" if scope else where
        holders = self.paths(where, scope) or (full,)
        return tuple(p for p in some if any(p.startswith(f"{holder}.") for holder in holders))

    def steps(self, ref: StepRef, scope: str, drafts: Mapping[StepId, Draft]) -> tuple[StepId, ...]:
        """The steps a reference stands for, within the scope."""
        if ref.text is not None:
            return tuple(i for i, d in drafts.items() if d.text == ref.text.value and _inside(d, scope))
        assert ref.verb is not None and ref.target is not None
        verbs = SAME.get(ref.verb.text, (ref.verb.text,))
        text = ref.target.text
        if ref.verb.text == "measure":
            return tuple(i for i in (StepId("measure", text),) if i in drafts)
        ours = {i: d for i, d in drafts.items() if i.verb in verbs and _inside(d, scope)}
        if text == PROJECT:
            return tuple(ours)
        if verbs == ("fit",):
            return self._fits(text, scope, ours)
        if verbs in (("cut",), ("machine",)):
            boards = self.boards(text, scope)
            return tuple(i for i, d in ours.items() if d.boards & boards)
        return self._of_things(self.paths(text, scope), ours)

    def is_known(self, ref: StepRef, scope: str) -> bool:
        """Whether the name stands for something in the job, though there may be no such step for it."""
        return ref.target is not None and bool(self.paths(ref.target.text, scope))

    def is_absent(self, ref: StepRef) -> bool:
        """Whether the name is right but asks for nothing this time: a measure that was taken, a thing that a `when`
        leaves out, or one that could not be placed, which has been reported."""
        if ref.target is None or ref.verb is None:
            return False
        if ref.verb.text == "measure":
            return ref.target.text in self.project.measures
        return _MEMBER.sub("", ref.target.text).rpartition(".")[2] in self._defined

    def _of_things(self, paths: Iterable[str], ours: Mapping[StepId, Draft]) -> tuple[StepId, ...]:
        found: dict[StepId, None] = {}
        for path in paths:
            thing = self.things.of_board.get(path, path) if path not in self.scene.instances else path
            owned = path in self.scene.boards and self.scene.boards[path].owner
            if path in self.loose or (owned and path not in self.things.by_path):
                continue
            own = [i for i, d in ours.items() if thing in d.things]
            found.update(dict.fromkeys(own or [i for i, d in ours.items() if path in d.within]))
        return tuple(found)

    def _fits(self, text: str, scope: str, ours: Mapping[StepId, Draft]) -> tuple[StepId, ...]:
        """`foot` or `feet_of.foot`, also in the plural; or all that is fitted to a thing or a board."""
        where, _, name = text.rpartition(".")
        boards = self.boards(where, scope) if where else None
        named = [i for i in ours if i.target.rpartition(".")[2] in (name, name.removesuffix("s"))]
        found = tuple(i for i in named if boards is None or ours[i].boards & boards)
        if found:
            return found
        if name == "slides":
            fits = {i: d for i, d in ours.items() if self._slides & {*d.fittings}}
            return tuple(i for i, d in fits.items() if boards is None or d.boards & boards)
        boards = self.boards(text, scope)
        return tuple(i for i, d in ours.items() if d.boards & boards)

    @cached_property
    def _classes(self) -> dict[str, tuple[str, ...]]:
        """Words for all things of a kind."""
        drawers = [d.path for bank in self.scene.banks for d in bank.drawers]
        boards = self.scene.boards
        return {
            "drawers": tuple(d for d in drawers if d in self.things.by_path),
            "fronts": tuple(p for d in drawers if (p := f"{d}.front_panel") in boards),
            "doors": tuple(path for door in self.scene.doors for path in door.boards),
            "shelves": tuple(path for bay in self.scene.shelves if bay.pins for path in bay.boards),
        }

    @cached_property
    def _slides(self) -> set[str]:
        return {f.id for f in self.scene.fittings if f.hardware.slide is not None}

    @cached_property
    def _parts(self) -> dict[str, Instance | Board | LooseBoard]:
        """Instances and boards by path, the job itself left out."""
        every: dict[str, Instance | Board | LooseBoard] = {**self.scene.instances, **self.scene.boards, **self.loose}
        return {path: part for path, part in every.items() if path}

    @cached_property
    def _by_path(self) -> dict[str, list[str]]:
        """Under its path, and under that of the repeat it is a member of."""
        return _indexed((key, p) for p in self._parts for key in (p, _MEMBER.sub("", p)))

    @cached_property
    def _by_definition(self) -> dict[str, list[str]]:
        return _indexed((part.definition, p) for p, part in self._parts.items())

    @cached_property
    def _by_ending(self) -> dict[str, list[str]]:
        """Under every path that leaves out the outermost assemblies."""
        return _indexed((end, p) for p in self._parts for key in (p, _MEMBER.sub("", p)) for end in _endings(key))

    @cached_property
    def _defined(self) -> set[str]:
        """The names of all parts, places, assemblies and hardware of the spec, whether they came to be or not."""
        bodies = [self.project.job, *(a.body for a in self.project.assemblies.values())]
        parts = {part.name for body in bodies for part in body.parts}
        places = {place.name for body in bodies for place in body.places}
        return parts | places | set(self.project.assemblies) | {f.hardware for body in bodies for f in body.fits}

    @cached_property
    def _below(self) -> dict[str, list[str]]:
        """All boards in each instance, nested ones too; "" is the job."""
        below: dict[str, list[str]] = {}
        boards: dict[str, Board | LooseBoard] = {**self.scene.boards, **self.loose}
        for path, part in boards.items():
            at: str | None = part.owner
            while at is not None:
                below.setdefault(at, []).append(path)
                at = self.scene.instances[at].parent if at else None
        return below


def _indexed(entries: Iterable[tuple[str, str]]) -> dict[str, list[str]]:
    index: dict[str, list[str]] = {}
    for key, path in entries:
        index.setdefault(key, []).append(path)
    return index


def _endings(path: str) -> Iterator[str]:
    while "." in path:
        path = path.partition(".")[2]
        yield path


def _inside(draft: Draft, scope: str) -> bool:
    return not scope or scope in draft.within or draft.id.verb == "measure"
