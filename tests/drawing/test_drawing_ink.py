"""Strokes, words and dimensions."""

from __future__ import annotations

from itertools import pairwise
from xml.etree import ElementTree

import pytest
from drawing_reading import lines
from hypothesis import given
from hypothesis import strategies as st

from setout.drawing.ink.dimension import spread
from setout.drawing.ink.hatch import hatch
from setout.drawing.ink.lettering import shortened, width, wrapped
from setout.drawing.ink.svg import Area, Canvas, num


def test_widths_are_those_of_the_font():
    fonts = pytest.importorskip("fontTools.ttLib")
    package = pytest.importorskip("fontpkg_ibm_plex_sans_condensed")
    for bold, style in ((False, "Regular"), (True, "Bold")):
        font = fonts.TTFont(package.ROOT / "files" / f"IBMPlexSansCondensed-{style}.ttf")
        glyphs, advances = font.getBestCmap(), font["hmtx"]
        for c in "22-15/32 ≈×·–AMQwé…":
            assert width(c, 1000, bold) == advances[glyphs[ord(c)]][0], c


@given(st.text(max_size=60), st.floats(20, 200), st.integers(1, 3))
def test_wrapped_words_fit(text, room, lines):
    out = wrapped(text, room, lines)
    assert len(out) <= lines
    assert all(width(line) <= room for line in out)
    assert width(shortened(text, room)) <= room


@given(st.lists(st.floats(0, 500), min_size=1, max_size=30).map(sorted), st.floats(0, 20))
def test_spread_keeps_its_gaps_and_moves_nothing_without_need(wanted, gap):
    places = spread(wanted, [gap] * (len(wanted) - 1))
    assert all(b - a > gap - 1e-6 for a, b in pairwise(places))
    if all(b - a >= gap for a, b in pairwise(wanted)):
        assert places == pytest.approx(wanted)
    assert sum(places) == pytest.approx(sum(wanted))  # pushed aside as much to the left as to the right


@given(st.floats(-1e4, 1e4))
def test_coordinates_are_short_and_never_minus_nought(value):
    assert num(value) != "-0" and len(num(value).partition(".")[2]) <= 2
    assert float(num(value)) == pytest.approx(value, abs=0.006)


def test_hatching_stays_inside():
    canvas = Canvas()
    hatch(canvas, Area(10, 20, 47, 33))
    hatch(canvas, Area(60, 20, 66, 90), rising=False)
    drawn = lines(canvas.finished("hatched"))
    assert len(drawn) > 20
    for x, y, x2, y2 in drawn:
        assert abs(abs(x2 - x) - abs(y2 - y)) < 0.03
        assert all(
            (10 <= u <= 47 and 20 <= v <= 33) or (60 <= u <= 66 and 20 <= v <= 90) for u, v in ((x, y), (x2, y2))
        )


@given(st.text(max_size=30))
def test_any_text_is_well_formed(text):
    canvas = Canvas()
    canvas.text((0, 0), text)
    ElementTree.fromstring(canvas.finished(text).svg)
