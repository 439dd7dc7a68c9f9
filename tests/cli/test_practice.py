"""`setout practice`: the whole table, each row with its source."""

from __future__ import annotations

import re

import pytest

from setout.practice import standard
from setout.strength import all_panels, all_species, figures


def test_every_row_is_printed_with_its_source(shop):
    assert shop.setout("practice") == 0
    names = [*standard().rows, *figures(), *all_species(), *all_panels()]
    for name in names:
        assert re.search(rf"(?m)^{re.escape(name)}: \S.*\n(?:    (?!source).+\n)?    source: \S", shop.out), name
    assert shop.out.count("    source: ") == len(names)


@pytest.mark.parametrize(("name", "value"), [("lift_alone", "51 lb"), ("walnut", "black walnut: "), ("MDF", "MDF: ")])
def test_one_row_by_any_of_its_names(shop, name, value):
    assert shop.setout("practice", name) == 0
    assert value in shop.out and shop.out.count("source: ") == 1


def test_a_name_that_is_no_row_has_a_near_one(shop):
    assert shop.setout("practice", "pocket_spaceing") == 2
    assert "`pocket_spacing`" in shop.err
