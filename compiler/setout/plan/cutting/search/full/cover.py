"""Boards that single blocks fill, chosen so that every item is on one of them."""

from __future__ import annotations

from collections.abc import Sequence

from setout.plan.cutting.search.full.blocks import Block, Blocks, lies_within
from setout.plan.cutting.search.full.counts import Counts
from setout.plan.cutting.search.meter import Meter

LOOKS = 20  # blocks looked at that count as one unit of work
ENOUGH = 300_000  # work until it's given up
Size = tuple[int, int]


def covered(
    blocks: Blocks, counts: Counts, sizes: Sequence[Size], slack: int, meter: Meter
) -> tuple[list[Block] | None, bool]:
    """A block for each board that together are all items, and whether that is certain: with none, that there are
    none."""
    limit = meter.work + ENOUGH
    filling = {size: _filling(blocks, size, slack) for size in set(sizes)}
    alike = len(filling) == 1

    def cover(n: int, room: int) -> list[Block] | None:
        if not room:
            return []
        if n == len(sizes) or meter.work > limit or meter.spent():
            return None
        longest = next(counts.kinds(room))
        found = filling[sizes[n]]
        meter.work += 1 + len(found) // LOOKS
        for block in found:
            # Which of equal boards takes the longest item doesn't matter: let it be the next one.
            if counts.holds(room, block.code) and (counts.has(block.code, longest) or not alike):
                rest = cover(n + 1, room - block.code)
                if rest is not None:
                    return [block, *rest]
        return None

    return cover(0, counts.full), meter.work <= limit and not meter.spent()


def _filling(blocks: Blocks, size: Size, slack: int) -> list[Block]:
    """Blocks that fill a board of this size but for the slack."""
    least = size[0] * size[1] - slack
    return [
        block
        for level in reversed(blocks.all)
        for block in level
        if block.wide * block.high >= least and lies_within(block.wide, block.high, block.free, size)
    ]
