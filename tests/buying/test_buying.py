"""The buy list: whole packs, totals that anyone can add up again, nothing bought that is there."""

from __future__ import annotations

import json
from fractions import Fraction as F
from math import ceil

import pytest
from compiling import compiled
from hypothesis import given
from hypothesis import strategies as st

from setout.plan.buying import buying
from setout.plan.buying.packs import packs
from setout.plan.cutting import cutting
from setout.practice import standard
from setout.write import write

SPEC = """\
project "Shop" { units inch }
stock ply "3/4 plywood" { sheet 96 x 48 x 3/4; grain along 96; price 68 }
stock lath "1x2" { stick 1-1/2 x 3/4 long 72, 96; price 5.10 each 72; price 6.80 each 96; on hand 1 of 96 }
stock free "no price" { sheet 96 x 48 x 1/4 }
hardware foot "foot" { price 3.20; pack 4; raises 1; on hand 1 }
hardware pull "pull" { price 7.10; hole 1/8 }
hardware pocket "pocket screws" { serves pockets 1-1/4; box 25; price 4.40; on hand 3 }
hardware glue "wood glue" { serves glue covers 1; price 8.90 }
hardware tape "birch edging" { edging 13/16 x 1/32 long 96; price 11; on hand 1 }
size wide 40, high 40, deep 12
part left_side of ply { upright at left; grain high; band front with tape }
part right_side mirrors left_side
part shelf of ply {
  level; wide between left_side and right_side; repeat 3 every 12 from bottom; band front with tape added
}
part back_panel of free { facing; front at back; proud back }
part strip of lath { size 30 x 1-1/2; count 5 }
joint shelf to left_side, right_side { pockets on bottom; glue }
joint back_panel to left_side, right_side, shelf { brads }
fit 4 foot { under shelf.1; at corners; inset 1 }
fit 2 pull { on shelf.3.top; row along wide; inset 5 }
"""


@pytest.fixture(scope="module")
def plan():
    checked = compiled(SPEC)
    assert checked.value is not None and not checked.failed, [d.message for d in checked.diagnostics]
    return checked.value


@pytest.fixture(scope="module")
def job(plan):
    return json.loads(write(plan, frozenset({"json"}))["job.json"])


def test_the_total_added_up_again_from_the_job_file(job):
    """From boards, fastenings and prices alone; only the shares for spares and waste are taken from the table."""
    share = {name: standard().value(name) for name in ("spare", "glue_waste", "banding_over", "banding_waste")}
    stocks = {s["name"]: s for s in job["stocks"]}
    sold = {h["name"]: h for h in job["catalogue"]}
    pieces = [p for p in job["pieces"] if p["stock"] == "ply"]
    area = sum(F(p["length"]["in"]) * F(p["width"]["in"]) * p["count"] for p in pieces)
    money = ceil(area / (96 * 48)) * F(stocks["ply"]["prices"][0]["price"])
    run = sum(F(p["length"]["in"]) * p["count"] for p in job["pieces"] if p["stock"] == "lath")
    money += (ceil(run / 96) - 1) * F("6.80")
    feet = sum(h["count"] for h in job["hardware"] if h["hardware"] == "foot")
    money += ceil(F(feet - sold["foot"]["on_hand"], 4)) * 4 * F(sold["foot"]["price"])
    money += sum(h["count"] for h in job["hardware"] if h["hardware"] == "pull") * F("7.10")
    pockets = sum(f["count"] for f in job["fastenings"] if f["kind"] == "pockets")
    money += ceil((ceil(pockets * (1 + share["spare"])) - F(3)) / 25) * F("4.40")
    glued = sum(F(f["square_inches"]) for f in job["fastenings"] if f["kind"] == "glue")
    money += ceil(glued * (1 + share["glue_waste"]) / 144) * F("8.90")
    edges = sum(_edge(b, band) + share["banding_over"] for b in job["boards"] for band in b["bands"])
    money += max(0, ceil((edges * (1 + share["banding_waste"]) - 96) / 96)) * 11
    assert F(job["buy"]["total"]) == money


