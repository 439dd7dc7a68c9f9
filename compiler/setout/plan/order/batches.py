"""Boards cut and machined in one go: all of an assembly's definition, however often it is placed, in one setting."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from itertools import chain, count

from setout.piece.model import Pieces
from setout.place.model import Board, LooseBoard

_MEMBER = re.compile(r"(\.\d+)+$")


@dataclass(frozen=True)
class Batch:
    """`name` is what its steps are called: a definition, an instance, a part or a board; "" for the job's own boards.
    `measures` must be taken first."""

    name: str
    boards: tuple[str, ...]
    measures: tuple[str, ...]


@dataclass(frozen=True)
class Batches:
    """All boards, loose ones too, in both. To be drilled, each is apart also from those it is cut with if its holes
    hang on a measure and theirs don't."""

    cut: tuple[Batch, ...]
    machined: tuple[Batch, ...]


def batches(pieces: Pieces, singled: Iterable[frozenset[str]]) -> Batches:
    """What waits for a measure stands apart from the rest, each part by itself; `singled` are sets of boards that an
    order line names, which then must not share a batch with boards that it doesn't name."""
    lines = tuple(singled)
    sized = {path: (piece.sized_by,) for piece in pieces.pieces for path in piece.boards}
    worked = {path: (piece.worked_by, piece.sized_by) for piece in pieces.pieces for path in piece.boards}
    return Batches(_batches(pieces, lines, sized), _batches(pieces, lines, worked))


def _batches(
    pieces: Pieces, singled: Iterable[frozenset[str]], waits: Mapping[str, tuple[tuple[str, ...], ...]]
) -> tuple[Batch, ...]:
    """`waits`: by board, the measures to take first, and others by which boards are told apart."""
    scene = pieces.joined.drawn.scene
    parts: dict[str, Board | LooseBoard] = {**scene.boards, **{b.path: b for b in scene.loose}}
    home = {path: scene.instances[part.owner].definition if part.owner else "" for path, part in parts.items()}
    lines: dict[str, list[int]] = {path: [] for path in parts}
    for i, boards in enumerate(dict.fromkeys(singled)):
        for path in boards:
            lines[path].append(i)
    groups: dict[tuple, list[str]] = {}
    for path, part in parts.items():
        held = waits[path]
        key = (home[path], held, part.definition if any(held) else "", *lines[path])
        groups.setdefault(key, []).append(path)
    names: dict[tuple, str] = {}
    for key in sorted(groups, key=len):  # what no order line names comes first, and takes the plain name
        names[key] = _unused(_name(groups[key], parts, home), groups[key], names.values())
    return tuple(Batch(names[key], tuple(boards), key[1][0]) for key, boards in groups.items())


def _name(boards: list[str], parts: Mapping[str, Board | LooseBoard], home: Mapping[str, str]) -> str:
    first = parts[boards[0]]
    siblings = [p for p in parts if home[p] == home[boards[0]]]
    owners = {parts[p].owner for p in boards}
    several = home[boards[0]] == "" or len({parts[p].definition for p in siblings}) > 1
    if several and len({parts[p].definition for p in boards}) == 1:
        alike = [p for p in siblings if parts[p].definition == first.definition]
        if len(boards) < len(alike):
            return boards[0]
        return _MEMBER.sub("", first.path) if len(owners) == 1 else first.definition
    return first.owner if len(owners) == 1 else home[boards[0]]


def _unused(name: str, boards: list[str], given: Collection[str]) -> str:
    return next(n for n in chain((name, boards[0]), (f"{name} {i}" for i in count(2))) if n not in given)
