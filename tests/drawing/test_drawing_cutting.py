"""Sheets, offcuts and sticks with what is cut from them."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction as F

import drawing_samples as s
import pytest
from drawing_reading import clashes, lines, rooms, sizes, words
from sawing import MITRE, RAIL, TABLE, Bench

from setout.drawing import sheet, stick
from setout.drawing.cutting.replay import replayed
from setout.drawing.ink.svg import Area
from setout.resolve.model import Stock

PLY = Stock("ply", "plywood", "sheet", F(96), F(48), F(3, 4), "long", (), (), s.HERE)
LATH = Stock("lath", "lath", "stick", None, F(3, 2), F(3, 4), "long", (F(96),), (), s.HERE)


def strips():
    """A break-down, a leftover to keep, ten strips too narrow for words, each cut in two, and waste at their ends."""
    b = Bench("ply 1", PLY, "sheet", 96, 48, number=201)
    b.cut("ply 1", "y", 20, "board ply 1-a", "board ply 1", "break down", RAIL)
    b.cut("ply 1", "y", 12, "board ply 1-b", "offcut c", "rip", TABLE)
    b.cut("ply 1-b", "x", 40, "B1", "board ply 1-b", "crosscut", TABLE)
    b.cut("ply 1-b", "x", 30, "reserved B2", "waste", "crosscut", TABLE)
    for n in range(10):
        b.cut("ply 1-a", "y", 1, f"board ply 1-{n}", "board ply 1-a" if n < 9 else "waste", "rip", TABLE)
    for n in range(10):
        b.cut(f"ply 1-{n}", "x", 60, "B3", "waste", "crosscut", MITRE)
    return b.plan()


def stick_plan():
    b = Bench("lath 1", LATH, "stick", 96, F(3, 2))
    b.cut("lath 1", "x", 40, "C1", "board lath 1", "crosscut", MITRE)
    b.cut("lath 1", "x", 1, "C2", "board lath 1", "crosscut", MITRE)
    b.cut("lath 1", "x", 30, "C3", "offcut a", "crosscut", MITRE)
    return b.plan()


@pytest.mark.parametrize("room", [(490, 300), (370, 230), (340, 205)])
def test_fits_its_room_and_is_legible(room):
    drawing = sheet(strips(), s.INCH, *room)
    assert drawing.width <= room[0] and drawing.height <= room[1]
    assert min(sizes(drawing)) >= 9
    assert not clashes(drawing)
    assert drawing == sheet(strips(), s.INCH, *room)


def test_black_on_white():
    for drawing in (sheet(strips(), s.INCH, 490, 300), stick(stick_plan(), s.INCH, 490, F(96))):
        assert set(re.findall(r'(?:fill|stroke)="([^"]*)"', drawing.svg)) <= {"#000", "#fff", "none"}


@pytest.mark.parametrize("room", [(490, 300), (340, 205)])
def test_every_board_has_its_mark_and_every_cut_its_number(room):
    said = words(sheet(strips(), s.INCH, *room))
    marks = [re.fullmatch(r"(B\d)(?: × (\d+))?", w) for w in said]
    count = {mark: 0 for mark in ("B1", "B2", "B3")}
    for found in filter(None, marks):
        count[found[1]] += int(found[2] or 1)
    assert count == {"B1": 1, "B2": 1, "B3": 10}
    assert sorted(n for w in said for n in cut_numbers(w)) == list(range(201, 225))


def cut_numbers(said: str) -> list[int]:
    """Those in a circle: "207", "215–224", "203, 205"; no size is that large."""
    if not re.fullmatch(r"\d{3}(–\d{3})?(, \d{3}(–\d{3})?)*", said):
        return []
    ends = [part.split("–") for part in said.split(", ")]
    return [n for end in ends for n in range(int(end[0]), int(end[-1]) + 1)]


def test_no_cut_runs_through_a_board():
    plan = strips()
    for line in replayed(plan):
        half = line.cut.kerf / 2
        for laid in plan.laid:
            low, long = (laid.x, laid.length) if line.cut.across == "x" else (laid.y, laid.width)
            start, wide = (laid.y, laid.width) if line.cut.across == "x" else (laid.x, laid.length)
            beside = line.at + half <= low or line.at - half >= low + long
            assert beside or line.end <= start or line.start >= start + wide, (line.cut.number, laid.mark)


def test_a_cut_set_from_the_far_edge_leaves_its_board_there():
    plan = strips()
    first = replace(plan.cuts[0], reference="high", at=F(48) - 20 - F(1, 8))
    swapped = replace(plan, cuts=(first, *plan.cuts[1:2]))
    strip = replayed(swapped)[1]  # made on what remains, which now lies at the low edge
    assert (strip.cut.board, strip.start, strip.end) == ("ply 1", 0, 96)


def test_leftovers_are_hatched_and_waste_is_crossed():
    drawing = sheet(strips(), s.INCH, 490, 300)
    assert {"c", "96 × 15-3/4"} <= set(words(drawing))
    slanting = [line for line in lines(drawing, "0.35") if line[0] != line[2] and line[1] != line[3]]
    assert len(slanting) > 60
    assert lines(drawing, "0.55 3 2")  # the blank's dashes


def test_a_stick_has_its_settings_from_the_left_end():
    drawing = stick(stick_plan(), s.INCH, 490, F(96))
    assert {"40", "41-1/8", "71-1/4", "96"} <= set(words(drawing))
    assert {"C1", "C2", "C3", "a"} <= set(words(drawing))
    assert drawing.width <= 490 and not clashes(drawing) and min(sizes(drawing)) >= 9


def test_sticks_are_drawn_at_the_scale_of_the_longest():
    long, short = stick_plan(), stick_plan()
    short = replace(short, source=replace(short.source, length=F(72)))
    bars = [max(x2 - x for x, _, x2, _ in lines(stick(p, s.INCH, 490, F(96)), "1.4")) for p in (long, short)]
    assert bars[1] / bars[0] == pytest.approx(72 / 96, abs=0.01)


def crowded():
    """Four strips, each cut in four, with numbers of three figures on their short lines."""
    b = Bench("ply 1", PLY, "sheet", 96, 48, number=201)
    b.cut("ply 1", "y", 30, "B1", "board ply 1", "break down", RAIL)
    for n in range(4):
        b.cut("ply 1", "y", 4, f"board ply 1-{n}", "board ply 1" if n < 3 else "waste", "rip", TABLE)
        for k in range(4):
            rest = f"board ply 1-{n}" if k < 3 else "waste"
            b.cut(f"ply 1-{n}", "x", 22 + F(k, 16), f"C{k + 1}", rest, "crosscut", MITRE)
    return b.plan()


@pytest.mark.parametrize("room", [(490, 300), (400, 260)])
def test_every_board_bears_its_sizes_off_the_numbers_of_cuts(room):
    drawing = sheet(crowded(), s.INCH, *room)
    said = " ".join(words(drawing))
    for size in ("22 × 4", "22-1/16 × 4", "22-1/8 × 4", "22-3/16 × 4"):
        assert said.count(size) == 4, size
    numbers = [area for word, area in rooms(drawing) if cut_numbers(word)]
    others = [area for word, area in rooms(drawing) if not cut_numbers(word)]
    rings = [Area(*area.middle, *area.middle).grown(9) for area in numbers]
    assert not [1 for ring in rings for other in others if ring.meets(other.grown(-1.5))]
    assert not [1 for n, ring in enumerate(rings) for other in rings[n + 1 :] if ring.grown(-1).meets(other.grown(-1))]


def test_sizes_that_find_no_room_stand_beside_with_a_line():
    """A board just wide enough for its mark."""
    b = Bench("ply 1", PLY, "sheet", 96, 48, number=201)
    b.cut("ply 1", "x", 3, "board ply 1-a", "B2", "break down", RAIL)
    b.cut("ply 1-a", "y", 4, "B1", "waste", "crosscut", TABLE)
    drawing = sheet(b.plan(), s.INCH, 490, 300)
    said = words(drawing)
    assert "B1" in said and "3 × 4" in said and drawing.aside == 1
