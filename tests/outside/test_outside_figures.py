"""Published figures that the product leans on: screws, and what the sheet of cautions says.

Not here because they stand elsewhere: screw diameters by gauge and lead holes (tests/join/test_fasteners.py), order
against networkx (tests/plan), contacts and overlaps against shapely (tests/join/test_contacts.py).
"""

from __future__ import annotations

import re
from fractions import Fraction as F
from pathlib import Path

import pytest
from compiling import compiled, sound
from taping import inch

from setout.join.methods.names import screw_diameter
from setout.practice import standard
from setout.units import Style
from setout.write import write
from setout.write.facts.sizes import diagonal


@pytest.mark.parametrize(("gauge", "diameter"), [(0, ".060"), (8, ".164"), (10, ".190"), (20, ".320")])
def test_screw_diameters_as_published(gauge, diameter):
    """ASME B18.6.1, D = 0.060 + 0.013 N: the four gauges of which the printed size was read (section 5, row R)."""
    assert screw_diameter(standard(), gauge) == F(diameter)


@pytest.mark.parametrize(("gauge", "root"), [(6, ".113"), (8, ".131"), (10, ".152"), (12, ".171"), (14, ".196")])
def test_root_diameters(gauge, root):
    """NDS 2018, Appendix L (section 5, row M: from memory)."""
    assert standard().nearest("screw_root", F(gauge)) == F(root)


def test_screws_keep_ten_diameters_from_the_end():
    """NDS commentary, end distance with holes bored beforehand (section 5, row M: from memory)."""
    gauges = {int(value) for _, value in standard().rows["screw_gauge"].steps} | {10}
    assert all(standard().value("screw_first") >= 10 * screw_diameter(standard(), gauge) for gauge in gauges)


def test_the_diagonal_of_a_sheet():
    """48 x 96 in: 107.331 in (section 7, row D)."""
    shown = diagonal(F(48), F(96), Style(False, F(1, 64)))
    assert (shown.text, shown.rounded) == ("107-21/64", True)
    assert abs(inch("107-21/64") - F("107.331")) < F(1, 128)


@pytest.fixture(scope="module")
def cautions() -> str:
    """The sheet of cautions of the cabinet, as words."""
    plan = sound((Path(__file__).parent / "cabinet.rod").read_text("utf-8"))
    return words(plan)


def words(plan) -> str:
    page = write(plan, frozenset({"html"}))["packet.html"].decode()
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", page[page.index("<h2>Cautions</h2>") :]))


@pytest.mark.parametrize(
    "figure",
    [
        "51 lb (23 kg)",  # NIOSH 94-110: load constant 51 lb, 23 kg (section 9, row R)
        "15 mg/m³ total and 5 mg/m³ respirable (OSHA), 1 mg/m³ advised (NIOSH",  # section 9, row R
        "within 1/4 in of the stock",  # 29 CFR 1910.213: hood to stock (section 9, row R)
        "within 1/2 in of the blade",  # the same: spreader to blade
    ],
)
def test_cautions_give_the_published_figures(cautions, figure):
    assert figure in cautions


def test_a_pound_in_kilograms():
    """0.45359237 kg (section 8, row R): 51 lb are 23.13 kg, printed as 23."""
    assert round(F("51") * F("0.45359237")) == 23 and standard().value("lift_alone") == 51


TALL = """project "Rack" {{ units inch }}
stock ply "3/4 plywood" {{ sheet 96 x 48 x 3/4; grain along 96 }}
size wide 30, high 40, deep 12
part left_side of ply {{ upright at left; high {high} from bottom; grain high }}
part right_side mirrors left_side
part shelf of ply {{ level at bottom; wide between left_side and right_side }}
joint shelf to left_side, right_side {{ glue }}
"""


@pytest.mark.parametrize(("high", "told"), [("26-31/32", False), ("27", True)])
def test_tipping_over_is_told_from_27_inches(high, told):
    """ASTM F2057-23, 16 CFR 1261: free-standing, 27 in and up (section 9, row R)."""
    plan = compiled(TALL.format(high=high)).value
    assert ("at least 27 high and not joined to a wall" in words(plan)) == told
