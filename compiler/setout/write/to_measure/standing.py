"""Where things stand that hang on a measure: boards and assemblies, each in the assembly that holds it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Face
from setout.piece.held import bends, ranges
from setout.piece.held import size as over_scenes
from setout.piece.model import Size
from setout.place.model import Board, Instance
from setout.values import Trace
from setout.write.facts import Facts
from setout.write.facts.paths import Where, fold
from setout.write.facts.sizes import Length, size


@dataclass(frozen=True)
class Stands:
    """`face` (bottom, left or front) of these is `at` away from the same face of the `holder`: their "assembly", the
    "room" or the "job"."""

    where: tuple[Where, ...]
    face: str
    holder: str
    at: Length


def standing(facts: Facts, name: str) -> tuple[Stands, ...]:
    """What moves with that measure; alike places together, in the order placed."""
    together: dict[tuple[str, str, Length], list[tuple[str, str]]] = {}
    for owner, own_name, axis, at in _moving(facts, name):
        holder = "assembly" if owner else "room" if facts.project.room else "job"
        key = (Face(axis, -1).word, holder, size(at, facts.style))
        together.setdefault(key, []).append((owner, own_name))
    return tuple(Stands(fold(places), *key) for key, places in together.items())


def _moving(facts: Facts, name: str) -> Iterator[tuple[str, str, Axis, Size]]:
    """Owner and name of a thing, an axis on which it moves with the measure, and where its low face is there."""
    placed = facts.plan.pieces.joined.placed
    over = ranges(placed)
    alone = 1 + placed.open_measures.index(name)  # the scene that has it at its high end, the others low
    for owner, own_name, seen in _things(facts):
        if any(len(one.where) < len(Axis) for one in seen):
            continue
        for axis in Axis:
            traces = [one.where[axis] for one in seen]
            amounts: list[Fraction] = [trace.amount for trace in traces]
            if min(amounts) == max(amounts):
                continue
            at = over_scenes(amounts, over, True, bends(traces[0], frozenset(over.names)))
            if amounts[alone] != amounts[0] or (at.formula is None and name in _names(traces[0])):
                yield owner, own_name, axis, at


def _names(trace: Trace) -> frozenset[str]:
    """All the names that it came about by."""
    waiting, seen, names = [trace], set(), set()
    while waiting:
        at = waiting.pop()
        if id(at) not in seen:  # branches are shared
            seen.add(id(at))
            names |= {at.text} if at.kind == "name" else set()
            waiting += at.parts
    return frozenset(names)


def _things(facts: Facts) -> Iterator[tuple[str, str, Sequence[Board | Instance]]]:
    """Owner and name of each assembly and board, with what it is in every scene."""
    scenes = facts.plan.pieces.joined.placed.scenes
    for path, instance in facts.scene.instances.items():
        if instance.parent is not None:
            own = path[len(instance.parent) + 1 :] if instance.parent else path
            yield instance.parent, own, [scene.instances[path] for scene in scenes]
    for path, board in facts.scene.boards.items():
        yield board.owner, board.name, [scene.boards[path] for scene in scenes]
