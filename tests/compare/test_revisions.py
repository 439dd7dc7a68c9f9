"""The sewing wall revised as a builder would: the change sheets, to be read as he would read them."""

from __future__ import annotations

from pathlib import Path

import pytest
from applying import account, applied, pieces_of
from comparing import compared_plans
from compiling import SPECS
from revisions import REVISIONS, revised

from setout.write.changes import Names, as_text, build

SHEETS = Path(__file__).parents[1] / "golden_changes"
WALL = (SPECS / "sewing_wall.rod").read_text("utf-8")


@pytest.mark.parametrize("name", REVISIONS)
def test_a_change_sheet(name, expected):
    old, new, changes = compared_plans(WALL, revised(WALL, REVISIONS[name]))
    account(old, new, changes)
    if not any("restocked" in change.how for change in changes.boards):
        assert applied(old, changes) == pieces_of(new)
    expected.same(as_text(build(changes, Names("before", name.replace("_", " ")))), SHEETS / f"{name}.txt")


def test_every_sheet_is_of_a_revision(expected):
    expected.nothing_else(SHEETS, {f"{name}.txt" for name in REVISIONS})


def test_a_wall_that_stays_as_it_is():
    *_, changes = compared_plans(WALL, f"# Not a board is another.\n{WALL}")
    assert as_text(build(changes, Names("a", "b"))) == "Sewing wall: a → b\nNothing changes.\n"