def _edge(board, band) -> F:
    lo, hi = (list(map(F, board["cut_box"][end])) for end in ("lo", "hi"))
    axis = {"left": 0, "right": 0, "bottom": 1, "top": 1, "front": 2, "back": 2}[band["face"]]
    thick = ("wide", "high", "deep").index(board["thickness_axis"])
    return next(hi[k] - lo[k] for k in range(3) if k not in (axis, thick))


def test_what_has_no_price_is_listed_as_such_and_left_out_of_the_total(job):
    lines = job["buy"]["lines"]
    unpriced = {(lines[i]["kind"], lines[i]["name"]) for i in job["buy"]["unpriced"]}
    assert unpriced == {("sheet", "free"), ("brads", "")}
    assert sum(F(line["cost"]) for line in lines if line["cost"] is not None) == F(job["buy"]["total"])


@given(st.fractions(0, 1000), st.fractions(0, 1000), st.fractions(F(1, 10), 500))
def test_packs_are_never_rounded_down(need, on_hand, pack):
    many = packs(need, on_hand, pack)
    assert many * pack + on_hand >= need
    assert many == 0 or (many - 1) * pack + on_hand < need


LOOSE = """\
project "Shelves" { units inch }
stock ply "3/4 plywood" { sheet 96 x 48 x 3/4; grain along 96; price 68 }
RACK
part shelf of ply { size 30 x 11; count 4 }
"""


@pytest.mark.parametrize(
    ("there", "sheets"),
    [("", 1), ("rack { ply: 2 of 61 x 12 }", 1), ("rack { ply: 4 of 31 x 12 }", 0), ("rack { ply: 96 x 48 }", 0)],
)
def test_nothing_is_bought_that_the_rack_covers(there, sheets):
    pieces = compiled(LOOSE.replace("RACK", there)).value.pieces
    bought = buying(pieces, cutting(pieces).value)
    assert sum(line.packs for line in bought.lines if line.kind == "sheet") == (0 if "2 of" in there else sheets)
    assert not any(line.estimate for line in bought.lines)


def test_without_a_cutting_plan_it_says_that_it_guesses(plan):
    assert all(line.estimate == (line.kind in ("sheet", "stick")) for line in plan.buying.lines)


def test_banding_comes_off_the_board_unless_it_is_added(job):
    boxes = {b["path"]: b for b in job["boards"]}
    front = {path: F(b["cut_box"]["lo"][2]) for path, b in boxes.items()}
    assert front["left_side"] == front["right_side"] == F(1, 32) and front["shelf.1"] == 0
    assert F(boxes["left_side"]["box"]["lo"][2]) == 0


def test_banding_is_part_of_what_a_piece_is(job):
    band = {p["mark"]: p["bands"] for p in job["pieces"]}
    mark = {b["path"]: b["mark"] for b in job["boards"]}
    (one,) = band[mark["shelf.1"]]
    assert (one["along"], one["edging"], one["added"]) == ("length", "tape", True)
    plain = compiled(SPEC.replace("; band front with tape added", "")).value.pieces
    with_it = compiled(SPEC).value.pieces
    before = {p.shape for p in plain.pieces}
    changed = {p.shape for p in with_it.pieces} - before
    assert changed and all("band " in shape and " tape added" in shape for shape in changed)


def test_a_register_keeps_the_marks_of_banded_boards():
    from setout.piece import register_text

    first = compiled(SPEC).value.pieces
    text = register_text(first.new_entries)
    again = compiled(SPEC, marks=text)
    assert not again.failed and again.value.pieces.mark_of == first.mark_of and again.value.pieces.new_entries == ()


def test_loose_parts_have_no_edges_to_name():
    checked = compiled(LOOSE.replace("count 4", "count 4; band front with ply").replace("RACK", ""))
    assert [d.code for d in checked.diagnostics] == ["rod218"]
