"""cutlist.csv is read back whole, and runs nothing."""

from __future__ import annotations

import csv
from io import StringIO

import pytest
from sample import plan

from setout.write import write
from setout.write.cutlist import COLUMNS
from setout.write.cutlist.build import harmless


def rows():
    text = write(plan(), frozenset({"csv"}))["cutlist.csv"].decode()
    return {row["mark"]: row for row in csv.DictReader(StringIO(text, newline=""))}


def test_a_line_a_piece_with_every_column():
    made = rows()
    assert list(made) == ["A1", "A2", "A3", "B1", "B2", "B3", "B4"]
    assert list(made["A1"]) == [column.name for column in COLUMNS]


def test_sizes_name_their_unit_so_that_no_spreadsheet_reads_a_date():
    assert rows()["B4"]["length"] == "22-9/16 in"
    assert rows()["B4"]["length_mm"] == "573.088"
    assert rows()["A3"]["length"] == "≈14-3/4 in"


def test_a_held_size_is_empty_and_says_what_it_waits_for():
    held = rows()["A2"]
    assert (held["width"], held["width_mm"], held["waits_for"], held["reserve"]) == ("", "", "bed", "12 in x 10 in")


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@a", "\tx", "\rx"])
def test_no_cell_is_a_formula(cell):
    assert harmless(cell) == "'" + cell
    assert harmless("3/4 ply") == "3/4 ply"
