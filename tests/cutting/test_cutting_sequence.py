"""The order of the cuts, the saws they fall to, what is reserved, kept in sequence and left."""

from __future__ import annotations

from fractions import Fraction as F

from checker import faults
from cutting_jobs import PLY, QUICK, codes_of, loose, of_spec, pieces_of, plan_of

from setout.plan.cutting import Budget, cutting, rack_text
from setout.units import Style

SHELVES = loose([(30, 11, 6), (60, 14, 4), (20, 5, 4)])


def cuts_of(plan):
    return sorted((cut for stock in plan.stocks for s in stock.sources for cut in s.cuts), key=lambda cut: cut.number)


# --- saws and their order ---------------------------------------------------------------------------------------


def test_sheets_are_broken_down_before_the_fence_is_set():
    kinds = [cut.kind for cut in cuts_of(plan_of(f"{PLY}\n{SHELVES}"))]
    first = next(i for i, kind in enumerate(kinds) if kind in ("rip", "crosscut"))
    assert set(kinds[:first]) <= {"trim", "break down"} and "trim" in kinds
    assert "trim" not in kinds[first:]


def test_nothing_is_trimmed_off_an_offcut():
    plan = plan_of(f"{PLY}\nrack {{ ply: 30 x 11 }}\n" + loose([(30, 11, 1)]))
    source = plan.stocks[0].sources[0]
    assert source.source.kind == "offcut" and source.cuts == () and plan.stocks[0].cost == 0


def test_one_fence_setting_is_one_batch():
    plan = plan_of(f"{PLY}\n" + loose([(90, 11, 8)]))
    rips = [one for one in plan.settings if one.kind == "rip"]
    assert [one.setting for one in rips] == [F(11)]


def test_what_the_fence_reaches_falls_to_the_fence_and_the_narrow_to_the_small_saw():
    text = f"{PLY}\n" + loose([(30, 11, 6)])
    names = {(cut.kind, cut.saw.name) for cut in cuts_of(plan_of(text)) if cut.kind in ("rip", "crosscut")}
    assert names == {("rip", "table_saw"), ("crosscut", "mitre_saw")}


def test_a_finer_saw_than_planned_with_leaves_exact_boards():
    shop = "saw a { kerf 3/32; breaks down sheets }\nsaw b { kerf 1/8; rips up to 20; crosscuts up to 20 }"
    plan = plan_of(f"{PLY}\n{shop}\n{SHELVES}")
    assert {cut.kerf for cut in cuts_of(plan)} == {F(3, 32), F(1, 8)}


def test_a_kerf_wider_than_the_trim_shaves_the_edge():
    plan = plan_of(f"{PLY}\npractice {{ edge_trim 1/16 }}\n" + loose([(90, 40, 1)]))
    assert any(cut.kind == "trim" and cut.rest is None for cut in cuts_of(plan))


def test_a_shop_without_a_saw_for_sheets_is_told_of_once():
    shop = "saw a { kerf 1/8; rips up to 24; crosscuts up to 24; takes up to 60 x 30 }"
    assert codes_of(f"{PLY}\n{shop}\n{SHELVES}") == ["rod513"]
    assert codes_of(f"{PLY}\n{SHELVES}") == []


# --- stock --------------------------------------------------------------------------------------------------------


def test_what_is_on_hand_is_used_before_anything_is_bought():
    stock = PLY.replace("price 70", "price 70; on hand 1")
    plan = plan_of(f"{stock}\nrack {{ ply: 62 x 15 }}\n" + loose([(60, 14, 1), (90, 40, 1)]))
    assert plan.stocks[0].bought == 0 and plan.stocks[0].cost == 0


def test_a_small_offcut_is_taken_before_a_large_one():
    plan = plan_of(f"{PLY}\nrack {{ ply: 80 x 40, 31 x 12 }}\n" + loose([(30, 11, 1)]))
    assert [s.source.length for s in plan.stocks[0].sources] == [31]
    assert plan.untouched == (("ply", F(80), F(40), "length"),)


