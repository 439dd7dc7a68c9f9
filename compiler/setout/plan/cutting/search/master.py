"""The linear programme over patterns: how much of each board ever packed would be cut if halves of boards could be cut.

Its value is what the patterns known so far allow; its duals say what an item is worth at present, so that a board
holding more than its own cost is worth adding. The only module that needs HiGHS, and only when a search asks for it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from setout.plan.cutting.search.trees import Board, kinds_on

DUAL, PRIMAL = 1, 4  # ways of HiGHS's simplex: when the rows' sides change, when columns come


@dataclass(frozen=True)
class Pattern:
    board: Board
    counts: tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class Relaxed:
    """`price` of each kind, `extra` of each limited bin (never positive), `shares` of the patterns used: (pattern, how
    many), largest first, `gains`: what each pattern's items are worth beyond its cost."""

    value: float
    price: list[float]
    extra: list[float]
    shares: list[tuple[int, float]]
    gains: list[float]


class Master:
    """Rows: the demand of each kind, then the copies of each bin. `short` is what a missing item costs for each unit of
    its area."""

    def __init__(self, areas: Sequence[int], costs: Sequence[int], short: float):
        from setout.plan.cutting.search.quiet import Quiet, highspy

        self.areas = areas
        self.costs = costs
        self.unit = max(1.0, sum(costs) / len(costs))  # keeps the numbers HiGHS sees near one
        self.patterns: list[Pattern] = []
        self.known: set[tuple] = set()
        self.inf = highspy.kHighsInf
        self.lp = Quiet()
        self.lp.setOptionValue("simplex_strategy", PRIMAL)
        for _ in areas:
            self.lp.addRow(0.0, self.inf, 0, [], [])
        for _ in costs:
            self.lp.addRow(-self.inf, self.inf, 0, [], [])
        for k, area in enumerate(areas):
            self.lp.addCol(area * short / self.unit, 0.0, self.inf, 1, [k], [1.0])

    def add(self, board: Board) -> bool:
        """Make a board a pattern, unless one like it is known."""
        kinds = sorted(kinds_on(board))
        key = (board.bin, *kinds)
        if key in self.known:
            return False
        self.known.add(key)
        counts = tuple(Counter(kinds).items())
        self.patterns.append(Pattern(board, counts))
        index = [k for k, _ in counts] + [len(self.areas) + board.bin]
        value = [float(count) for _, count in counts] + [1.0]
        self.lp.addCol(self.costs[board.bin] / self.unit, 0.0, self.inf, len(index), index, value)
        return True

    def ask(self, demand: Sequence[int], copies: Sequence[int | None]) -> None:
        rows = len(self.areas)
        self.lp.setOptionValue("simplex_strategy", DUAL)
        for k, count in enumerate(demand):
            self.lp.changeRowBounds(k, float(count), self.inf)
        for i, count in enumerate(copies):
            self.lp.changeRowBounds(rows + i, -self.inf, self.inf if count is None else float(count))

    def solve(self) -> Relaxed:
        self.lp.run()
        self.lp.setOptionValue("simplex_strategy", PRIMAL)
        found = self.lp.getSolution()
        rows = len(self.areas)
        duals = [dual * self.unit for dual in found.row_dual]
        value = self.lp.getInfo().objective_function_value * self.unit
        shares = [(j, x) for j, x in enumerate(list(found.col_value)[rows:]) if x > 1e-7]
        shares.sort(key=lambda share: (-round(share[1], 6), share[0]))
        gains = [-self.unit * dual for dual in list(found.col_dual)[rows:]]
        return Relaxed(value, [max(0.0, p) for p in duals[:rows]], [min(0.0, p) for p in duals[rows:]], shares, gains)
