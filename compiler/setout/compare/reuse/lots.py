"""Pieces with those of their copies that are not yet accounted for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field

from setout.compare.matching import natural
from setout.compare.names import Names
from setout.compare.reuse.body import Body, body_of
from setout.piece.model import Piece
from setout.plan.model import Plan


@dataclass
class Lot:
    """A piece and those of its copies that are not yet accounted for. Copies of a loose board share their path."""

    piece: Piece
    body: Body | None
    key: str
    left: list[str] = field(default_factory=list)


def lots_of(plan: Plan, names: Names, unit: int) -> list[Lot]:
    loose = {b.path: b.count for b in plan.pieces.joined.placed.drawn.loose}
    found = []
    for piece in plan.pieces.pieces:
        body = None if piece.measures else body_of(piece.shape, names.stock(piece.stock.name), unit)
        copies = [path for path in piece.boards for _ in range(loose.get(path, 1))]
        found.append(Lot(piece, body, names.shape(piece.shape), sorted(copies, key=natural)))
    return found


def taken(old: Lot, new: Lot, count: int, to_new: Mapping[str, str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Take so many copies of both: first those that are one board in both plans."""
    wanted = Counter(new.left)
    own = []
    for path in old.left:
        target = to_new.get(path, "")
        if wanted[target] > 0:
            wanted[target] -= 1
            own.append((path, target))
    own = own[:count]
    for path, target in own:
        old.left.remove(path)
        new.left.remove(target)
    rest = count - len(own)
    pairs = [*own, *zip(old.left[:rest], new.left[:rest])]
    del old.left[:rest], new.left[:rest]
    pairs.sort(key=lambda pair: natural(pair[0]))
    return tuple(a for a, _ in pairs), tuple(b for _, b in pairs)


def shared(old: Lot, new: Lot, to_new: Mapping[str, str]) -> int:
    """How many of the copies are one board in both plans."""
    return sum((Counter(to_new.get(path, "") for path in old.left) & Counter(new.left)).values())
