"""Where to part a board that is too large or too heavy for the saws that stand still."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from setout.plan.cutting.saws import Way
from setout.plan.cutting.sequence.bench import Open
from setout.plan.cutting.sequence.model import Blank, Job, size

Parts = tuple["Job | Blank", ...]


@dataclass(frozen=True)
class Break:
    """The parts that come away together at the low side, and those that remain. `way` None: no saw can do it."""

    low: Parts
    high: Parts
    way: Way | None

    def extent(self, board: Open) -> Fraction:
        return _extent(board, self.low)


def breaking(board: Open) -> Break:
    """The cut that leaves the fewest boards still too large and the fewest cuts at settings to do without, the two
    sides as even as may be."""
    best, best_worth = None, None
    for low, high in _partings(board):
        extent = _extent(board, low)
        way = board.guided(extent)
        if way is None:
            continue
        remains = board.extent - extent - way.saw.kerf
        large = _large(board, 0, extent, low) + _large(board, extent, remains, high)
        worth = large, _late(board, low, extent) + _late(board, high, remains), abs(extent - remains)
        if best_worth is None or worth < best_worth:
            best, best_worth = Break(low, high, way), worth
    return best or _alone(board)


def _alone(board: Open) -> Break:
    """No saw is brought to it: whatever a fixed saw can do, else the widest part as if it could be done."""
    parts = _by_size(board)
    for part in parts:
        setting = size(part, board.along)
        if way := board.fixed(setting) or board.from_far(setting):
            return Break((part,), _rest(parts, (part,)), way)
    return Break(parts[:1], parts[1:], None)


def _partings(board: Open) -> Iterator[tuple[Parts, Parts]]:
    """Some of the widest parts, or some of the narrowest; or all, when something is left over beyond them."""
    parts = _by_size(board)
    for row in (parts, parts[::-1]):
        for many in range(1, len(row)):
            yield row[:many], row[many:]
    if _extent(board, parts) < board.extent:
        yield parts, ()


def _by_size(board: Open) -> Parts:
    return tuple(sorted(board.parts, key=lambda part: -size(part, board.along)))


def _rest(parts: Parts, gone: Parts) -> Parts:
    return tuple(p for p in parts if all(p is not g for g in gone))


def _extent(board: Open, parts: Parts) -> Fraction:
    return sum(size(p, board.along) for p in parts) + board.bench.limits.kerf * (len(parts) - 1)


def _large(board: Open, start: Fraction, extent: Fraction, parts: Parts) -> int:
    """1 when that side will have to be parted again before it can go on."""
    if extent <= 0 or not parts:
        return 0
    return int(not board.piece_of(start, extent, board.name, parts).workable())


def _late(board: Open, parts: Parts, extent: Fraction) -> int:
    """Cuts at settings put off that such a board would still need: what fills it to the end needs one cut less."""
    late = board.bench.manner.late
    if not late:
        return 0
    many = sum(size(part, board.along) in late for part in parts)
    return many - 1 if many and _extent(board, parts) == extent else many
