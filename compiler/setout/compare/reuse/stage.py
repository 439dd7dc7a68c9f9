"""The fates of all old pieces."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from setout.compare.known import common_shape
from setout.compare.matching import natural
from setout.compare.model import Fate, Loss, Reuse, ToCut
from setout.compare.reuse.assigning import Edge, assign
from setout.compare.reuse.body import Body, body_of, unit_of
from setout.compare.reuse.fitting import Fit, can_hold, fit
from setout.compare.reuse.way import way
from setout.piece.model import Piece
from setout.plan.model import Plan

_OWN = 0.5  # a board is rather made what its own place wants


@dataclass
class _Lot:
    """A piece and those of its copies that are not yet accounted for. Copies of a loose board share their path."""

    piece: Piece
    body: Body | None
    key: str
    left: list[str] = field(default_factory=list)


def reuse(
    old: Plan, new: Plan, stocks: tuple[Mapping[str, str], Mapping[str, str]], to_new: Mapping[str, str]
) -> Reuse:
    """The least loss over the whole job. `stocks`: names that stocks are compared under; `to_new`: boards' paths."""
    unit = unit_of(piece.shape for plan in (old, new) for piece in plan.pieces.pieces)
    before, after = (_lots(plan, names, unit) for plan, names in zip((old, new), stocks))
    fates = [_uncut(lot) for lot in before if lot.body is None]
    fates += _right(before, after, to_new)
    fates += _reworked(old, new, before, after, to_new, unit)
    by_key = {lot.key: lot for lot in before}
    fates += _lost(before, after, to_new)
    marks = {lot.piece.mark: n for n, lot in enumerate(by_key.values())}
    order = ("right", "reworked", "serves", "lost", "uncut")
    fates.sort(key=lambda f: (order.index(f.kind), marks[f.old]))
    cut = tuple(ToCut(lot.piece.mark, len(lot.left), tuple(lot.left)) for lot in after if lot.left)
    return Reuse(tuple(fates), cut, _losses(before, fates))


def _lots(plan: Plan, names: Mapping[str, str], unit: int) -> list[_Lot]:
    loose = {b.path: b.count for b in plan.pieces.joined.placed.drawn.loose}
    lots = []
    for piece in plan.pieces.pieces:
        stock = names.get(piece.stock.name, piece.stock.name)
        body = None if piece.measures else body_of(piece.shape, stock, unit)
        copies = [path for path in piece.boards for _ in range(loose.get(path, 1))]
        lots.append(_Lot(piece, body, common_shape(piece.shape, names), sorted(copies, key=natural)))
    return lots


def _uncut(lot: _Lot) -> Fate:
    boards, lot.left = tuple(lot.left), []
    return Fate("uncut", lot.piece.mark, None, len(boards), boards, ())


def _right(before: Sequence[_Lot], after: Sequence[_Lot], to_new: Mapping[str, str]) -> Iterator[Fate]:
    """The same piece is still wanted: nothing can be gained by making it anything else."""
    wanted = {lot.key: lot for lot in after if lot.body is not None}
    for lot in before:
        other = wanted.get(lot.key) if lot.body is not None else None
        count = min(len(lot.left), len(other.left)) if other else 0
        if other and count:
            boards, becomes = _taken(lot, other, count, to_new)
            yield Fate("right", lot.piece.mark, other.piece.mark, count, boards, becomes)