def test_short_stock_says_what_is_missing():
    text = f"{PLY.replace('price 70', 'at most 1')}\n" + loose([(90, 20, 3)])
    plan = plan_of(text)
    assert plan.stocks[0].missing == (("A1", 1),) and not plan.stocks[0].proven
    assert codes_of(text) == ["rod512"]


def test_the_grain_may_run_across_an_offcut():
    plan = plan_of(f"{PLY}\nrack {{ ply: 40 x 31 grain along 31 }}\n" + loose([(30, 11, 3)]))
    source = plan.stocks[0].sources[0]
    assert source.source.grain == "width" and all(laid.turned for laid in source.laid)


def test_boards_too_large_are_errors_once():
    assert codes_of(f"{PLY}\n" + loose([(96, 20, 1)])) == ["rod510"]
    assert codes_of(f"{PLY}\n" + loose([(97, 20, 1)])) == []  # rod277 has said so where it was placed
    assert codes_of(f"{PLY}\nrack {{ ply: 96 x 21 }}\n" + loose([(96, 20, 1)])) == []


def test_nothing_to_cut_is_no_trouble():
    assert cutting(pieces_of(PLY), QUICK).value.stocks == ()


def test_sticks_are_bought_for_the_least_money():
    stock = 'stock lath "1x2" { stick 1-1/2 x 3/4 long 72, 96; price 5 each 72; price 6 each 96 }'
    plan = plan_of(f"{stock}\n" + loose([("47", "1-1/2", 2), ("35", "1-1/2", 2)], "lath"))
    assert plan.stocks[0].cost == 11 and plan.stocks[0].proven


def test_a_narrower_stick_is_ripped_after_it_is_cut_to_length():
    stock = 'stock lath "1x3" { stick 2-1/2 x 3/4 long 96; price 5 }'
    cuts = cuts_of(plan_of(f"{stock}\n" + loose([("40", "1-1/4", 1)], "lath")))
    assert [(cut.kind, cut.setting) for cut in cuts] == [("crosscut", 40), ("rip", F(5, 4))]


# --- what waits, what stays together, what is left -----------------------------------------------------------------


def test_a_board_that_waits_for_the_tape_is_kept_a_blank():
    pieces = of_spec("sewing_wall.rod")
    plan = cutting(pieces, Budget(work=10_000)).value
    held = {piece.mark for piece in pieces.pieces if piece.sized_by}
    laid = [one for stock in plan.stocks for s in stock.sources for one in s.laid]
    assert held and {one.mark for one in laid if one.reserved} == held


def test_a_run_lies_side_by_side_in_its_order():
    text = f"""{PLY}
    size wide 60, high 30, deep 2
    part door of ply {{ facing at front; wide 13; grain high; repeat 4 wide every 14 from left; in sequence }}
    part face of ply {{ facing at back; high 6; grain wide; repeat 3 high every 7 from bottom; in sequence }}
    """
    pieces = pieces_of(text)
    assert len(pieces.runs) == 2
    assert faults(cutting(pieces, QUICK).value, pieces) == []


def test_what_is_left_is_the_rack_of_the_next_job():
    plan = plan_of(f"{PLY}\nrack {{ ply: 20 x 15, 70 x 30 grain along 30 }}\n" + loose([(60, 14, 3), (19, 14, 1)]))
    text = rack_text(plan, Style(False, F(1, 32)))
    rack = pieces_of(f"{PLY}\n{text}\n" + loose([(10, 5, 1)])).joined.placed.project.rack
    boards = sorted((b.stock, b.length, b.width, b.grain) for b in rack for _ in range(b.count))
    assert [(a, b, c) for a, b, c, _ in boards] == sorted((a, b, c) for a, b, c, _ in (*plan.rack, *plan.untouched))
    assert {d for *_, d in boards} <= {"length", "width"}


def test_a_search_called_off_gives_the_best_so_far():
    pieces = of_spec("bookcase.rod")
    plan = cutting(pieces, Budget(work=10**9), stop=lambda: True).value
    assert not plan.finished and faults(plan, pieces) == []


def test_progress_is_told():
    told = []
    cutting(of_spec("sewing_wall.rod"), Budget(work=20_000), progress=told.append)
    assert all(one.stock and one.progress.work >= 0 for one in told)
