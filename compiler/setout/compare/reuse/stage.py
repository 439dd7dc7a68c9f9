"""The fates of all old pieces."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from functools import cache
from math import ceil, lcm

from setout.compare.matching import natural
from setout.compare.model import Fate, Reuse, ToCut
from setout.compare.names import Names
from setout.compare.reuse.assigning import assign
from setout.compare.reuse.body import unit_of
from setout.compare.reuse.hinting import hinted
from setout.compare.reuse.losing import at_home, losses, lost
from setout.compare.reuse.lots import Lot, lots_of, shared, taken
from setout.compare.reuse.settling import settled
from setout.compare.reuse.trials import Pair, Trials, own_pairs
from setout.compare.reuse.way import face_words, way
from setout.plan.model import Plan

_MOST = 50_000_000  # pairs of things done to boards that are held against each other: a good ten seconds


def reuse(old: Plan, new: Plan, names: tuple[Names, Names], to_new: Mapping[str, str]) -> Reuse:
    """The least loss over the whole job. `to_new`: boards' paths."""
    unit = unit_of(piece.shape for plan in (old, new) for piece in plan.pieces.pieces)
    unit = lcm(unit, new.pieces.joined.placed.project.mark.denominator)
    before, after = (lots_of(plan, called, unit) for plan, called in zip((old, new), names))
    of_board = tuple({path: lot for lot in lots for path in lot.piece.boards} for lots in (before, after))
    fates = [_uncut(lot) for lot in before if lot.body is None]
    found = [*_right(before, after, to_new)]
    narrowed = _work(before, after) > _MOST
    found += _reworked(old, new, before, after, of_board[1], to_new, unit, narrowed)
    fates += _together(found)
    fates += (hinted(fate, old, new, of_board, to_new) for fate in lost(before, of_board[1], to_new))
    marks = {lot.piece.mark: n for n, lot in enumerate(before)}
    order = ("right", "reworked", "serves", "lost", "uncut")
    fates.sort(key=lambda f: (order.index(f.kind), marks[f.old]))
    return Reuse(tuple(fates), tuple(_to_cut(lot) for lot in after if lot.left), losses(before, after, fates), narrowed)


def _together(fates: Sequence[Fate]) -> Iterator[Fate]:
    """Boards that are right as another, with those that are right at their own place."""
    of: dict[tuple[str, str | None], list[Fate]] = {}
    for fate in fates:
        if fate.kind == "right":
            of.setdefault((fate.old, fate.new), []).append(fate)
        else:
            yield fate
    for (old, new), some in of.items():
        pairs = sorted(
            (pair for fate in some for pair in zip(fate.boards, fate.becomes)), key=lambda pair: natural(pair[0])
        )
        yield Fate("right", old, new, len(pairs), tuple(a for a, _ in pairs), tuple(b for _, b in pairs))


def _to_cut(lot: Lot) -> ToCut:
    piece = lot.piece
    return ToCut(piece.mark, len(lot.left), tuple(lot.left), piece.stock.title or piece.stock.name, lot.body is None)


def _uncut(lot: Lot) -> Fate:
    boards, lot.left = tuple(lot.left), []
    return Fate("uncut", lot.piece.mark, None, len(boards), boards, ())


def _right(before: Sequence[Lot], after: Sequence[Lot], to_new: Mapping[str, str]) -> Iterator[Fate]:
    """Where the same piece is still wanted at its own place, nothing can be gained by making it anything else."""
    wanted = {lot.key: lot for lot in after if lot.body is not None}
    for lot in before:
        other = wanted.get(lot.key) if lot.body is not None else None
        count = shared(lot, other, to_new) if other else 0
        if other and count:
            boards, becomes = taken(lot, other, count, to_new)
            yield Fate("right", lot.piece.mark, other.piece.mark, count, boards, becomes)


# --- what must be worked on ------------------------------------------------------------------------------


def _reworked(
    old: Plan,
    new: Plan,
    before: Sequence[Lot],
    after: Sequence[Lot],
    of_board: Mapping[str, Lot],
    to_new: Mapping[str, str],
    unit: int,
    narrowed: bool,
) -> Iterator[Fate]:
    from_, to = [lot for lot in before if lot.left], [lot for lot in after if lot.left and lot.body is not None]
    project = new.pieces.joined.placed.project
    kerf = min((saw.kerf for saw in project.saws), default=Fraction(0))
    was, now = cache(lambda i: face_words(old, from_[i].piece)), cache(lambda j: face_words(new, to[j].piece))
    own = own_pairs(from_, to, to_new)
    apart = ceil(project.practice.value("hole_apart") * unit)
    trials = Trials(from_, to, own, unit, int(project.mark * unit), apart, narrowed)
    total = _served(trials)
    at_own = {pair: min(count, own[pair]) for pair, count in total.items()}
    # First all that stay at their own place, so that none of these is taken for another.
    for stays, flow in ((True, at_own), (False, total - Counter(at_own))):
        for (i, j), count in sorted(flow.items()):
            if count:
                same = from_[i].key == to[j].key
                kind = "right" if same else "reworked" if stays else "serves"
                fit = trials.fit(i, j)
                how = None if same or fit is None else way(fit, was(i), now(j), kerf, unit)
                boards, becomes = taken(from_[i], to[j], count, to_new)
                why, blocked = at_home(from_[i], boards, of_board, to_new) if kind == "serves" else ("", ())
                marks = from_[i].piece.mark, to[j].piece.mark
                yield Fate(kind, *marks, count, boards, becomes, how, why, blocked)


def _served(trials: Trials) -> Counter[Pair]:
    """How many copies of each old lot serve as each new one."""
    stay = settled(trials)
    total = Counter({(i, j): count for (i, j), count in trials.own.items() if j in stay})
    edges = sorted(
        (edge for j in range(len(trials.new)) if j not in stay for edge in trials.edges(j)),
        key=lambda edge: (edge.old, edge.new),
    )
    free = [len(lot.left) for lot in trials.old]
    for (i, _), count in total.items():
        free[i] -= count
    flows = assign(free, [len(lot.left) for lot in trials.new], edges)
    for edge, flow in zip(edges, flows):
        total[edge.old, edge.new] += flow
    return total


def _work(before: Sequence[Lot], after: Sequence[Lot]) -> int:
    """How many things done to old boards would be held against things wanted on new ones."""
    old, new = (sum(1 + len(lot.body.spots) for lot in lots if lot.left and lot.body) for lots in (before, after))
    return old * new
