"""What has to be cut, by stock: every board once, runs that stay together as one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.piece.model import Piece, Pieces, Run
from setout.resolve.model import Stock


@dataclass(frozen=True)
class Member:
    """One board of a Want: `a` and `b` are its sizes along the Want's own; `length_on_a` when `a` is its length."""

    mark: str
    a: Fraction
    b: Fraction
    length_on_a: bool
    reserved: bool


@dataclass(frozen=True)
class Want:
    """`count` times the `members` side by side along `a` (a single one for most). `a` × `b` is the rectangle they need,
    kerfs between them included. `grain` says which of the two lies along the grain: "a", "b" or None (free to turn)."""

    a: Fraction
    b: Fraction
    grain: str | None
    count: int
    members: tuple[Member, ...]


@dataclass(frozen=True)
class Demand:
    """All that one stock is cut into."""

    stock: Stock
    pieces: tuple[Piece, ...]
    runs: tuple[Run, ...]


def demands(pieces: Pieces) -> tuple[Demand, ...]:
    """By stock, in the order in which marks first ask for them. A run stands under the stock of its members."""
    of: dict[str, list[Piece]] = {}
    for piece in pieces.pieces:
        of.setdefault(piece.stock.name, []).append(piece)
    return tuple(Demand(own[0].stock, tuple(own), _of(own, pieces.runs)) for own in of.values())


def wants(demand: Demand, kerf: Fraction) -> tuple[Want, ...]:
    """Runs first; what is left of each piece then stands alone."""
    by_mark = {piece.mark: piece for piece in demand.pieces}
    whole = [_run(run, by_mark, kerf) for run in demand.runs]
    used = Counter(member.mark for run in demand.runs for member in run.members)
    single = [_single(p, p.count - used[p.mark]) for p in demand.pieces if p.count > used[p.mark]]
    return (*whole, *single)


def _of(pieces: Iterable[Piece], runs: Iterable[Run]) -> tuple[Run, ...]:
    own = {piece.mark for piece in pieces}
    return tuple(run for run in runs if run.members[0].mark in own)


def _single(piece: Piece, count: int) -> Want:
    length, width = piece.length.reserve, piece.width.reserve
    grain = {"length": "a", "width": "b"}.get(piece.grain or "")
    return Want(length, width, grain, count, (Member(piece.mark, length, width, True, bool(piece.sized_by)),))


def _run(run: Run, by_mark: Mapping[str, Piece], kerf: Fraction) -> Want:
    members, grains = [], []
    for one in run.members:
        piece, on_a = by_mark[one.mark], one.along == "length"
        sizes = piece.length.reserve, piece.width.reserve
        a, b = sizes if on_a else sizes[::-1]
        members.append(Member(one.mark, a, b, on_a, bool(piece.sized_by)))
        if piece.grain in ("length", "width"):
            grains.append("a" if (piece.grain == "length") == on_a else "b")
    a = sum((m.a for m in members), Fraction(0)) + kerf * (len(members) - 1)
    return Want(a, max(m.b for m in members), grains[0] if grains else None, 1, tuple(members))
