"""Lengths: the factors against two outside sources, and printing rounded once."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setout.units import Style, drilled, exact, inches_per, known_units, printed, said, say, sunk

INCH = Style(False, F(1, 32))
MM = Style(True, F(5, 127))
lengths = st.fractions(min_value=-500, max_value=500, max_denominator=10**6)
styles = st.sampled_from([INCH, MM, Style(True, F(5, 254)), Style(False, F(1, 64)), Style(True, F(1, 32))])

# NIST SP 811 (2008), appendix B.8: inch, foot and yard in metres, all of them exact.
SP_811_METRES = {"in": "0.0254", "ft": "0.3048", "yd": "0.9144", "mm": "0.001", "cm": "0.01", "dm": "0.1", "m": "1"}


def test_every_unit_agrees_with_nist_sp_811():
    assert {u: inches_per(u) * F("0.0254") for u in known_units} == {u: F(m) for u, m in SP_811_METRES.items()}


def test_every_unit_agrees_with_pint():
    registry = pytest.importorskip("pint").UnitRegistry(non_int_type=F)
    for unit in known_units:
        # "inch" spelled out: "in" is a word of pint's own expression language.
        name = "inch" if unit == "in" else unit
        assert registry.Quantity(F(1), name).to("inch").magnitude == inches_per(unit)


def test_an_unknown_unit_is_a_key_error():
    with pytest.raises(KeyError):
        inches_per("furlong")


@pytest.mark.parametrize(
    ("value", "style", "text"),
    [
        (F(361, 16), INCH, "22-9/16 in"),
        (F(0), INCH, "0 in"),
        (F(-3, 4), INCH, "-3/4 in"),
        (F(-45, 2), INCH, "-22-1/2 in"),
        (F(1, 64), INCH, "≈1/32 in"),  # half-way goes up
        (F(-1, 64), INCH, "≈0 in"),
        (F(1, 65), INCH, "≈0 in"),
        (18 * F(5, 127), MM, "18 mm"),
        (F(23, 32), MM, "≈18 mm"),
        (F(45, 2), Style(True, F(5, 254)), "571.5 mm"),
        (F(45, 2), Style(True, F(1, 32)), "571.5 mm"),
        (F(5, 127) / 3, Style(True, F(5, 127) / 3), "1/3 mm"),
    ],
)
def test_a_length_prints(value, style, text):
    assert said(value, style) == text
    assert say(value, style) == text.rsplit(" ", 1)[0]


@pytest.mark.parametrize(
    ("value", "drill", "hole"),
    [
        (5 * F(5, 127), "5 mm", "5 mm"),
        (F(15, 2) * F(5, 127), "7.5 mm", "7.5 mm"),
        (F(127, 2) * F(5, 127), "2-1/2", "2-1/2"),  # 63.5 mm, and exact in inches
        (F(11, 64), "11/64", "≈3/16"),
        (F(33, 10) * F(5, 127), "≈1/8", "≈1/8"),
    ],
)
def test_what_is_drilled_prints_as_the_bit_is_sold(value, drill, hole):
    style = Style(False, F(1, 16))
    assert [p.text if p.exact else f"≈{p.text}" for p in (drilled(value, style), sunk(value, style))] == [drill, hole]


def test_a_metric_job_has_its_bits_in_tenths():
    assert [drilled(value, MM).text for value in (5 * F(5, 127), F(11, 64))] == ["5", "4.4"]


@given(lengths, styles)
def test_printing_rounds_once_to_the_mark_and_owns_up(value, style):
    p = printed(value, style)
    assert (value + p.error) % style.mark == 0
    assert -style.mark / 2 < p.error <= style.mark / 2
    assert p.exact == (p.error == 0) == (not say(value, style).startswith("≈"))


@given(lengths)
def test_the_exact_text_says_the_very_number(value):
    body = exact(value).removeprefix("-")
    whole, dash, part = body.partition("-")
    assert (F(whole) + F(part) if dash else F(whole)) == abs(value)
    assert exact(value).startswith("-") == (value < 0)
