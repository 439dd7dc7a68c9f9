"""The fates of all old pieces."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from functools import cache

from setout.compare.model import Fate, Reuse, ToCut
from setout.compare.reuse.assigning import Edge, assign
from setout.compare.reuse.body import unit_of
from setout.compare.reuse.fitting import Fit, fit
from setout.compare.reuse.losing import at_home, losses, lost
from setout.compare.reuse.lots import Lot, lots_of, shared, taken
from setout.compare.reuse.way import face_words, way
from setout.plan.model import Plan

_OWN = 0.5  # a board is rather made what its own place wants


def reuse(
    old: Plan, new: Plan, stocks: tuple[Mapping[str, str], Mapping[str, str]], to_new: Mapping[str, str]
) -> Reuse:
    """The least loss over the whole job. `stocks`: names that stocks are compared under; `to_new`: boards' paths."""
    unit = unit_of(piece.shape for plan in (old, new) for piece in plan.pieces.pieces)
    before, after = (lots_of(plan, names, unit) for plan, names in zip((old, new), stocks))
    fates = [_uncut(lot) for lot in before if lot.body is None]
    fates += _right(before, after, to_new)
    fates += _reworked(old, new, before, after, to_new, unit)
    fates += lost(before, after, to_new)
    marks = {lot.piece.mark: n for n, lot in enumerate(before)}
    order = ("right", "reworked", "serves", "lost", "uncut")
    fates.sort(key=lambda f: (order.index(f.kind), marks[f.old]))
    return Reuse(tuple(fates), tuple(_to_cut(lot) for lot in after if lot.left), losses(before, fates))


def _to_cut(lot: Lot) -> ToCut:
    piece = lot.piece
    return ToCut(piece.mark, len(lot.left), tuple(lot.left), piece.stock.title or piece.stock.name, lot.body is None)


def _uncut(lot: Lot) -> Fate:
    boards, lot.left = tuple(lot.left), []
    return Fate("uncut", lot.piece.mark, None, len(boards), boards, ())


def _right(before: Sequence[Lot], after: Sequence[Lot], to_new: Mapping[str, str]) -> Iterator[Fate]:
    """The same piece is still wanted: nothing can be gained by making it anything else."""
    wanted = {lot.key: lot for lot in after if lot.body is not None}
    for lot in before:
        other = wanted.get(lot.key) if lot.body is not None else None
        count = min(len(lot.left), len(other.left)) if other else 0
        if other and count:
            boards, becomes = taken(lot, other, count, to_new)
            yield Fate("right", lot.piece.mark, other.piece.mark, count, boards, becomes)


# --- what must be worked on ------------------------------------------------------------------------------


def _reworked(
    old: Plan, new: Plan, before: Sequence[Lot], after: Sequence[Lot], to_new: Mapping[str, str], unit: int
) -> Iterator[Fate]:
    from_, to = [lot for lot in before if lot.left], [lot for lot in after if lot.left and lot.body is not None]
    of_board = {path: lot for lot in after for path in lot.piece.boards}
    kerf = min((saw.kerf for saw in new.pieces.joined.placed.project.saws), default=Fraction(0))
    was, now = cache(lambda i: face_words(old, from_[i].piece)), cache(lambda j: face_words(new, to[j].piece))
    fits = dict(_fits(from_, to))
    edges = list(_edges(from_, to, fits, to_new, unit))
    flows = assign([len(lot.left) for lot in from_], [len(lot.left) for lot in to], edges)
    total: Counter[tuple[int, int]] = Counter()
    for edge, flow in zip(edges, flows):
        total[edge.old, edge.new] += flow
    for (i, j), count in sorted(total.items()):
        if count:
            own = min(count, shared(from_[i], to[j], to_new))
            how = way(fits[i, j], was(i), now(j), kerf, unit)
            marks = from_[i].piece.mark, to[j].piece.mark
            for kind, some in (("reworked", own), ("serves", count - own)):
                if some:
                    boards, becomes = taken(from_[i], to[j], some, to_new)
                    why, blocked = at_home(from_[i], boards, of_board, to_new) if kind == "serves" else ("", ())
                    yield Fate(kind, *marks, some, boards, becomes, how, why, blocked)


def _fits(from_: Sequence[Lot], to: Sequence[Lot]) -> Iterator[tuple[tuple[int, int], Fit]]:
    for i, one in enumerate(from_):
        for j, other in enumerate(to):
            found = fit(one.body, other.body) if one.body and other.body else None
            if found is not None:
                yield (i, j), found


def _edges(
    from_: Sequence[Lot], to: Sequence[Lot], fits: Mapping[tuple[int, int], Fit], to_new: Mapping[str, str], unit: int
) -> Iterator[Edge]:
    for (i, j), found in fits.items():
        body = to[j].body
        assert body is not None
        saves = float(Fraction(body.volume, unit**3))
        most = min(len(from_[i].left), len(to[j].left))
        own = shared(from_[i], to[j], to_new)
        if own:
            yield Edge(i, j, saves, found.effort, own)
        if most > own:
            yield Edge(i, j, saves, found.effort + _OWN, most - own)


