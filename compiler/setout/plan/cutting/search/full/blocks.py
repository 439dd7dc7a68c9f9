"""Blocks: rectangles that items make up without any waste, from the bottom up.

In a plan without waste every part of every cut is such a block, and two blocks that share a side make a larger one. As
long as few sides agree by chance, all blocks there are can be listed, and with them it's known whether a board can be
filled; else the small ones are listed, which `peeling` sets together.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import chain
from typing import NamedTuple

from setout.plan.cutting.search.full.counts import Counts
from setout.plan.cutting.search.meter import Meter

LOOKS = 20  # pairs looked at that count as one unit of work
Shape = tuple[int, int, bool]  # sizes along x and y, may be turned


class Block(NamedTuple):
    """`free`: may be turned (then it stands here with its longer side along x). `made` is a kind, or two blocks: side
    by side when d is 0, sharing the block's size along y, one above the other when d is 1."""

    code: int
    wide: int
    high: int
    free: bool
    count: int
    made: int | tuple[int, Block, Block]


class Entry(NamedTuple):
    """A block as it's found by one side: its `length` at right angles to that side."""

    code: int
    length: int
    block: Block


Shelf = dict[int, list[Entry]]  # by side


class Blocks:
    """Blocks of the items in `code`, no larger than `size`, at most `most` of them or as many as the meter lets pass:
    `all` by how many items they hold. `complete` when there are no others."""

    def __init__(
        self, counts: Counts, shapes: Sequence[Shape], code: int, size: tuple[int, int], most: int, meter: Meter
    ):
        self.guard = counts.guard
        self.room = code | counts.guard
        self.size = size
        self.complete = True
        self.meter = meter
        present = counts.of(code)
        singles = [Block(counts.unit[k], *shape, 1, k) for k, shape in enumerate(shapes) if present[k]]
        self.all: list[list[Block]] = [[], singles]
        shelves = [Shelves(()), Shelves(singles)]
        for count in range(2, sum(present) + 1):
            most -= len(self.all[-1])
            found: dict[tuple[int, int, int], Block] = {}
            self.complete = all(self._joined(*pair, found, most) for pair in _pairs(shelves, count))
            self.all.append(list(found.values()))
            if not self.complete:
                break
            shelves.append(Shelves(self.all[-1]))

    def __iter__(self) -> Iterator[Block]:
        return chain.from_iterable(self.all)

    def whole(self, code: int, wide: int, high: int) -> Block | None:
        """The block of just these items, if one lies within this size."""
        for block in self.all[-1]:
            if block.code == code and lies_within(block.wide, block.high, block.free, (wide, high)):
                return block
        return None

    def _joined(self, d: int, one: Shelf, other: Shelf, found: dict, most: int) -> bool:
        """Join what agrees in a side; False when that makes too many blocks."""
        guard, room = self.guard, self.room
        for side, entries in one.items():
            others = other.get(side)
            if not others:
                continue
            self.meter.work += 1 + len(entries) * len(others) // LOOKS
            for entry in entries:
                rest = room - entry.code
                for partner in others:
                    if (rest - partner.code) & guard == guard:
                        self._join(d, side, entry, partner, found)
            if len(found) > most or self.meter.spent():
                return False
        return True

    def _join(self, d: int, side: int, one: Entry, other: Entry, found: dict) -> None:
        length = one.length + other.length
        free = one.block.free and other.block.free
        wide, high = (side, length) if d else (length, side)
        if free and wide < high:
            wide, high, d = high, wide, 1 - d
        key = (one.code + other.code, wide, high)
        if key not in found and lies_within(wide, high, free, self.size):
            count = one.block.count + other.block.count
            found[key] = Block(*key, free, count, (d, one.block, other.block))


class Shelves:
    """Blocks by a side: those free to turn by either, the others by their size along x and along y."""

    def __init__(self, blocks: Iterable[Block]):
        self.free: Shelf = defaultdict(list)
        self.by_wide: Shelf = defaultdict(list)
        self.by_high: Shelf = defaultdict(list)
        for block in blocks:
            self.add(block)

    def add(self, block: Block) -> None:
        one, other = (self.free, self.free) if block.free else (self.by_wide, self.by_high)
        one[block.wide].append(Entry(block.code, block.high, block))
        if not block.free or block.wide != block.high:
            other[block.high].append(Entry(block.code, block.wide, block))

    def pairs(self, other: Shelves, same: bool) -> Iterator[tuple[int, Shelf, Shelf]]:
        """Shelves whose blocks may be set together along d. Two that are free to turn are only set one above the other:
        side by side is the same, turned."""
        yield 1, self.free, other.free
        yield 1, self.by_wide, other.by_wide
        yield 0, self.by_high, other.by_high
        yield 1, self.by_wide, other.free
        yield 0, self.by_high, other.free
        if not same:
            yield 1, self.free, other.by_wide
            yield 0, self.free, other.by_high


def _pairs(shelves: Sequence[Shelves], count: int) -> Iterator[tuple[int, Shelf, Shelf]]:
    """All that together may make blocks of so many items."""
    for few in range(1, count // 2 + 1):
        yield from shelves[few].pairs(shelves[count - few], few * 2 == count)


def lies_within(wide: int, high: int, free: bool, size: tuple[int, int]) -> bool:
    return (wide <= size[0] and high <= size[1]) or (free and high <= size[0] and wide <= size[1])


def laid_within(block: Block, size: tuple[int, int]) -> tuple[Block, int, int]:
    """With the sizes in which it lies within this one."""
    if block.wide <= size[0] and block.high <= size[1]:
        return block, block.wide, block.high
    return block, block.high, block.wide
