"""Buy list, drawers, installing, weights: the data of their pages."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from fractions import Fraction as F
from importlib.resources import files

import jsonschema
import pytest
from compiling import SPECS, compiled

from setout.write import assemblies, buy_list, cautions, drawers, installing, pieces, weights
from setout.write.drawings import drawings
from setout.write.facts import facts
from setout.write.job import build as job
from setout.write.render import render

WEIGHED = """
project "Two cases" { units inch; mark to 1/32 }
stock ply "3/4 birch plywood" { sheet 96 x 48 x 23/32; grain along 96; price 68; panel "birch-faced plywood" }
stock oak "1x8 oak" { stick 7-1/4 x 3/4 long 72; species "white oak" }
hardware tape "birch tape" { edging 13/16 x 1/32 long 300; price 9 }
room "Hall" { size wide 80, high 96, deep 100; studs every 16 from left + 3 }
assembly case "Case" (w = 40, h = 30) {
  size wide w, high h, deep 12
  part left_side of ply { upright at left; grain high; band front with tape }
  part right_side mirrors left_side
  part shelf of ply { level at top - 6; wide between left_side and right_side; band front with tape; load 90 }
  part nailer of ply { facing at back; high 4 from bottom; wide between left_side and right_side }
  part apron of oak { across facing; at front, bottom; wide between left_side and right_side }
  joint shelf to left_side, right_side { dado depth 1/4; glue }
  joint nailer, apron to left_side, right_side { pockets on front }
}
place case as low { at left, bottom, back }
place case (w = 30) as tall { wide from low.right + 1; at back; bottom at 44 }
joint tall to room.back { screws into studs; only face }
"""


def about(text: str):
    plan = compiled(text).value
    assert plan is not None
    return facts(plan, "00000000")


@pytest.fixture(scope="module")
def sewing():
    return about((SPECS / "sewing_wall.rod").read_text("utf-8"))


@pytest.fixture(scope="module")
def pantry():
    return about((SPECS / "pantry_pullouts.rod").read_text("utf-8"))


@pytest.fixture(scope="module")
def weighed():
    return about(WEIGHED)


def test_the_buy_list_adds_up_and_says_what_has_no_price(sewing):
    sheet = buy_list.build(sewing)
    rows = [row for counter in sheet.counters for row in counter.rows]
    assert sum(F(row.cost) for row in rows if row.cost) == F(sheet.total)
    assert sheet.unpriced == sum(1 for row in rows if row.packs and not row.price) > 0
    assert [c.kind for c in sheet.counters] == ["boards", "hardware", "fasteners", "glue"]
    slides = next(row for row in rows if row.title == "side-mount slides, 20 in")
    assert (slides.packs, slides.pairs, slides.cost) == (8, True, "112.00")


def test_a_schedule_goes_from_opening_to_box_to_front(sewing):
    """Clearance 1/2 a side, slides' lower edge 1/4 above the front's: worked out by hand from the spec."""
    bank = drawers.build(sewing, {}).banks[0]
    assert bank.names == ("left base bay",)
    assert [x.text for x in bank.opening] == ["22-9/16", "23-5/16", "21-25/32"]
    top = bank.rows[0]
    assert [x.text for x in top.front.sizes] == ["22-7/16", "4"]
    assert [x.text for x in top.box] == ["21-9/16", "3-1/2", "20"]
    assert [(row.number, row.front.low.text, row.slide.text) for row in bank.rows] == [
        (1, "19-1/4", "19-1/2"),
        (2, "15-3/16", "15-7/16"),
        (3, "9-1/8", "9-3/8"),
        (4, "1/16", "5/16"),
    ]
    assert sorted(b.size.text for b in bank.blocks) == sorted(row.slide.text for row in bank.rows)


def test_dummies_trays_and_packers(pantry):
    framed, lower, upper = drawers.build(pantry, {}).banks
    assert sum(n for _, n in framed.packers) == 6
    assert (lower.rows[2].box, lower.rows[2].front is None) == ((), False)
    assert [row.front for row in upper.rows] == [None, None]


def test_doors_pins_and_what_is_kept(sewing):
    made = drawers.build(sewing, {})
    (door,), (bay,), (kept,) = made.doors, made.shelves, made.kept
    assert [x.text for x in door.cups] == ["3-1/2", "13-9/16"]
    assert (len(bay.pins), bay.every is not None) == (11, True)
    assert (kept.title, [x.text for x in kept.spare]) == ("serger", ["8-9/16", "1", "5-25/32"])


def test_a_job_without_openings_has_no_drawers_page(weighed):
    assert drawers.build(weighed, {}) is None


def test_places_count_from_wall_and_floor_in_the_order_of_installing(weighed):
    made = installing.build(weighed, {})
    low, tall = sorted(made.units, key=lambda unit: unit.name)
    assert [x.text for x in (tall.left, tall.right, tall.under, tall.over)] == ["41", "71", "44", "74"]
    assert (low.on_floor, low.walls, tall.walls) == (True, (), ("back",))
    assert [(d.first, d.second, d.clear.text) for d in made.distances] == []
    assert ("44", "under", ("tall",)) in [(x.height.text, x.edge, x.names) for x in made.levels]


def test_wall_screws_land_on_studs_and_come_with_the_caution(weighed):
    made = installing.build(weighed, {})
    (tall,) = (unit for unit in made.units if unit.name == "tall")
    (fixing,) = tall.fixings
    assert {x.text for x in fixing.along} <= {x.text for x in made.studs} == {"3", "19", "35", "51", "67"}
    assert [e.names for e in made.estimates] == [("tall",)]
    assert "Local codes and licensed practice govern" in made.caution


@pytest.mark.parametrize("name", sorted(path.name for path in SPECS.glob("*.rod")))
def test_nobody_lifts_more_than_the_pages_advise(name):
    """Weights, Installing and Cautions, of every spec."""
    found = about((SPECS / name).read_text("utf-8"))
    page, lifts = weights.build(found), {one.path: one for one in found.plan.inspected.lifts}
    for one in lifts.values():
        advised = 51 if one.recommended is None else max(one.recommended, 10)
        assert one.weight is None or one.weight <= (advised if one.people == 1 else 51 * one.people)
    assert page is None or all(row.people >= 1 for row in page.lifts if row.weight)
    placed = installing.build(found, {})
    for unit, carried in zip(placed.units if placed else (), found.carried):
        assert unit.people == lifts[carried.path].people
    whole = [one for one in lifts.values() if one.kind == "sheet" and max(one.sizes) > 50]
    assert cautions.build(found).sheets == bool(whole) and all(one.people > 1 for one in whole)


def test_what_is_hung_high_takes_two_long_before_it_is_as_heavy_as_one_may_lift(sewing):
    people = {unit.name: unit.people for unit in installing.build(sewing, {}).units}
    assert [people[name] for name in ("right upper", "high row", "A3 fabric top", "fabric case")] == [2, 2, 1, 3]


def test_the_worst_sag_comes_first_with_what_mends_it(weighed):
    made = weights.build(weighed)
    worst = made.sags[0]
    assert (worst.load, worst.said, worst.where[0].names) == ("90", True, ("shelf",))
    found = next(s for s in weighed.plan.inspected.sags if s.board == "low.shelf")
    assert worst.too_much == found.too_much
    assert bool(worst.mends) == found.too_much
    assert (made.held, made.held_by) == (("tall",), ())
    assert {m.species for m in made.moves} == {"white oak"}
    assert all(known.source for known in made.stocks)


def test_banded_edges_stand_on_the_cut_list(weighed):
    rows = [row for table in pieces.build(weighed).tables for row in table.rows if row.banded]
    assert {(b.title, b.long, b.short, b.added) for row in rows for b in row.banded} == {("birch tape", 1, 0, False)}
    assert sum(row.count for row in rows) == 6


def test_banded_edges_are_named_on_the_drawings(weighed):
    made = drawings(weighed, (), lambda doing: "")
    shelf = weighed.mark_of["low.shelf"]
    side = weighed.mark_of["low.left_side"]
    assert "Banded: front edge" in made.pieces[side].svg
    assert shelf not in made.pieces or "Banded" in made.pieces[shelf].svg


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_the_room_is_drawn_within_the_page(paper):
    found = about(WEIGHED.replace("mark to 1/32", f"mark to 1/32; paper {paper}"))
    views = installing.room_views(found)
    assert set(views) == {"front", "top"}
    assert all(view.width <= found.width and view.height <= found.height / 2 for view in views.values())


def test_what_goes_into_the_openings_is_in_the_job_file(sewing):
    made = json.loads(job(sewing.plan).text)
    schema = json.loads((files("setout.write.job") / "schema.json").read_text("utf-8"))
    jsonschema.validate(made, schema, cls=jsonschema.Draft202012Validator)
    assert sum(len(bank["drawers"]) for bank in made["banks"]) == 15
    assert (len(made["doors"]), len(made["shelves"]), made["items"][0]["title"]) == (1, 1, "serger")


def test_hardware_of_a_kind_is_one_line_on_the_assembly(sewing):
    sheets = assemblies.build(sewing, assemblies.groups(sewing), {}).sheets
    chest = next(sheet for sheet in sheets if sheet.names == ("left base",))
    (slides,) = chest.hardware
    assert (slides.count, slides.pairs, [face for _, face in slides.on]) == (4, True, ["right", "left"])


def test_the_buy_list_is_a_table_too(sewing):
    made = buy_list.build(sewing)
    rows = list(csv.DictReader(io.StringIO(buy_list.table(made), newline="")))
    assert list(rows[0]) == list(buy_list.COLUMNS)
    assert len(rows) == sum(len(counter.rows) for counter in made.counters)
    assert sum(F(row["cost"]) for row in rows if row["cost"]) == sewing.plan.buying.total


def test_the_page_of_weights_speaks_of_one_thing_as_one_and_of_drawers_where_there_are_some(weighed):
    made = weights.build(weighed)
    one, several = (
        render("weights/page.html.j2", d=replace(made, light=n, drawers=n > 1), metric=True)
        for n in (1, 2)
    )
    assert f"1 more thing is lighter than {made.light_from}. " in one and "A climbing child can bring" in one
    assert f"2 more things are lighter than {made.light_from} each. " in several
    assert "A climbing child or a drawer pulled out can bring" in several
    assert not made.drawers and not made.doors


def test_a_row_that_stands_on_another_is_counted_with_it_and_the_page_says_so(sewing):
    """The high row was in no estimate: it rests on the low one, which was taken for standing."""
    made = {one.names: one for one in installing.build(sewing, {}).estimates}
    low, high = made["low row",], made["high row",]
    assert "high row" in low.carried and low.twice and "low row" not in high.carried
    hung = {one.units: one for one in sewing.plan.inspected.hung}
    both = hung["low_row",].weight, hung["low_row",].contents
    apart = sewing.plan.inspected.weights
    assert both[0] == apart["low_row"] + apart["high_row"] + apart["upper_trim"]
    assert both[1] == 2 * hung["high_row",].contents


def test_what_no_screw_holds_to_the_wall_is_not_said_to_be_held_by_one(sewing):
    made = weights.build(sewing)
    assert made.held == ("fabric case", "left upper", "right upper", "high row", "low row")
    assert [(one.names, one.through) for one in made.held_by] == [(("left base", "right base"), ("worktop", "cleat"))]


def test_what_is_fixed_to_neither_wall_nor_floor_says_to_what(sewing):
    made = {unit.name: unit for unit in installing.build(sewing, {}).units}
    on = {"A1 worktop": ("left base", "right base", "A6 cleat", "A2 worktop edge"), "A3 fabric top": ("fabric case",)}
    for name, others in on.items():
        assert set(made[name].others) == {made[other].number for other in others}
        assert not made[name].walls and not made[name].on_floor
