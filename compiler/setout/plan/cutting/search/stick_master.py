"""The linear programme over the patterns of sticks. Imported only when the plain ways don't meet the plain bound."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from setout.plan.cutting.search.model import Stick


class StickMaster:
    """`price` of each row, `extra` of each stick (never positive), `value` of the programme, after `solve`."""

    def __init__(self, sizes: Sequence[int], demand: Sequence[int], sticks: Sequence[Stick]):
        from setout.plan.cutting.search.quiet import Quiet, highspy

        self.rows = len(sizes)
        self.costs = [stick.cost for stick in sticks]
        self.unit = max(1.0, sum(self.costs) / len(self.costs))
        self.patterns: list[tuple[int, tuple[int, ...]]] = []
        self.known: set[tuple] = set()
        self.inf = highspy.kHighsInf
        self.lp = Quiet()
        for _ in range(self.rows + len(sticks)):
            self.lp.addRow(-self.inf, self.inf, 0, [], [])
        dear = 10 * max(stick.cost for stick in sticks) / self.unit + 1
        for row in range(self.rows):
            self.lp.addCol(dear, 0.0, self.inf, 1, [row], [1.0])
        for row, size in enumerate(sizes):
            for i, stick in enumerate(sticks):
                if size <= stick.length:
                    self.add(i, [row] * min(demand[row], stick.length // size))

    def add(self, stick: int, rows: Sequence[int]) -> bool:
        key = (stick, tuple(rows))
        if key in self.known:
            return False
        self.known.add(key)
        self.patterns.append(key)
        counts = Counter(rows)
        index, value = [*counts, self.rows + stick], [*map(float, counts.values()), 1.0]
        self.lp.addCol(self.costs[stick] / self.unit, 0.0, self.inf, len(index), index, value)
        return True

    def ask(self, demand: Sequence[int], copies: Sequence[int | None]) -> None:
        for row, count in enumerate(demand):
            self.lp.changeRowBounds(row, float(count), self.inf)
        for i, count in enumerate(copies):
            self.lp.changeRowBounds(self.rows + i, -self.inf, self.inf if count is None else float(count))

    def solve(self) -> None:
        self.lp.run()
        found = self.lp.getSolution()
        duals = [dual * self.unit for dual in found.row_dual]
        self.value = self.lp.getInfo().objective_function_value * self.unit
        self.price = [max(0.0, dual) for dual in duals[: self.rows]]
        self.extra = [min(0.0, dual) for dual in duals[self.rows :]]
        self.amounts = list(found.col_value)[self.rows :]

    def shares(self) -> list[tuple[int, float]]:
        return [(j, x) for j, x in enumerate(self.amounts) if x > 1e-7]