def _taken(old: _Lot, new: _Lot, count: int, to_new: Mapping[str, str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
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


# --- what must be worked on ------------------------------------------------------------------------------


def _reworked(
    old: Plan, new: Plan, before: Sequence[_Lot], after: Sequence[_Lot], to_new: Mapping[str, str], unit: int
) -> Iterator[Fate]:
    from_, to = [lot for lot in before if lot.left], [lot for lot in after if lot.left and lot.body is not None]
    fits = dict(_fits(from_, to))
    edges = list(_edges(from_, to, fits, to_new, unit))
    flows = assign([len(lot.left) for lot in from_], [len(lot.left) for lot in to], edges)
    total: Counter[tuple[int, int]] = Counter()
    for edge, flow in zip(edges, flows):
        total[edge.old, edge.new] += flow
    for (i, j), count in sorted(total.items()):
        if count:
            own = min(count, _own(from_[i], to[j], to_new))
            how = way(fits[i, j], old, new, from_[i].piece, to[j].piece, unit)
            for kind, some in (("reworked", own), ("serves", count - own)):
                if some:
                    boards, becomes = _taken(from_[i], to[j], some, to_new)
                    yield Fate(kind, from_[i].piece.mark, to[j].piece.mark, some, boards, becomes, how)


def _fits(from_: Sequence[_Lot], to: Sequence[_Lot]) -> Iterator[tuple[tuple[int, int], Fit]]:
    for i, one in enumerate(from_):
        for j, other in enumerate(to):
            found = fit(one.body, other.body) if one.body and other.body else None
            if found is not None:
                yield (i, j), found


def _edges(
    from_: Sequence[_Lot], to: Sequence[_Lot], fits: Mapping[tuple[int, int], Fit], to_new: Mapping[str, str], unit: int
) -> Iterator[Edge]:
    for (i, j), found in fits.items():
        body = to[j].body
        assert body is not None
        saves = float(Fraction(body.volume, unit**3))
        most = min(len(from_[i].left), len(to[j].left))
        own = _own(from_[i], to[j], to_new)
        if own:
            yield Edge(i, j, saves, found.effort, own)
        if most > own:
            yield Edge(i, j, saves, found.effort + _OWN, most - own)


def _own(old: _Lot, new: _Lot, to_new: Mapping[str, str]) -> int:
    """How many of the copies are one board in both plans."""
    return sum((Counter(to_new.get(path, "") for path in old.left) & Counter(new.left)).values())


# --- what is lost ----------------------------------------------------------------------------------------


def _lost(before: Sequence[_Lot], after: Sequence[_Lot], to_new: Mapping[str, str]) -> Iterator[Fate]:
    of_board = {path: lot for lot in after for path in lot.piece.boards}
    for lot in before:
        by_why: defaultdict[str, list[str]] = defaultdict(list)
        for path in lot.left:
            by_why[_why(lot, of_board.get(to_new.get(path, "")))].append(path)
        for why, boards in by_why.items():
            yield Fate("lost", lot.piece.mark, None, len(boards), tuple(boards), (), None, why)


def _why(lot: _Lot, own: _Lot | None) -> str:
    """Why a board is not made what its own place wants now; "unwanted" where that has gone."""
    if own is None or lot.body is None:
        return "unwanted"
    if own.body is None:
        return "held"
    a, b = lot.body, own.body
    if a.stock != b.stock or a.kind != b.kind:
        return "stock"
    if a.size[2] != b.size[2]:
        return "thickness"
    if not can_hold(a, b):
        return "small"
    if fit(a, b) is not None:
        return "taken"
    return next(why for why, plain in _WITHOUT if fit(*plain(a, b)) is not None)


def _bare(body: Body, grain: bool = False, show: bool = False) -> Body:
    return Body(
        body.kind, body.stock, body.size, "any" if grain else body.grain, None if show else body.show, (), body.bands
    )


_WITHOUT = (
    ("holes", lambda a, b: (_bare(a), _bare(b))),
    ("face", lambda a, b: (_bare(a, show=True), _bare(b, show=True))),
    ("grain", lambda a, b: (_bare(a, True, True), _bare(b, True, True))),
    ("small", lambda a, b: (b, b)),
)


def _losses(before: Sequence[_Lot], fates: Sequence[Fate]) -> tuple[Loss, ...]:
    """Nothing else is lost than what no board needs: trimmings count as lost."""
    cut: dict[str, Fraction] = {}
    lost: dict[str, Fraction] = {}
    one = {lot.piece.mark: lot.piece for lot in before}
    for fate in fates:
        if fate.kind == "uncut":
            continue
        piece = one[fate.old]
        size = piece.length.amount * piece.width.amount
        name = piece.stock.title or piece.stock.name
        cut[name] = cut.get(name, Fraction(0)) + size * fate.count
        gone = size if fate.kind == "lost" else Fraction(0) if fate.way is None else _trimmed(size, piece, fate)
        lost[name] = lost.get(name, Fraction(0)) + gone * fate.count
    return tuple(Loss(name, amount, lost[name]) for name, amount in cut.items())


def _trimmed(size: Fraction, piece: Piece, fate: Fate) -> Fraction:
    assert fate.way is not None
    off = {"length": Fraction(0), "width": Fraction(0)}
    for trim in fate.way.trims:
        off[trim.along] += trim.by
    return size - (piece.length.amount - off["length"]) * (piece.width.amount - off["width"])
