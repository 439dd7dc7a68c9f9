"""Few settings of the fence, and equal boards off one of them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

from cutting_jobs import PLY, loose, plan_of
from sawing import TABLE, Bench

from setout.plan.cutting import Budget, Cutting
from setout.plan.cutting.model import Setting
from setout.plan.cutting.sequence import groups, unlike

ROUND = (("rip", (1, 5)), ("crosscut", (2, 3)), ("crosscut", (4, 6)))
WORK = Budget(work=30_000)
CASES = loose([(30, 22, 4), ("22-9/16", 22, 4), ("22-9/16", 4, 4, "any"), (34, 12, 6), ("32-9/16", "11-1/4", 6)])
BOXES = loose([(20, 5, 6), (20, 7, 4), ("21-1/2", 5, 6), ("21-1/2", 7, 4), (60, 9, 2)])


def fences(plan: Cutting) -> set[F]:
    return {one.setting for one in plan.settings if one.kind == "rip"}


def test_fewer_settings_at_no_more_sheets_than_with_money_alone():
    few = many = 0
    for parts in (CASES, BOXES, f"{CASES}\n{BOXES.replace('part p', 'part q')}"):
        plan, cheapest = plan_of(f"{PLY}\n{parts}", WORK), plan_of(f"{PLY}\n{parts}", WORK, taste=None)
        assert plan.stocks[0].bought == cheapest.stocks[0].bought
        few, many = few + len(fences(plan)), many + len(fences(cheapest))
    assert few < many


def test_boards_cut_by_one_fence_and_one_stop_are_equal():
    b = Bench("ply 1", None, "sheet", 96, 48)
    b.cut("ply 1", "y", 11, "board A", "board B", "rip", TABLE)
    b.cut("A", "x", 30, "A1", "board C", "crosscut", TABLE)
    b.cut("C", "x", 30, "A1", "board D", "crosscut", TABLE)
    b.cut("D", "x", F(286, 8), "A2", "", "crosscut", TABLE)
    b.cut("B", "y", 11, "board E", "waste", "rip", TABLE)
    b.cut("E", "x", F(286, 8), "A2", "waste", "crosscut", TABLE)
    fence, stop, other = (Setting(TABLE, kind, F(0), cuts) for kind, cuts in ROUND)
    ones = groups([("ply", b.plan().cuts)], (fence, stop, other))
    assert [(boards[0].mark, unlike(boards)) for boards in ones.values()] == [
        ("A1", (False, False)),
        ("A2", (False, False)),
    ]
    moved = (replace(fence, cuts=(1,)), stop, other, replace(fence, cuts=(5,)))  # the fence is set anew in between
    twos = groups([("ply", b.plan().cuts)], moved)
    assert [unlike(boards) for boards in twos.values()] == [(False, False), (False, True)]


def test_what_remains_of_a_board_no_setting_made():
    b = Bench("ply 1", None, "sheet", 96, 48)
    b.cut("ply 1", "x", F(767, 16), "A1", "A1", "crosscut", TABLE)
    (boards,) = groups([("ply", b.plan().cuts)], (Setting(TABLE, "crosscut", F(767, 16), (1,)),)).values()
    assert any(unlike(boards))


def test_equal_boards_go_to_one_saw_where_that_costs_nothing():
    parts = loose([(30, 11, 2), (30, 20, 2)])  # 11 fits under the mitre saw, 20 doesn't
    stops = {(one.saw.name, one.setting) for one in plan_of(f"{PLY}\n{parts}", WORK).settings if one.setting == 30}
    assert len(stops) <= 1


def test_offcuts_too_small_for_the_large_boards_do_not_weaken_the_bound():
    parts = loose([(90, 11, 4), (20, 5, 2)])
    plan = plan_of(f"{PLY}\nrack {{ ply: 92 x 12, 6 of 60 x 40 }}\n{parts}", WORK)
    assert (plan.stocks[0].bought, plan.stocks[0].bound, plan.stocks[0].proven) == (1, 1, True)
