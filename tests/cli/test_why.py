"""`setout why`: the chain from the spec to the number, worked by hand here (common practice, no source)."""

from __future__ import annotations

import pytest


def lines(shop, *words: str) -> list[str]:
    assert shop.setout("why", "boards.rod", *words) == 0
    return shop.out.splitlines()


def test_a_gap_is_the_whole_less_two_thicknesses(shop):
    said = lines(shop, "box.shelf.wide")
    assert said[0].split("  ")[0] == "box.shelf wide 30-9/16 = 30 + 2 - 2 x 23/32"
    assert said[0].rstrip().endswith("boards.rod:9")
    assert any("thickness of ply 23/32" in line and line.endswith("boards.rod:2") for line in said)
    assert any("long 30" in line for line in said)


def test_a_housed_part_is_cut_longer_than_it_shows(shop):
    said = lines(shop, "box.shelf.wide")
    assert any("31-1/16 = 30-9/16 + 1/4" in line for line in said)
    assert any("printed 31-1/16 in" in line for line in said)


def test_where_a_part_stands(shop):
    assert any(line.startswith("box.shelf.bottom 4") for line in lines(shop, "box.shelf.high"))


def test_all_axes_when_none_is_named(shop):
    said = "\n".join(lines(shop, "box.left_side"))
    for word in ("wide 23/32", "high 20", "deep 12"):
        assert f"box.left_side {word}" in said


def test_a_loose_part(shop):
    said = lines(shop, "spare")
    assert any(line.startswith("spare long 30") for line in said)
    assert any(line.startswith("spare wide 11-1/4") for line in said)


def test_the_settings_of_this_run_count(shop):
    assert any(line.startswith("spare long 33") for line in lines(shop, "spare", "--set", "long=33"))


def test_the_end_of_a_path_or_a_mark_will_do(shop):
    whole = lines(shop, "box.shelf")
    assert lines(shop, "shelf") == whole
    shop.setout("build", "boards.rod", "--format", "csv")
    marks = [line.split()[0] for line in (shop.folder / "boards.marks").read_text().splitlines() if " cut " in line]
    assert whole in [lines(shop, mark) for mark in marks]


@pytest.mark.parametrize("asked", ["shelv", "box.shelf.wide.wide", "", ".", "wide", "\x1b[2J"])
def test_an_unknown_part_is_wrong_usage(shop, asked):
    assert shop.setout("why", "boards.rod", asked) == 2
    assert shop.err and "\x1b" not in shop.err


def test_the_nearest_name_is_offered(shop):
    assert shop.setout("why", "boards.rod", "box.shelv") == 2
    assert "box.shelf" in shop.err


def test_a_size_that_waits_says_for_what(shop):
    with (shop.folder / "boards.rod").open("a") as spec:
        spec.write("part filler of ply { level at bottom; deep 10 from front; wide gap from box.right }\n")
    said = lines(shop, "filler.wide")
    assert "  waits for gap: from 20 in to 30 in" in said
    assert "  printed 25 in" in lines(shop, "filler.wide", "--set", "gap=25")


def test_a_place_that_waits_says_for_what(shop):
    with (shop.folder / "boards.rod").open("a") as spec:
        spec.write("part ledge of ply { level at bottom + gap; wide 10 from right - 10; deep 6 to back }\n")
    assert "  waits for gap: from 20 in to 30 in" in lines(shop, "ledge.high")


def test_equal_openings_are_added_up_not_taken_apart(shop):
    """(19-9/32 - 4-23/32 - 2 x 23/32) / 3 = 4-3/8, on top of 4-23/32."""
    spec = shop.folder / "boards.rod"
    wide = "wide between left_side and right_side; deep 2 from front"
    more = f"part rack of ply {{ level; {wide}; repeat 2 between shelf and cap }}"
    cap = f"part cap of ply {{ level at top; {wide} }}"
    spec.write_text(spec.read_text().replace("  joint shelf", f"  {cap}\n  {more}\n  joint shelf"))
    total = next(line for line in lines(shop, "box.rack.1.high") if line.startswith("box.rack.1.bottom"))
    assert total.split("  ")[0] == "box.rack.1.bottom 9-3/32 = 4-23/32 + 4-3/8"
