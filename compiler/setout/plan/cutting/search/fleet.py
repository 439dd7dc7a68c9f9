"""The bins there are, and the first plan: what a patient person would do in one pass."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from fractions import Fraction

from setout.plan.cutting.search.model import Bin
from setout.plan.cutting.search.trees import Board

MOST_PICKED = 40


class Fleet:
    """Bins by index, in the order to open them: least money for an area first, then by rank, then the largest."""

    def __init__(self, bins: Sequence[Bin]):
        self.bins = bins
        self.order = sorted(range(len(bins)), key=self._price)

    def _price(self, index: int) -> tuple:
        spec = self.bins[index]
        size = spec.width * spec.height
        return (Fraction(spec.cost, size), spec.rank, -size, index)

    def board(self, index: int) -> Board:
        spec = self.bins[index]
        return Board(index, (spec.width, spec.height))

    def cost(self, boards: Sequence[Board]) -> int:
        return sum(self.bins[board.bin].cost for board in boards if board.root is not None)

    def left(self, boards: Sequence[Board]) -> list[int | None]:
        """Copies of each bin that no board stands for yet."""
        copies = [spec.copies for spec in self.bins]
        for board in boards:
            if copies[board.bin] is not None:
                copies[board.bin] -= 1
        return copies

    def fitting(self, boards: Sequence[Board], shapes: Sequence[tuple[int, int]]) -> Iterator[int]:
        """Bins still to be had that can hold one of these shapes, in order."""
        left = self.left(boards)
        for index in self.order:
            spec = self.bins[index]
            if left[index] != 0 and any(w <= spec.width and h <= spec.height for w, h in shapes):
                yield index

    def cheaper(self, rest: Sequence[Board], money: int, area: int, rng: random.Random) -> list[Board]:
        """Empty boards picked at random that cost no more than `money` together and have at least this area; none when
        that fails."""
        picked: list[Board] = []
        left = self.left(rest)
        while len(picked) < MOST_PICKED:
            choice = [i for i, spec in enumerate(self.bins) if spec.cost <= money and left[i] != 0]
            if not choice:
                break
            index = rng.choice(choice)
            picked.append(self.board(index))
            spec = self.bins[index]
            money -= spec.cost
            area -= spec.width * spec.height
            if left[index] is not None:
                left[index] -= 1
            if area <= 0 and rng.random() < 0.5:
                break
        return picked if area <= 0 else []

    def spares(self, boards: Sequence[Board], saved: int) -> list[Board]:
        """Empty boards of limited bins not in use yet that together cost less than `saved`."""
        spares = []
        left = self.left(boards)
        for index in self.order:
            copies = left[index] or 0
            cost = self.bins[index].cost
            while copies > 0 and cost < saved and len(spares) < MOST_PICKED:
                spares.append(self.board(index))
                saved -= cost
                copies -= 1
        return spares
