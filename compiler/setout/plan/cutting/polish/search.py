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
from setout.plan.cutting.search.trees import Board, kinds_on, leaves, remove

MEMORY = 60
BAD = 1000.0
AIMED = 0.25  # of the steps are to be rid of a setting
MANY = 4  # boards torn apart for it


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
        self.floor = self.left()  # the largest leftover given
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
        left = self.left()
        return (
            BAD * sum(m.bad for m in merits)
            - taste.leftover * left / self.rules.area
            + taste.less * max(0, self.floor - left) / self.rules.area
            + taste.fence * len(self.fences)
            + taste.stop * len(self.stops)
            + taste.guide * sum(m.guided for m in merits)
            + taste.cut * sum(m.cuts for m in merits)
            - taste.tidy * sum(m.tidy for m in merits)
        )

    def left(self) -> int:
        return max((m.left for m in self.merits), default=0)

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
        aim = self.aim()
        picked = self.pick(aim)
        old = [(self.boards[i], self.merits[i]) for i in picked]
        before = late[step % MEMORY]
        now = self.value()
        new, pool = self.ruin([board for board, _ in old], aim)
        if self.laid_again(new, pool, aim):
            self.exchange(picked, [(board, merit(board, self.rules)) for board in new])
            value = self.value()
            if value > now and value > before:
                self.exchange(picked, old)
            else:
                now = value
                self.note(value)
        late[step % MEMORY] = now

    def exchange(self, picked: Sequence[int], by: Sequence[tuple[Board, Merit]]) -> None:
        for i, (board, worth) in zip(picked, by):
            self.count(self.merits[i], worth)
            self.boards[i], self.merits[i] = board, worth

    def note(self, value: float) -> None:
        if value < self.least - 1e-9:
            self.least = value
            self.best = list(self.boards)

    def regrouped(self) -> None:
        """Starts that lay everything anew in rows of one width, on the same bins; the best of them and of the plan
        given."""
        given = list(self.boards)
        pool = [kind for board in given for kind in kinds_on(board)]
        for trial in range(8):
            if self.meter.spent():
                break
            new = [Board(board.bin, board.size) for board in given]
            if self.in_rows(new, pool, trial % 2):
                self.take_up(new)
                self.note(self.value())
        self.take_up(list(self.best))

    def aim(self) -> int:
        """A fence setting to be rid of, one of those that few boards need; 0 for none in particular."""
        if not self.fences or self.rng.random() >= AIMED:
            return 0
        rare = sorted(self.fences, key=lambda n: (self.fences[n], n))
        return self.rng.choice(rare[: 1 + len(rare) // 2])

    def pick(self, aim: int) -> list[int]:
        """The boards that need the setting, where they aren't many, and one more; else a few."""
        rng, count = self.rng, len(self.boards)
        if aim and self.fences[aim] <= MANY:
            found = [i for i, one in enumerate(self.merits) if aim in one.fences]
            more = rng.randrange(count)
            return found if more in found else [*found, more]
        many = rng.choice((1, 1, 2, 2, 3))
        return rng.sample(range(count), min(many, count))

    def ruin(self, old: Sequence[Board], aim: int) -> tuple[list[Board], list[int]]:
        new = [board.copy() for board in old]
        pool: list[int] = []
        chance = self.rng.choice((0.1, 0.3, 1.0)) if aim else 0.0
        for board in new:
            if board.root is not None:
                pool += self.torn(board, aim, chance) if aim else self.torn_at_random(board)
        return new, pool

    def torn(self, board: Board, aim: int, chance: float) -> list[int]:
        """What has the setting for a side, and some of the rest."""
        pool: list[int] = []
        for leaf in leaves(board.root):
            if leaf.a == aim or leaf.c == aim or self.rng.random() < chance:
                pool += remove(board, leaf)
        return pool

    def torn_at_random(self, board: Board) -> list[int]:
        rng, found = self.rng, leaves(board.root)
        chance = rng.random()
        if chance < 0.3:
            gone = rng.sample(found, rng.randint(1, max(1, len(found) // 2)))
            return [kind for leaf in gone for kind in remove(board, leaf)]
        if chance < 0.8:
            node = rng.choice(found)
            while rng.random() < 0.6 and node.parent is not None and node.parent.parent is not None:
                node = node.parent
            return remove(board, node)
        board.root, board.count, board.area = None, 0, 0
        return [leaf.kind for leaf in found]

    def laid_again(self, boards: list[Board], pool: list[int], aim: int) -> bool:
        chance = self.rng.random()
        if chance < 0.4 or not pool:
            return self.one_by_one(boards, pool)
        return self.in_rows(boards, pool, int(chance < 0.7), aim)

    def one_by_one(self, boards: list[Board], pool: list[int]) -> bool:
        rng, kinds = self.rng, self.kinds
        order = sorted((-kinds[k].area * (1 + 0.3 * rng.random()), k) for k in pool)
        return all(self.place(boards, k, kinds[k].shapes, kinds[k].area) for _, k in order)

    def in_rows(self, boards: list[Board], pool: list[int], d: int, aim: int = 0) -> bool:
        rng = self.rng
        made: dict[int, Row] = {}
        rows = self.rows(boards, pool, d, aim)
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

    def rows(self, boards: Sequence[Board], pool: list[int], d: int, aim: int) -> list[Row]:
        """Rows along `d`; what has the setting aimed at for a side stands across the others, so that it is cut to a
        stop."""
        kinds, rng = self.kinds, self.rng
        across = [k for k in pool if aim and aim in kinds[k].shapes[0]] if rng.random() < 0.7 else []
        ways: dict[int, list[int]] = {d: [], 1 - d: []}
        if across:
            beside = set(across)
            for k in pool:
                ways[kinds[k].shapes[0].index(aim) if k in beside else d].append(k)
        else:
            ways[d] = pool
        found: list[Row] = []
        for way, own in ways.items():
            room = max(board.size[way] for board in boards)
            if rng.random() < 0.5:
                room = int(room * (0.3 + 0.7 * rng.random()))
            found += rows_of(own, kinds, way, room, rng)
        return found

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
