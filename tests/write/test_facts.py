"""What documents share: folded paths, printed sizes, totals."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from sample import plan

from setout.units import Style
from setout.write.facts.paths import Where, fold, ranges
from setout.write.facts.sizes import Count, bought, decimal, diagonal, length
from setout.write.facts.totals import totals

INCH = Style(False, F(1, 32))
MM = Style(True, F(5, 127))


def test_owners_with_the_same_parts_stand_together():
    places = [("a", "side"), ("b", "side"), ("b", "rail"), ("c", "side"), ("c", "rail"), ("", "lid")]
    assert fold(places) == (Where(("a",), ("side",)), Where(("b", "c"), ("side", "rail")), Where((), ("lid",)))


def test_members_of_a_repeat_are_a_range():
    assert ranges(["shelf.1", "shelf.2", "shelf.3", "shelf.7", "rail"]) == ("shelf 1–3, 7", "rail")
    assert ranges(["big_bay.drawer.1", "big_bay.drawer.2"]) == ("big bay drawer 1, 2",)


@pytest.mark.parametrize(
    ("a", "b", "style", "text"),
    [
        (F(96), F(48), INCH, "107-11/32"),  # check-values section 7, row D: 107.331
        (F(3), F(4), INCH, "5"),
        (F(24), F(30), INCH, "38-13/32"),
        (F(96), F(48), MM, "2726"),
    ],
)
def test_diagonal_to_the_mark(a, b, style, text):
    assert diagonal(a, b, style).text == text


def test_only_an_exact_diagonal_is_not_rounded():
    assert not diagonal(F(3), F(4), INCH).rounded
    assert diagonal(F(1), F(1), INCH).rounded


@pytest.mark.parametrize(
    ("value", "error"), [(F(90, 127), "−0.010"), (F(1, 5), "+0.013"), (F(1, 10**6), "+under 0.001")]
)
def test_a_rounded_size_says_by_how_much(value, error):
    shown = length(value, INCH)
    assert shown.rounded and shown.error == error


def test_decimals_round_half_up_without_floats():
    assert [decimal(F(n, 8), 2) for n in (1, 3, 5)] == ["0.13", "0.38", "0.63"]
    assert decimal(F(1, 2), 0) == "1"
    assert decimal(F(1, 1000), 1) == "0.0"


def test_totals_of_the_sample():
    t = totals(plan())
    assert (t.pieces, t.boards) == (7, 24)
    ply, lath = t.materials
    area = 60 * 12 + 12 * 10 + 4 * 30 * 12 + 2 * F(369, 16) * 12 + 2 * F(361, 16) * 12
    assert (ply.boards, ply.area, ply.least) == (10, area, 1)
    assert lath.least == 3  # 14 of 14-3/4 in: 206.6 in, sticks of 96 in
    assert [(b.kind, b.count) for b in t.bores] == [("pocket", Count(8, 8))]
    assert [(f.kind, f.gauge, f.length, f.count.low) for f in t.fasteners] == [("pockets", 8, F(5, 4), 8)]
    assert t.glue == 4 * 12 * F(23, 32)


def test_a_dowel_made_in_millimetres_is_bought_by_them_in_every_job():
    eight, half = 8 * F(5, 127), F(1, 2)
    assert [bought(one, style).text for one in (eight, half) for style in (INCH, MM)] == [
        "8 mm", "8 mm", "1/2", "1/2 in (13 mm)"
    ]  # fmt: skip
