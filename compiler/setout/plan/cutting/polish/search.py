"""Late acceptance over boards torn apart and laid again, on the same sheets.

Half of the steps lay what was torn out board by board at the place that leaves the largest leftovers, half of them
first join boards of one width into rows. What doesn't find a place again undoes the step.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable, Sequence

from setout.plan.cutting.polish.boards import boards_of, used_from
from setout.plan.cutting.polish.rows import Row, opened, rows_of
from setout.plan.cutting.polish.score import EMPTY, Merit, Rules, Taste, merit
from setout.plan.cutting.search.kinds import Kind, kinds_of
from setout.plan.cutting.search.meter import Meter
from setout.plan.cutting.search.model import Bin, Budget, Item, Used
from setout.plan.cutting.search.places import NOWHERE, look, look_empty, put
from setout.plan.cutting.search.trees import Board, leaves, remove

MEMORY = 60
BAD = 1000.0


def polished(
    used: Sequence[Used],
    items: Sequence[Item],
    bins: Sequence[Bin],
    rules: Rules,
    budget: Budget,
    taste: Taste,
    told: Callable[[float], None] | None = None,
) -> tuple[Used, ...]:
    """The same items on the same bins (or on fewer), better laid."""
    kinds = kinds_of(items)
    search = Polish(kinds, boards_of(used, kinds, bins), rules, taste, Meter(budget), random.Random(budget.seed))
    search.run(told)
    return used_from(search.best, kinds, items)


def fences(used: Sequence[Used], items: Sequence[Item], bins: Sequence[Bin], rules: Rules) -> frozenset[int]:
    """The fence settings of a layout that are not known already."""
    found = [merit(board, rules).fences for board in boards_of(used, kinds_of(items), bins)]
    return frozenset().union(*found)


class Polish:
    def __init__(
        self, kinds: Sequence[Kind], boards: list[Board], rules: Rules, taste: Taste, meter: Meter, rng: random.Random
    ):
        self.kinds = kinds
        self.rules = rules
        self.taste = taste
        self.meter = meter
        self.rng = rng
        self.take_up(boards)
        self.best = list(boards)
        self.least = self.value()

    def take_up(self, boards: list[Board]) -> None:
        self.boards = boards
        self.merits = [merit(board, self.rules) for board in boards]
        self.fences: Counter[int] = Counter()
        self.stops: Counter[int] = Counter()
        for one in self.merits:
            self.count(EMPTY, one)

    def count(self, old: Merit, new: Merit) -> None:
        for counter, were, are in ((self.fences, old.fences, new.fences), (self.stops, old.stops, new.stops)):
            for value in are - were:
                counter[value] += 1
            for value in were - are:
                counter[value] -= 1
                if not counter[value]:
                    del counter[value]

    def value(self) -> float:
        taste, merits = self.taste, self.merits
        return (
            BAD * sum(m.bad for m in merits)
            - taste.leftover * max((m.left for m in merits), default=0) / self.rules.area
            + taste.fence * len(self.fences)
            + taste.stop * len(self.stops)
            + taste.cut * sum(m.cuts for m in merits)
            - taste.tidy * sum(m.tidy for m in merits)
        )

    def run(self, told: Callable[[float], None] | None) -> None:
        if not self.boards:
            return
        self.regrouped()
        late = [self.value()] * MEMORY
        step = 0
        while not self.meter.spent():
            self.step(late, step)
            step += 1
            if told and step % 64 == 0:
                told(self.meter.work / self.meter.limit if self.meter.limit else 1.0)

    def step(self, late: list[float], step: int) -> None:
        self.meter.work += 1
        picked = self.pick()
        old = [(self.boards[i], self.merits[i]) for i in picked]
        before = late[step % MEMORY]
        now = self.value()
        new, pool = self.ruin([board for board, _ in old])
        if self.laid_again(new, pool):
            self.exchange(picked, [(board, merit(board, self.rules)) for board in new])
            value = self.value()
            if value > now and value > before:
                self.exchange(picked, old)
            else:
                now = value
                self.note()
        late[step % MEMORY] = now

    def exchange(self, picked: Sequence[int], by: Sequence[tuple[Board, Merit]]) -> None:
        for i, (board, worth) in zip(picked, by):
            self.count(self.merits[i], worth)
            self.boards[i], self.merits[i] = board, worth

    def note(self) -> None:
        value = self.value()
        if value < self.least - 1e-9:
            self.least = value
            self.best = list(self.boards)

    def regrouped(self) -> None:
        """Starts that lay everything anew in rows of one width, on the same bins; the best of them and of the plan
        given."""
        given = list(self.boards)
        for trial in range(8):
            if self.meter.spent():
                break
            new = [Board(board.bin, board.size) for board in given]
            pool = [leaf.kind for board in given for leaf in leaves(board.root)]
            if self.in_rows(new, pool, trial % 2):
                self.take_up(new)
                self.note()
        self.take_up(list(self.best))

    def pick(self) -> list[int]:
        count = len(self.boards)
        many = self.rng.choice((1, 1, 2, 2, 3))
        return self.rng.sample(range(count), min(many, count))

    def ruin(self, old: Sequence[Board]) -> tuple[list[Board], list[int]]:
        rng = self.rng
        new = [board.copy() for board in old]
        pool: list[int] = []
        aim = (
            rng.choice(sorted(self.fences, key=lambda n: (self.fences[n], n))[: 1 + len(self.fences) // 2] or [0])
            if rng.random() < 0.3
            else 0
        )
        for board in new:
            found = leaves(board.root)
            if not found:
                continue
            if aim:
                for leaf in found:
                    if leaf.a == aim or leaf.c == aim or rng.random() < 0.15:
                        pool += remove(board, leaf)
                continue
            chance = rng.random()
            if chance < 0.3:
                for leaf in rng.sample(found, rng.randint(1, max(1, len(found) // 2))):
                    pool += remove(board, leaf)
            elif chance < 0.8:
                node = rng.choice(found)
                while rng.random() < 0.6 and node.parent is not None and node.parent.parent is not None:
                    node = node.parent
                pool += remove(board, node)
            else:
                pool += [leaf.kind for leaf in found]
                board.root, board.count, board.area = None, 0, 0
        return new, pool

    def laid_again(self, boards: list[Board], pool: list[int]) -> bool:
        chance = self.rng.random()
        if chance < 0.5:
            return self.one_by_one(boards, pool)
        return self.in_rows(boards, pool, int(chance < 0.75))

    def one_by_one(self, boards: list[Board], pool: list[int]) -> bool:
        rng, kinds = self.rng, self.kinds
        order = sorted((-kinds[k].area * (1 + 0.3 * rng.random()), k) for k in pool)
        return all(self.place(boards, k, kinds[k].shapes, kinds[k].area) for _, k in order)

    def in_rows(self, boards: list[Board], pool: list[int], d: int) -> bool:
        rng = self.rng
        room = max(board.size[d] for board in boards)
        if rng.random() < 0.5:
            room = int(room * (0.3 + 0.7 * rng.random()))
        made: dict[int, Row] = {}
        rows = rows_of(pool, self.kinds, d, room, rng)
        order = sorted(range(len(rows)), key=lambda i: -rows[i][1] * rows[i][2] * (1 + 0.3 * rng.random()))
        for i in order:
            _, x, y, members = rows[i]
            made[-2 - i] = rows[i]
            if not self.place(boards, -2 - i, ((x, y),), x * y) and not self.singly(boards, members):
                return False
        for board in boards:
            if board.root is not None:
                opened(board, made)
        return True

    def singly(self, boards: list[Board], members: Sequence[tuple[int, int, int]]) -> bool:
        """A row that finds no place whole is laid board by board."""
        return all(self.place(boards, k, self.kinds[k].shapes, self.kinds[k].area) for k, _, _ in members)

    def place(self, boards: Sequence[Board], kind: int, shapes: Sequence[tuple[int, int]], area: int) -> bool:
        best, place, on = NOWHERE, None, None
        for board in boards:
            if board.area + area > board.size[0] * board.size[1]:
                continue
            for w, h in shapes:
                self.meter.work += 1
                if board.root is None:
                    gain = look_empty(board, w, h)
                    if gain > best:
                        best, place, on = gain, (None, None, w, h), board
                else:
                    gain, found = look(board, w, h, best, place)
                    if gain > best:
                        best, place, on = gain, found, board
        if on is None:
            return False
        put(on, kind, place)
        return True
