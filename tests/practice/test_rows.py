"""The table of rules of thumb: every row says what it means and who says so, and none is idle."""

from __future__ import annotations

from fractions import Fraction
from math import cos, radians, tan
from pathlib import Path

import pytest
from compiling import compiled

from setout.practice import standard

PACKAGE = Path(__file__).parents[2] / "compiler" / "setout"
UNITS = {"in", "count", "ratio", "hours", "minutes", "degrees", "lb", "in2"}
ROWS = standard().rows


@pytest.mark.parametrize("name", ROWS)
def test_a_row_has_a_unit_a_meaning_and_a_source(name):
    row = ROWS[name]
    assert row.unit in UNITS and row.means.strip() and row.source.strip()
    assert sum((row.value is not None, bool(row.steps), bool(row.choices))) == 1
    assert all(v > 0 for _, v in row.steps) and all(c > 0 for c in row.choices)


def test_every_row_is_read_by_something():
    code = "\n".join(p.read_text("utf-8") for p in sorted(PACKAGE.rglob("*.py")))
    idle = [name for name in ROWS if not _read(name, code)]
    assert not idle, f"no code reads {idle}"


def _read(name: str, code: str) -> bool:
    """Named outright, or put together: f"{kind}_spacing" with the kind given, f"pocket_{end}" with the end."""
    kind, _, rest = name.partition("_")
    by_kind = f'"{kind}"' in code and f'}}_{rest}"' in code
    by_end = f'f"{kind}_{{' in code and f'"{rest}"' in code
    return f'"{name}"' in code or by_kind or by_end


def test_the_pocket_angle_is_fifteen_degrees():
    assert abs(float(standard().value("pocket_cosine")) - cos(radians(15))) < 0.0005
    assert abs(float(standard().value("pocket_tangent")) - tan(radians(15))) < 0.0005


@pytest.mark.parametrize(
    ("thick", "screw"), [("1/2", "1"), ("5/8", "1"), ("3/4", "5/4"), ("7/8", "3/2"), ("1", "3/2"), ("3/2", "5/2")]
)
def test_pocket_screws_by_thickness(thick, screw):
    """check-values.md section 7 (common practice): 1/2 -> 1, 5/8 -> 1, 3/4 -> 1-1/4, 1 -> 1-1/2, 1-1/2 -> 2-1/2."""
    assert standard().nearest("pocket_screw", Fraction(thick)) == Fraction(screw)


@pytest.mark.parametrize(("thick", "beyond"), [("1/2", "3/8"), ("3/4", "1/2"), ("1", "5/8"), ("3/2", "1")])
def test_pocket_screws_reach_beyond_the_edge(thick, beyond):
    size = Fraction(thick)
    assert standard().nearest("pocket_screw", size) - standard().nearest("pocket_seat", size) == Fraction(beyond)


def test_a_spec_overrides_any_row_by_one_value():
    ones = {"pocket_screw": Fraction(1), "brad_lengths": Fraction(1)}
    mine = standard().overridden({"pocket_spacing": Fraction(6), **ones})
    assert mine.value("pocket_spacing") == 6 and mine.rows["pocket_spacing"].source == "this spec"
    assert mine.nearest("pocket_screw", Fraction(3)) == 1
    assert mine.choices("brad_lengths") == (1,)


ALL_SORTS = """project "All sorts" { units inch }
stock ply "3/4 plywood" { sheet 96 x 48 x 3/4; grain along 96; panel "birch-faced plywood" }
stock lath "1x2" { stick 1-1/2 x 3/4 long 96; species "white oak" }
room { size wide 60, high 90, deep 40; studs every 16 from left + 8 }
assembly box "Box" { size wide 30, high 30, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part floor of ply { level at bottom; wide between left_side and right_side }
  part lid of ply { level at top; wide between left_side and right_side; load 90 }
  part rail of lath { across facing at back; under lid; wide between left_side and right_side }
  part kick of ply { facing at front + 1; on floor; high 3; wide between left_side and right_side }
  joint floor to left_side, right_side { pockets on bottom }
  joint lid to left_side, right_side { dowels; glue }
  joint rail to left_side, right_side, lid { screws }
  joint kick to left_side, right_side, floor { brads } }
place box { at left, back; bottom at 40 }
joint box.rail to room.back { screws into studs }
"""


@pytest.mark.parametrize("value", ["0", "1/100000"])
def test_no_shop_can_set_a_row_so_that_the_compiler_fails(value):
    """Where nothing would be divided by, it is a mistake and said."""
    for name, row in ROWS.items():
        codes = {d.code for d in compiled(f"{ALL_SORTS}practice {{ {name} {value} }}\n").diagnostics}
        assert ("rod201" in codes) == (row.value is None or (value == "0" and row.above_zero)), name
