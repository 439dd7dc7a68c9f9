"""Ruin and recreate on a fixed number of boards until nothing is absent.

Each step tears items out of one to three boards and lays them, with those that are absent, again: large ones first,
more or less, each at the place that leaves the largest leftovers. A step is kept when the state isn't worse than the
present one or the one `MEMORY` steps ago. What is absent weighs by its area, and at equal absence fewer and larger
leftovers are better.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence

from setout.plan.cutting.search.kinds import Kind
from setout.plan.cutting.search.meter import Meter
from setout.plan.cutting.search.places import NOWHERE, look, look_empty, put
from setout.plan.cutting.search.trees import Board, leaves, remove, squares

MEMORY = 50  # how many steps back a state is compared with
NOISE = 0.2  # how far the order of laying strays from the areas
HOW_MANY = (1, *(2,) * 6, *(3,) * 3)  # boards torn at a time, by how often
TIDY = 0.2  # what the squares of leftovers weigh against absent area
TORN = 0.5  # at most this share of a board is torn out


class Squeeze:
    """The state of one search: the boards (never changed in place: a step works on copies) and the kinds that are
    absent.
    """

    def __init__(self, kinds: Sequence[Kind], boards: list[Board], absent: list[int], rng: random.Random, meter: Meter):
        self.kinds = kinds
        self.boards = boards
        self.absent = absent
        self.rng = rng
        self.meter = meter
        self.area = [kind.area for kind in kinds]
        self.shapes = [kind.shapes for kind in kinds]
        self.best = (boards, absent)
        self.least = sum(self.area[k] for k in absent)

    def run(self, work: int, seen: Callable[[list[Board]], None] | None = None) -> bool:
        """Search for so much work; True when nothing is absent any more. `seen` is told of every board that was kept.
        """
        if not self.absent:
            return True
        for board in self.boards:
            board.squares = squares(board)
        mean = sum(b.size[0] * b.size[1] for b in self.boards) / max(1, len(self.boards))
        scale = TIDY / max(1.0, mean)
        tidy = sum(board.squares for board in self.boards)
        area = self.area
        present = sum(area[k] for k in self.absent) - scale * tidy
        late = [present] * MEMORY
        step = 0
        limit = self.meter.work + work
        while self.meter.work < limit and not self.meter.spent():
            self.meter.work += 1
            step += 1
            picked = self.pick()
            old = [self.boards[i] for i in picked]
            new, pool = self.ruin(old)
            left = self.recreate(new, self.absent + pool)
            change = 0
            for board, before in zip(new, old):
                board.squares = squares(board)
                change += board.squares - before.squares
            value = sum(area[k] for k in left) - scale * (tidy + change) if left else -1e300
            slot = step % MEMORY
            if value <= present or value <= late[slot]:
                for i, board in zip(picked, new):
                    self.boards[i] = board
                tidy += change
                present = value
                self.absent = left
                missing = sum(area[k] for k in left)
                if missing < self.least:
                    self.least = missing
                    self.best = (list(self.boards), left)
                if seen:
                    seen(new)
                if not left:
                    return True
            late[slot] = present
        return False

    def pick(self) -> list[int]:
        boards = self.boards
        many = self.rng.choice(HOW_MANY)
        return self.rng.sample(range(len(boards)), min(many, len(boards)))

    def ruin(self, old: list[Board]) -> tuple[list[Board], list[int]]:
        """Copies of the boards with something torn out, and the kinds torn out."""
        rng = self.rng
        new = [board.copy() for board in old]
        pool: list[int] = []
        for board in new:
            if board.root is None:
                continue
            found = leaves(board.root)
            if rng.random() < 0.5:
                for leaf in rng.sample(found, rng.randint(1, max(1, int(len(found) * TORN)))):
                    pool += remove(board, leaf)
            else:
                node = found[int(rng.random() * len(found))]
                while rng.random() < 0.5 and node.parent is not None and node.parent.parent is not None:
                    node = node.parent
                pool += remove(board, node)
        return new, pool

    def recreate(self, boards: list[Board], pool: list[int]) -> list[int]:
        """Lay the pool on the boards as well as it goes; the kinds that found no place."""
        random = self.rng.random
        area = self.area
        order = sorted([(-area[k] * (1 + NOISE * random()), k) for k in pool])
        left = []
        for _, k in order:
            _, place, on = self.best_place(boards, k)
            if on is None:
                left.append(k)
            else:
                put(on, k, place)
        return left

    def best_place(self, boards: list[Board], k: int) -> tuple[int, tuple | None, Board | None]:
        best = NOWHERE
        place = on = None
        area = self.area[k]
        for board in boards:
            width, height = board.size
            if board.area + area > width * height:
                continue
            self.meter.work += 1 + board.count // 4
            for w, h in self.shapes[k]:
                if board.root is None:
                    gain = look_empty(board, w, h)
                    if gain > best:
                        best, place, on = gain, (None, None, w, h), board
                else:
                    gain, found = look(board, w, h, best, place)
                    if gain > best:
                        best, place, on = gain, found, board
        return best, place, on
