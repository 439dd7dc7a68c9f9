"""Blocks of one thickness in a row that fill a length."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from math import log
from random import Random

from setout.plan.cutting.search.full.blocks import Entry

SKEW = 0.15  # how far down the list of candidates the choice strays, as a share of its length
FEW = 6  # blocks of one length that are tried in a pair
Row = list[Entry]


class Chains:
    """Looks for rows; `looks` counts candidates looked at."""

    def __init__(self, guard: int, rng: Random):
        self.guard = guard
        self.rng = rng
        self.looks = 0

    def fitting(self, candidates: Sequence[Entry], room: int, length: int) -> Row:
        """Those no longer than this whose items are all in `room`."""
        self.looks += len(candidates)
        guard = self.guard
        room |= guard
        return [entry for entry in candidates if entry.length <= length and (room - entry.code) & guard == guard]

    def row(self, candidates: Sequence[Entry], length: int, room: int, short: int) -> Row | None:
        """Blocks in `room` that fill the length up to `short`, those early among the candidates rather than others,
        the last two so that few items are used."""
        row: Row = []
        candidates = self.fitting(candidates, room, length)
        while length > short:
            if not candidates:
                return None
            end = self.closed(candidates, length, room, short)
            if end:
                return row + end
            entry = candidates[self._skewed(len(candidates))]
            row.append(entry)
            room -= entry.code
            length -= entry.length
            candidates = self.fitting(candidates, room, length)
        return row

    def closed(self, candidates: Row, length: int, room: int, short: int) -> Row | None:
        """One block or two that fill the length."""
        by: dict[int, Row] = {}
        for entry in candidates:
            by.setdefault(entry.length, []).append(entry)
        lengths = sorted(by)
        best: Row | None = None
        if lengths[-1] >= length - short:
            best = [by[lengths[-1]][0]]
        if length > 2 * lengths[-1]:
            return best
        for one in lengths:
            if 2 * one > length:
                break
            other = lengths[bisect_right(lengths, length - one) - 1]
            if one + other >= length - short:
                pair = self._pair(by[one], by[other], room)
                if pair and (best is None or items_in(pair) < items_in(best)):
                    best = pair
        return best

    def _pair(self, ones: Row, others: Row, room: int) -> Row | None:
        guard = self.guard
        for one in ones[:FEW]:
            rest = room - one.code | guard
            for other in others[:FEW]:
                self.looks += 1
                if (rest - other.code) & guard == guard:
                    return [one, other]
        return None

    def _skewed(self, many: int) -> int:
        return min(int(-log(1 - self.rng.random()) * SKEW * many), many - 1)


def items_in(row: Row) -> int:
    return sum(entry.block.count for entry in row)
