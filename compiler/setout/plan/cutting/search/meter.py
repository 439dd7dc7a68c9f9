"""How much has been done and whether to go on."""

from __future__ import annotations

import time

from setout.plan.cutting.search.model import Budget


class Meter:
    """Counts work. `spent` is asked often; the clock and the caller's `stop` are asked once in a while."""

    __slots__ = ("_asked", "_stop", "budget", "limit", "over", "until", "work")

    def __init__(self, budget: Budget):
        self.budget = budget
        self.limit = float("inf") if budget.work is None else budget.work
        self.until = None if budget.seconds is None else time.monotonic() + budget.seconds
        self.work = 0
        self.over = False
        self._asked = 0

    def spent(self) -> bool:
        self._asked += 1
        if self.over or self.work >= self.limit:
            return True
        if self._asked % 16 == 0:
            self.over = self._called_off()
        return self.over

    def _called_off(self) -> bool:
        if self.until is not None and time.monotonic() > self.until:
            return True
        return self.budget.stop is not None and self.budget.stop()
