"""The cutting plan on paper and in files."""

from __future__ import annotations

import csv
import json
import re
from dataclasses import replace
from fractions import Fraction as F
from importlib.resources import files
from io import StringIO

import cutting_sample as s
import jsonschema
import pypdfium2
import pytest
import sample
from sawing import TABLE, Bench

from setout.units import Style
from setout.write import write
from setout.write.cutting.alike import Alike, alike
from setout.write.cutting.batches import batches, equals
from setout.write.cutting.cuts import rows
from setout.write.facts.supply import supply

INCH = Style(False, F(1, 32))
PLY, LATH = s.cutting().stocks


@pytest.fixture(scope="module")
def made():
    return write(s.planned(), frozenset({"html", "csv", "json", "svg"}))


@pytest.fixture(scope="module")
def pages(made):
    """The cutting's part of the packet, tags taken out."""
    page = made["packet.html"].decode()
    return page[page.index('id="cutting"') : page.index('id="pieces"')]


def said(html: str) -> str:
    return re.sub(r"\s+", " ", re.sub(r"<[^>]*>", "", re.sub(r"<svg.*?</svg>", "", html, flags=re.S)))


def test_a_source_goes_by_its_stock_in_the_builders_words():
    named = replace(PLY.sources[3], source=replace(PLY.sources[3].source, id="thin_ply 3"))
    one = Alike((named,))
    assert (one.name, one.board("thin_ply 3"), one.board("thin_ply 3-a")) == ("thin ply 3", "thin ply 3", "-a")
    assert Alike((named, named)).board("thin_ply 3") == "thin ply"


def test_sheets_cut_alike_share_a_drawing_and_no_others():
    assert [one.name for one in alike(PLY)] == ["ply offcut 1", "ply 1, 2", "ply 3"]
    turned = replace(PLY.sources[2], laid=tuple(replace(one, turned=True) for one in PLY.sources[2].laid))
    assert len(alike(replace(PLY, sources=(*PLY.sources[:2], turned, PLY.sources[3])))) == 4


def test_a_tick_for_every_cut_and_every_setting(pages):
    cuts = sum(len(plan.cuts) for stock in (PLY, LATH) for plan in stock.sources)
    settings = len(batches(s.cutting(), INCH))
    assert pages.count('class="tick big"') == cuts + settings


def test_batches_come_in_the_order_of_work():
    made = batches(s.cutting(), INCH)
    numbers = [int(n) for batch in made for _, runs in batch.cuts for n in re.findall(r"\d+", runs)]
    assert numbers == sorted(numbers)
    assert sum(batch.count for batch in made) == sum(len(p.cuts) for stock in (PLY, LATH) for p in stock.sources)
    assert made[0].how == "drawing" and made[0].cuts == (("ply 1", "1–3"),)


@pytest.mark.parametrize(
    ("changed", "claim"),
    [
        ({}, "fewest"),
        ({"proven": False, "bound": 2}, "fewer"),
        ({"proven": False, "bound_cost": F(100)}, "cheaper"),
        ({"proven": True, "bound": 2}, "cheapest"),
        ({"missing": (("A1", 1),)}, "short"),
        ({"sources": PLY.sources[:1]}, "nothing"),
    ],
)
def test_no_more_is_claimed_than_is_known(changed, claim):
    assert supply(replace(PLY, **changed), INCH).claim == claim


def test_what_is_said_of_supply(pages):
    text = said(pages)
    assert "3 sheets to buy; no plan can do with fewer than 3." in text
    assert "No place was found for A3 × 2" in text
    assert "A2 waits for bed: a blank of the largest size it may need comes out of ply 3" in text
    assert "Cut 17 is beyond every saw" in text
    assert "ply: 93-3/4 x 10-1/2" in text


def test_a_cut_says_how_it_is_set_and_what_falls_off(pages):
    rows = [said(row) for row in re.findall(r"<tr>(.*?)</tr>", pages, re.S)]
    cut = next(row for row in rows if row.strip().startswith("20"))
    assert re.search(r"table saw ?rip: set fence to 12 ?ply 3 D ?|table saw", cut)
    assert "offcut b, 96 × 8-5/8" in cut


