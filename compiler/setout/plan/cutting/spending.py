"""The budget shared out among the stocks: what one doesn't need for the least money, the next may have."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction

from setout.plan.cutting.polish import Taste
from setout.plan.cutting.search import Budget
from setout.plan.cutting.sheets import Sheets
from setout.plan.cutting.sticks import Sticks

ASKED = 16
SEARCH = 0.65  # the share of the seconds that goes into the search for the least money; of the work it may have all
POLISH = 0.16  # so much work on top makes plans better at equal cost; of the seconds it has all that are left
REUSED = 0.16  # the share of what the search for the least money leaves over that goes there, too


def spend(stocks: Sequence[Sheets | Sticks], budget: Budget, taste: Taste | None) -> None:
    """Small stocks first: they are soon done. The search for the least money is the same with and without a taste."""
    order = sorted(stocks, key=lambda one: _boards(one))
    start = time.monotonic()
    work = budget.work
    seconds = budget.seconds
    if seconds is not None and taste is not None:
        seconds *= SEARCH
    left = sum(_boards(one) for one in order)
    for one in order:
        share = _boards(one) / max(1, left)
        spare = None if seconds is None else max(0.0, seconds - (time.monotonic() - start)) * share
        amount = None if work is None else int(work * share)
        spent = one.solve(replace(budget, work=amount, seconds=spare, stop=_patience(amount, budget.stop)))
        work = None if work is None else max(0, work - spent)
        left -= _boards(one)
    if taste is not None:
        spare_work = None if budget.work is None else int(budget.work * POLISH + (work or 0) * REUSED)
        _polish(
            [one for one in reversed(order) if isinstance(one, Sheets)], replace(budget, work=spare_work), taste, start
        )


def _polish(stocks: Sequence[Sheets], budget: Budget, taste: Taste, start: float) -> None:
    left = sum(_boards(one) for one in stocks)
    work = budget.work
    fences: frozenset[Fraction] = frozenset()
    for one in stocks:
        share = _boards(one) / max(1, left)
        spare = None if budget.seconds is None else max(0.0, budget.seconds - (time.monotonic() - start)) * share
        amount = None if work is None else int(work * share)
        fences = one.polish(replace(budget, work=amount, seconds=spare), taste, fences)
        work = None if work is None or amount is None else work - amount
        left -= _boards(one)


def _patience(work: int | None, stop: Callable[[], bool] | None) -> Callable[[], bool] | None:
    """Ends a search that goes on asking (once in ASKED looks) without doing countable work."""
    if work is None:
        return stop
    asked = 0

    def enough() -> bool:
        nonlocal asked
        asked += ASKED
        return asked > work or (stop is not None and stop())

    return enough


def _boards(one: Sheets | Sticks) -> int:
    return sum(want.count for want in one.wants)
