"""Patterns worth having, and plans rounded from them.

`Columns.enrich` solves the programme over the patterns known, then tears and refills the best boards by what items are
worth to it, and adds those worth more than they cost. `dive` makes a plan: it takes the pattern most used, asks again
for what remains, and so on, until nothing remains or what remains can't be had for the money.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from heapq import nlargest

from setout.plan.cutting.search.fleet import Fleet
from setout.plan.cutting.search.kinds import Kind
from setout.plan.cutting.search.master import Master, Relaxed
from setout.plan.cutting.search.meter import Meter
from setout.plan.cutting.search.places import NOWHERE, Place, look, look_empty, put, room_for
from setout.plan.cutting.search.trees import Board, kinds_on, leaves, remove

STARTS = 60  # boards that a round of enriching starts from
EPS = 1e-6
REFILLS = 5000  # work between two solutions of the programme
TORN = 0.8  # at most this share of a board is torn out
NOISE = 0.5  # how far the order of laying strays from the prices
DRY = 3  # rounds without a worthy pattern before giving up
ROUNDS_FIRST, ROUNDS_LATER = 80, 6
FILLED = 1.5  # how much a pattern is preferred for leaving little over, beside how much it is used
MARGIN = 0.02  # how much of a board the programme is to lie under what is wanted before a dive
SLIP = 0.1  # how much of a board a plan may lie over what is wanted, as long as there are patterns to be found for it
SLOW, GAIN = 6, 0.01  # a plan no further over than that is tried when so many rounds gave less than this of a board
ORDERS = 16  # of laying, for each round of enriching
Turn = tuple[int, int, int, int, float]  # a kind, its area, sides, and the highest price of an area from here on


class Columns:
    def __init__(self, kinds: Sequence[Kind], fleet: Fleet, rng: random.Random, meter: Meter):
        self.kinds = kinds
        self.fleet = fleet
        self.rng = rng
        self.meter = meter
        self.demand = [kind.count for kind in kinds]
        self.areas = [kind.area for kind in kinds]
        self.shapes = [kind.shapes for kind in kinds]
        self.sides = [(min(map(max, kind.shapes)), min(map(min, kind.shapes))) for kind in kinds]  # none needs less
        short = 10 * max(spec.cost / (spec.width * spec.height) for spec in fleet.bins) + 1e-9
        self.master = Master(self.areas, [spec.cost for spec in fleet.bins], short)

    def see(self, boards: Sequence[Board]) -> None:
        for board in boards:
            if board.count:
                self.master.add(board)

    def enrich(self, demand: Sequence[int], fixed: Sequence[Board], enough: float, rounds: int) -> Relaxed:
        """Add patterns until the programme's value for what is still demanded is `enough`, or for so many rounds, or
        until nothing is found."""
        copies = self.fleet.left(fixed)
        if fixed and len(copies) == 1:
            copies = [int(enough) // self.fleet.bins[0].cost]
        self.master.ask(demand, copies)
        dry = 0
        slip, slow = self.slip(), GAIN / SLIP * self.slip()
        values: list[float] = []
        while True:
            self.meter.work += 10 + len(self.master.patterns) // 2
            relaxed = self.master.solve()
            if relaxed.value <= enough + EPS or rounds <= 0 or dry >= DRY or self.meter.spent():
                return relaxed
            values.append(relaxed.value)
            if relaxed.value <= enough + slip and len(values) > SLOW and values[-SLOW - 1] - relaxed.value < slow:
                return relaxed
            rounds -= 1
            dry = 0 if self.refills(relaxed, demand) else dry + 1

    def refills(self, relaxed: Relaxed, demand: Sequence[int]) -> int:
        """One round of tearing and refilling; how many worthy patterns were found."""
        rng = self.rng
        price = relaxed.price
        useful = [k for k, p in enumerate(price) if p > EPS and demand[k]]
        if not useful:
            return 0
        states = self.starts(relaxed)
        costs = [spec.cost - extra for spec, extra in zip(self.fleet.bins, relaxed.extra)]
        orders = [self.order(useful, price) for _ in range(ORDERS)]
        found = 0
        limit = self.meter.work + REFILLS
        while self.meter.work < limit and not self.meter.spent():
            slot = int(rng.random() ** 2 * len(states))
            gain, board = states[slot]
            board, now = self.refilled(board, rng.choice(orders), price, demand, min(0.0, gain), costs)
            now -= costs[board.bin]
            if not board.count:
                continue
            if now > EPS and self.master.add(board):
                found += 1
            if now >= gain - EPS:
                states[slot] = (now, board)
        return found

    def starts(self, relaxed: Relaxed) -> list[tuple[float, Board]]:
        """The boards of least reduced cost."""
        best = nlargest(STARTS, ((gain, -j) for j, gain in enumerate(relaxed.gains)))
        return [(gain, self.master.patterns[-j].board) for gain, j in best]

    def order(self, useful: Sequence[int], price: Sequence[float]) -> list[Turn]:
        """The dearest first, or the dearest for their area, more or less."""
        random, areas = self.rng.random, self.areas
        by_area = random() < 0.5
        keys = [(-price[k] / (areas[k] if by_area else 1) * (1 + NOISE * random()), k) for k in useful]
        return self.turns([k for _, k in sorted(keys)], price)

    def turns(self, order: Sequence[int], price: Sequence[float] | None = None) -> list[Turn]:
        found = []
        top = 0.0 if price else float("inf")
        for k in reversed(order):
            area = self.areas[k]
            if price:
                top = max(top, price[k] / area)
            found.append((k, area, *self.sides[k], top))
        found.reverse()
        return found

    def refilled(
        self,
        board: Board,
        order: Sequence[Turn],
        price: Sequence[float],
        demand: Sequence[int],
        gain: float,
        costs: Sequence[float],
    ) -> tuple[Board, float]:
        """A copy with something torn out and other items laid, and what its items are worth; they are to be worth more
        than the board costs by `gain`."""
        rng = self.rng
        board = self.moved(board)
        found = leaves(board.root)
        if rng.random() < 0.5:
            for leaf in rng.sample(found, rng.randint(1, max(1, int(len(found) * TORN)))):
                remove(board, leaf)
        else:
            node = found[int(rng.random() * len(found))]
            while rng.random() < 0.5 and node.parent is not None and node.parent.parent is not None:
                node = node.parent
            remove(board, node)
        left = list(demand)
        value = 0.0
        for k in kinds_on(board):
            left[k] -= 1
            value += price[k]
        return board, value + self.fill(board, order, left, price, gain + costs[board.bin] - value + EPS)

    def moved(self, board: Board) -> Board:
        """A copy of a board, now and then on a bin of another size that it fits."""
        board = board.copy()
        if len(self.fleet.bins) > 1 and self.rng.random() < 0.3:
            root = board.root
            width, height = (root.a, root.c) if root.d else (root.c, root.a)
            index = self.rng.randrange(len(self.fleet.bins))
            spec = self.fleet.bins[index]
            if width <= spec.width and height <= spec.height:
                board.bin, board.size = index, (spec.width, spec.height)
        return board

    def fill(
        self,
        board: Board,
        order: Sequence[Turn],
        left: list[int],
        price: Sequence[float] | None = None,
        wanted: float = 0.0,
    ) -> float:
        """Lay as many of the kinds in this order as find a place, at most `left` of each (which is counted down); what
        they are worth. Stop when not even the best that remains could fill the free area with what is `wanted`."""
        width, height = board.size
        free = width * height - board.area
        longest, shortest = room_for(board)
        value = 0.0
        for k, area, long, short, top in order:
            if free * top < wanted - value:
                break
            if area > free or long > longest or short > shortest:
                continue
            while left[k] > 0 and area <= free and long <= longest and short <= shortest:
                place = self.place(board, k)
                if place is None:
                    break
                put(board, k, place)
                longest, shortest = room_for(board)
                left[k] -= 1
                free -= area
                if price:
                    value += price[k]
        return value

    def place(self, board: Board, k: int) -> Place | None:
        self.meter.work += len(self.shapes[k]) * (1 + board.count // 4)
        best, place = NOWHERE, None
        for w, h in self.shapes[k]:
            if board.root is not None:
                best, place = look(board, w, h, best, place)
            else:
                gain = look_empty(board, w, h)
                if gain > best:
                    best, place = gain, (None, None, w, h)
        return place

    def dive(self, limit: float, low: float) -> tuple[list[Board], list[int]]:
        """Boards for everything, or as many as cost less than `limit`, and the demand left."""
        demand = list(self.demand)
        boards: list[Board] = []
        spent = 0.0
        while any(demand) and not self.meter.spent():
            hoped, rounds = (limit, ROUNDS_LATER) if boards else (self.hoped(limit, low), ROUNDS_FIRST)
            relaxed = self.enrich(demand, boards, hoped - spent, rounds)
            if not relaxed.shares or spent + relaxed.value > limit + EPS + self.slip():
                break
            for board in self.chosen(relaxed, demand):
                boards.append(board)
                spent += self.fleet.bins[board.bin].cost
            if spent + min(spec.cost for spec in self.fleet.bins) > limit:
                break
        return boards, demand

    def slip(self) -> float:
        return SLIP * self.fleet.bins[0].cost if len(self.fleet.bins) == 1 else 0.0

    def hoped(self, limit: float, low: float) -> float:
        """The value to bring the programme down to before a dive: what is wanted, or less while the bound is far below.
        """
        close = len(self.fleet.bins) == 1 and limit - low <= 2 * self.fleet.bins[0].cost
        return limit - MARGIN * self.fleet.bins[0].cost if close else (limit + low) / 2

    def chosen(self, relaxed: Relaxed, demand: list[int]) -> list[Board]:
        """Every pattern taken whole, or the one most used and best filled; what they hold is counted off the demand."""
        whole = [(j, int(x + EPS)) for j, x in relaxed.shares if x > 1 - EPS]
        if not whole:
            rng = self.rng
            whole = [(max(relaxed.shares, key=lambda share: self.merit(*share) * (0.8 + 0.4 * rng.random()))[0], 1)]
        boards = []
        for j, times in whole:
            for _ in range(times):
                board = self.master.patterns[j].board.copy()
                if self.count_off(board, demand):
                    boards.append(board)
        return boards

    def merit(self, j: int, share: float) -> float:
        board = self.master.patterns[j].board
        return share * (board.area / (board.size[0] * board.size[1])) ** FILLED

    def count_off(self, board: Board, demand: list[int]) -> int:
        """Take off the board what is no longer demanded, fill it up again, and count down the demand."""
        extra = False
        for leaf in leaves(board.root):
            if demand[leaf.kind] > 0:
                demand[leaf.kind] -= 1
            else:
                remove(board, leaf)
                extra = True
        if extra and board.root is not None:
            order = sorted((k for k, count in enumerate(demand) if count), key=lambda k: (-self.areas[k], k))
            self.fill(board, self.turns(order), demand)
        return board.count
