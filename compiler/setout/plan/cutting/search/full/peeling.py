"""Boards filled without waste from the outside in: strips go all along one side of what is still free, each made of
blocks, until what is left is small enough to list all its blocks.

The longest item that is left goes into the next strip, and of the strips that could take it one with few items in it is
chosen, for the small items are those that fit together in many ways at the end. A choice is taken back only near the
end, where looking is cheap; what comes to no end is begun anew.
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import NamedTuple

from setout.plan.cutting.search.full.blocks import Block, Blocks, Shape, laid_within
from setout.plan.cutting.search.full.counts import Counts
from setout.plan.cutting.search.full.strips import Size, State, Strip, Strips
from setout.plan.cutting.search.meter import Meter

LOOKS = 20  # candidates looked at that count as one unit of work
AMONG = 3  # the strip is one of so many of the best
NEAR = 40  # items left from which on ...
WIDTH = 3  # ... so many strips are tried one after the other
END = 16  # items left when all blocks are listed ...
END_BLOCKS = 20_000  # ... up to so many


class Peeled(NamedTuple):
    """What was cut off a board, strip by strip, and the block that fills the rest."""

    strips: list[Strip]
    last: tuple[Block, int, int] | None


class Peeling:
    """`slack` is the area that may be wasted on all boards together."""

    def __init__(
        self,
        counts: Counts,
        shapes: Sequence[Shape],
        blocks: Blocks,
        sizes: Sequence[Size],
        slack: int,
        rng: Random,
        meter: Meter,
    ):
        self.counts = counts
        self.shapes = shapes
        self.sizes = sizes
        self.slack = slack
        self.rng = rng
        self.meter = meter
        self.strips = Strips(counts, blocks, rng)

    def once(self) -> list[Peeled] | None:
        """From whole boards to the end, or to where it goes no further."""
        done: list[Peeled] = []
        room, slack = self.counts.full, self.slack
        for n, size in enumerate(self.sizes):
            state = State(size, room, slack)
            peeled, state = self.board(state, n + 1 == len(self.sizes))
            if peeled is None:
                return None
            done.append(peeled)
            room, slack = state.room, state.slack
            if not room:
                return done
        return None

    def board(self, state: State, last: bool) -> tuple[Peeled | None, State]:
        """Strip by strip, what can be had at each step."""
        strips: list[Strip] = []
        near: dict = {}
        while state.room and not self.meter.spent():
            free = state.size[0] * state.size[1]
            if not last and free <= state.slack:
                return Peeled(strips, None), state._replace(slack=state.slack - free)
            if last and self.left(state) <= NEAR:
                end = self.ended(state, near)
                return end and Peeled(strips + end.strips, end.last), State((0, 0), 0, 0)
            found = self.found(state, near)
            if not found:
                break
            strip = found[min(int(self.rng.random() ** 2 * AMONG), len(found) - 1)]
            strips.append(strip)
            state = state.after(strip)
        return (None if state.room else Peeled(strips, None)), state

    def ended(self, state: State, near: dict) -> Peeled | None:
        """The same to the end, with a few ways tried at each step."""
        if not state.room:
            return Peeled([], None)
        if self.left(state) <= END:
            blocks = Blocks(self.counts, self.shapes, state.room, state.size, END_BLOCKS, self.meter)
            block = blocks.whole(state.room, *state.size)
            if block is not None:
                return Peeled([], laid_within(block, state.size))
            if blocks.complete and not state.slack:
                return None
        for strip in self.found(state, near)[:WIDTH]:
            if self.meter.spent():
                return None
            end = self.ended(state.after(strip), dict(near))
            if end:
                return Peeled([strip, *end.strips], end.last)
        return None

    def found(self, state: State, near: dict) -> list[Strip]:
        strips = self.strips.of(state, near)
        self.meter.work += 1 + self.strips.chains.looks // LOOKS
        self.strips.chains.looks = 0
        return strips

    def left(self, state: State) -> int:
        return sum(self.counts.of(state.room))
