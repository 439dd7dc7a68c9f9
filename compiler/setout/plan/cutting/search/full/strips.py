"""Strips that may be cut off a free rectangle: rows of blocks all along one side of it."""

from __future__ import annotations

from itertools import islice
from random import Random
from typing import NamedTuple

from setout.plan.cutting.search.full.blocks import Block, Blocks, Entry, Shelf, lies_within
from setout.plan.cutting.search.full.chains import Chains, Row, items_in
from setout.plan.cutting.search.full.counts import Counts

ANCHORS = 12  # blocks with the longest item in them that are tried for a strip
TRIES = 2  # rows tried for each
LONGEST = 4  # kinds that take the longest one's place when it finds no strip
THIN = 0.3  # how much the shape of what is left free counts
Size = tuple[int, int]


class Strip(NamedTuple):
    """`row` lies along d (0: x, 1: y) and is `thick` across. `cost`: the items it takes for its area, more when what
    is left free is long and narrow."""

    d: int
    thick: int
    row: Row
    cost: float


class State(NamedTuple):
    """A rectangle still free, the items still to be laid, the area that may still be wasted."""

    size: Size
    room: int
    slack: int

    def after(self, strip: Strip) -> State:
        return State(
            without(self.size, strip.d, strip.thick),
            self.room - sum(entry.code for entry in strip.row),
            self.slack - strip.thick * (self.size[strip.d] - sum(entry.length for entry in strip.row)),
        )


class Strips:
    """Finds them. `near` keeps the blocks of a thickness that the last state could choose from: the next one on the
    same way has no others."""

    def __init__(self, counts: Counts, blocks: Blocks, rng: Random):
        self.counts = counts
        self.chains = Chains(counts.guard, rng)
        self.tables = _tables(blocks)
        self.with_kind = _with_kind(blocks, counts)

    def of(self, state: State, near: dict[tuple[int, int], Row]) -> list[Strip]:
        """Strips with the longest item in them, the best first; with the next longest if there is none."""
        for k in islice(self.counts.kinds(state.room), LONGEST):
            strips = [strip for block in self.anchors(k, state) for strip in self.with_block(block, state, near)]
            if strips:
                return sorted(strips, key=lambda strip: strip.cost)
        return []

    def anchors(self, k: int, state: State) -> list[Block]:
        guard, room = self.counts.guard, state.room | self.counts.guard
        found: list[Block] = []
        for block in self.with_kind[k]:
            self.chains.looks += 1
            if (room - block.code) & guard == guard and lies_within(block.wide, block.high, block.free, state.size):
                found.append(block)
                if len(found) == ANCHORS:
                    break
        return found

    def with_block(self, block: Block, state: State, near: dict) -> list[Strip]:
        found = []
        for sizes in _ways(block):
            for d in (0, 1):
                length, thick = sizes[d], sizes[1 - d]
                if length <= state.size[d] and thick <= state.size[1 - d]:
                    strip = self.strip(block, d, thick, length, state, near)
                    if strip:
                        found.append(strip)
        return found

    def strip(self, block: Block, d: int, thick: int, length: int, state: State, near: dict) -> Strip | None:
        """The best of a few rows along d with this block in it."""
        whole = state.size[d]
        candidates = self.candidates(d, thick, state, near)
        rows = [
            self.chains.row(candidates, whole - length, state.room - block.code, state.slack // thick)
            for _ in range(TRIES)
        ]
        few = min((row for row in rows if row is not None), key=items_in, default=None)
        if few is None:
            return None
        short, long = sorted(without(state.size, d, thick))
        cost = (block.count + items_in(few)) / (whole * thick) * (long / max(1, short)) ** THIN
        return Strip(d, thick, [Entry(block.code, length, block), *few], cost)

    def candidates(self, d: int, thick: int, state: State, near: dict[tuple[int, int], Row]) -> Row:
        key = (d, thick)
        if key not in near:
            near[key] = self.tables[d].get(thick, [])
        near[key] = self.chains.fitting(near[key], state.room, max(state.size))
        return near[key]


def without(size: Size, d: int, thick: int) -> Size:
    return (size[0], size[1] - thick) if d == 0 else (size[0] - thick, size[1])


def _ways(block: Block) -> list[Size]:
    """The sizes along x and y in which it may be laid."""
    ways = [(block.wide, block.high)]
    return [*ways, (block.high, block.wide)] if block.free and block.wide != block.high else ways


def _tables(blocks: Blocks) -> tuple[Shelf, Shelf]:
    """For rows along x the blocks by size along y, for rows along y those by size along x; few items for the length
    first."""
    tables: tuple[Shelf, Shelf] = {}, {}
    for block in blocks:
        for wide, high in _ways(block):
            tables[0].setdefault(high, []).append(Entry(block.code, wide, block))
            tables[1].setdefault(wide, []).append(Entry(block.code, high, block))
    for table in tables:
        for entries in table.values():
            entries.sort(key=lambda entry: entry.block.count / entry.length)
    return tables


def _with_kind(blocks: Blocks, counts: Counts) -> list[list[Block]]:
    """Blocks with an item of each kind, those of few items for their area first."""
    found: list[list[Block]] = [[] for _ in counts.unit]
    for block in blocks:
        for k in counts.kinds(block.code):
            found[k].append(block)
    for level in found:
        level.sort(key=lambda block: block.count / (block.wide * block.high))
    return found
