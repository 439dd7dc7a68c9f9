"""Boards that come to nothing: which, why, and how much wood that is."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from setout.compare.model import Fate, Loss, Task
from setout.compare.reuse.body import Body
from setout.compare.reuse.fitting import can_hold, fit
from setout.compare.reuse.lots import Lot
from setout.compare.reuse.obstacles import obstacles
from setout.piece.model import Piece


def lost(before: Sequence[Lot], of_board: Mapping[str, Lot], to_new: Mapping[str, str]) -> Iterator[Fate]:
    """What is left of the old copies, when all that can be used is taken. `of_board`: the new ones, by board."""
    for lot in before:
        by_place: defaultdict[str, list[str]] = defaultdict(list)
        for path in lot.left:
            own = of_board.get(to_new.get(path, ""))
            by_place[own.piece.mark if own else ""].append(path)
        for boards in by_place.values():
            why, blocked = at_home(lot, boards, of_board, to_new)
            yield Fate("lost", lot.piece.mark, None, len(boards), tuple(boards), (), None, why, blocked)


def at_home(
    lot: Lot, boards: Sequence[str], of_board: Mapping[str, Lot], to_new: Mapping[str, str]
) -> tuple[str, tuple[Task, ...]]:
    """Why these boards don't serve at their own place, and what is in the way there; nothing if it isn't one place."""
    places = [of_board.get(to_new.get(path, "")) for path in boards]
    if any(place is not places[0] for place in places):
        return "", ()
    own = places[0]
    why = _why(lot, own)
    return why, _blocked(lot, own) if why == "holes" and own else ()


def _blocked(lot: Lot, other: Lot) -> tuple[Task, ...]:
    assert lot.body is not None and other.body is not None
    return tuple(Task(kind, count) for kind, count in obstacles(lot.body, other.body))


def _why(lot: Lot, own: Lot | None) -> str:
    """Why a board is not made what its own place wants now; "unwanted" where that has gone, or wants fewer copies."""
    if own is None or lot.body is None or not own.piece.count or own.key == lot.key:
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
    return next((why for why, without in _WITHOUT if fit(_plain(a, without), _plain(b, without)) is not None), "small")


_WITHOUT = (
    ("face", ("face",)),
    ("grain", ("grain",)),
    ("holes", ("holes",)),
    ("face", ("face", "holes")),
    ("grain", ("grain", "face", "holes")),
)
"""What is the matter, and what must be disregarded to make it fit: first one thing alone."""


def _plain(body: Body, without: Sequence[str]) -> Body:
    return replace(
        body,
        grain="any" if "grain" in without and body.grain else body.grain,
        show=None if "face" in without else body.show,
        spots=() if "holes" in without else body.spots,
    )


def losses(before: Sequence[Lot], after: Sequence[Lot], fates: Sequence[Fate]) -> tuple[Loss, ...]:
    """Nothing else is lost than what no board needs: trimmings count as lost."""
    cut: dict[str, Fraction] = {}
    wasted: dict[str, Fraction] = {}
    was, becomes = ({lot.piece.mark: lot.piece for lot in lots} for lots in (before, after))
    for fate in fates:
        if fate.kind == "uncut":
            continue
        piece = was[fate.old]
        name = piece.stock.title or piece.stock.name
        cut[name] = cut.get(name, Fraction(0)) + _area(piece) * fate.count
        gone = _area(piece) - (_area(becomes[fate.new]) if fate.new is not None else 0)
        wasted[name] = wasted.get(name, Fraction(0)) + gone * fate.count
    return tuple(Loss(name, amount, wasted[name]) for name, amount in cut.items())


def _area(piece: Piece) -> Fraction:
    return piece.length.amount * piece.width.amount
