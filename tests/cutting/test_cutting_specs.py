"""Every spec's cutting plan is made again, cut by cut, by a checker that knows nothing of the planner."""

from __future__ import annotations

from decimal import Decimal

import pytest
from checker import faults
from cutting_jobs import SPECS, of_spec

from setout.plan.cutting import Budget, cutting


@pytest.mark.parametrize("name", sorted(p.name for p in SPECS.glob("*.rod")))
def test_a_specs_plan_can_be_cut(name):
    pieces = of_spec(name)
    made = cutting(pieces, Budget(work=20_000))
    assert faults(made.value, pieces) == []
    assert not [d for d in made.diagnostics if d.severity.value != "note"]
    assert all(not stock.missing for stock in made.value.stocks)
    assert all(Decimal(0) < stock.yield_ <= 1 for stock in made.value.stocks)


def test_nothing_is_claimed_least_that_was_not_shown_to_be():
    for stock in cutting(of_spec("sewing_wall.rod")).value.stocks:
        assert stock.bound <= stock.bought
        if stock.proven and stock.stock.kind == "sheet":
            assert stock.bought == stock.bound


def test_the_same_work_gives_the_same_plan():
    pieces = of_spec("bookcase.rod")
    assert cutting(pieces, Budget(work=5000)) == cutting(pieces, Budget(work=5000))
