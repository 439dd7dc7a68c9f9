"""What is said of an opening that something stands in, or that more was put in than it holds."""

from __future__ import annotations

import pytest
from compiling import compiled
from drawer_specs import case

PIN = 'hardware pin "pin" { hole 5mm depth 10mm }\n'
RAIL = "part rail of ply { facing at front; wide between left_side and right_side; high 2 to lid.bottom }"
CLEAT = "part cleat of ply { level at floor.top + 6; wide between left_side and right_side; deep 2 to back }"
ITEM = 'item "machine" 10 x 10 x 10 in bay'


def told(text: str) -> dict[str, str]:
    return {d.code: d.help for d in compiled(text).diagnostics if d.severity.name == "ERROR"}


@pytest.mark.parametrize(
    ("inside", "proposed"),
    [
        (f"{RAIL}; {ITEM}", "`high from … to rail.bottom`"),
        (f"{CLEAT}; {ITEM}", "`deep from front to cleat.front`"),
    ],
)
def test_an_opening_is_cut_back_where_it_loses_least(inside, proposed):
    assert told(case(inside, deep=23))["rod301"] == f"end the opening at that part: {proposed}"


@pytest.mark.parametrize(
    ("clauses", "code", "help"),
    [
        ("count 40", "rod264", "32 at most stand in it, with nothing between them"),
        ("count 30; pins pin every 32mm from bottom + 3", "rod264", "13 at most stand in it, each at a hole of"),
        ("count 2; pins pin every 32 from bottom + 3", "rod272", "was `32mm` meant?"),
        ("count 2; pins pin every 20 from bottom + 3", "rod272", "was `20mm` meant?"),
        ("count 2; pins pin every 19-1/2 from bottom + 3", "rod272", "say a smaller one"),
    ],
)
def test_shelves_that_don_t_fit_are_told_how_many_do(clauses, code, help):
    found = told(PIN + case(f"shelves in bay of ply {{ {clauses} }}"))
    assert set(found) == {code} and found[code].startswith(help)


def test_as_many_shelves_as_are_told_to_fit_do():
    shelves = "shelves in bay of ply { count COUNT; pins pin every 32mm from bottom + 3 }"
    fit, more = (PIN + case(shelves.replace("COUNT", count)) for count in ("13", "14"))
    assert told(fit) == {} and set(told(more)) == {"rod264"}