def test_the_job_sheet_says_what_to_take_once(made):
    page = made["packet.html"].decode()
    sheet = said(page[: page.index('id="cutting"')])
    assert "3 sheets of 96 × 48; from the rack 41 × 22-1/2" in sheet and "very least" not in sheet
    without = write(sample.plan(), frozenset({"html"}))["packet.html"].decode()
    assert "At the very least" in without and 'id="cutting"' not in without


def test_a_drawing_for_each_that_is_cut_differently(made):
    drawn = sorted(name for name in made if name.startswith("cutting/"))
    assert drawn == ["cutting/lath_1.svg", "cutting/ply_1.svg", "cutting/ply_3.svg", "cutting/ply_offcut_1.svg"]


def test_the_cut_list_says_where_boards_come_from(made):
    rows = {row["mark"]: row for row in csv.DictReader(StringIO(made["cutlist.csv"].decode(), newline=""))}
    assert rows["B1"]["cut_from"] == "ply offcut 1 x 1; ply 1 x 1; ply 2 x 1"


def test_the_plan_is_in_the_job_exactly(made):
    schema = json.loads((files("setout.write.job") / "schema.json").read_text("utf-8"))
    job = json.loads(made["job.json"])
    jsonschema.validate(job, schema, cls=jsonschema.Draft202012Validator)
    source = job["cutting"]["stocks"][0]["sources"][1]
    assert source["id"] == "ply 1" and source["cuts"][3]["setting"]["in"] == "12"
    assert source["cuts"][7]["off"] == {
        "kind": "piece", "mark": "A1", "copy": 1, "board": None,
        "length": {"in": "60", "mm": 1524}, "width": {"in": "12", "mm": 304.8},
    }  # fmt: skip


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_nothing_is_printed_outside_the_page_or_too_small(paper):
    pdf = pypdfium2.PdfDocument(write(s.planned(paper=paper), frozenset({"pdf"}))["packet.pdf"])
    for page in pdf:
        text = page.get_textpage()
        wide, high = page.get_size()
        for n in range(text.count_rects()):
            left, bottom, right, top = text.get_rect(n)
            assert left > 36 and right < wide - 30 and bottom > 20 and top < high - 20


def test_with_nothing_to_cut_from_the_page_says_what_is_missing():
    bare = replace(PLY, sources=(), missing=(("A1", 1),), proven=False)
    plan = replace(s.planned(), cutting=replace(s.cutting(), stocks=(bare,), settings=(), rack=()))
    page = write(plan, frozenset({"html"}))["packet.html"].decode()
    part = page[page.index('id="cutting"') : page.index('id="pieces"')]
    assert "No place was found for A1 × 1 (60 × 12)" in said(part) and "<h2>Cutting: " not in part


def test_a_cut_that_takes_less_than_the_blade_says_how_much():
    b = Bench("ply 1", sample.PLY, "sheet", 96, 48)
    b.cut("ply 1", "y", 12, "board A", "offcut a", "rip", TABLE)
    b.cut("A", "x", F(96) - F(1, 16), "B1", "", "crosscut", TABLE)
    lasts = [row.last and row.last.text for row in rows(Alike((b.plan(),)), INCH)]
    assert lasts == [None, "1/16"]


def test_boards_of_one_size_and_several_settings_are_named():
    made = equals(s.cutting())
    assert made.sizes >= made.at_one + len(made.others) and all(made.others)


def test_the_marks_of_equal_boards_stand_in_the_order_of_all_marks():
    b = Bench("ply 1", sample.PLY, "sheet", 96, 48)
    b.cut("ply 1", "y", 12, "board A", "board B", "rip", TABLE)
    b.cut("A", "x", 30, "AA1", "board C", "crosscut", TABLE)
    b.cut("C", "x", 30, "Y1", "waste", "crosscut", TABLE)
    b.cut("B", "y", 10, "board D", "waste", "rip", TABLE)
    b.cut("D", "x", 20, "AA2", "board E", "crosscut", TABLE)
    b.cut("E", "x", 20, "AA10", "waste", "crosscut", TABLE)
    made = equals(replace(s.cutting(), stocks=(replace(PLY, sources=(b.plan(),)),), settings=()))
    assert made.others == (("Y1", "AA1"), ("AA2", "AA10"))
