"""Numbers as written on a drawing."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setout.read import read
from setout.read.model import Number
from setout.source import Source
from setout.units import Style, exact, printed


def value_of(text: str):
    return read(Source("spec.rod", f"let a = {text}")).value.statements[0].value


def codes_of(text: str) -> list[str]:
    return [d.code for d in read(Source("spec.rod", f"let a = {text}")).diagnostics]


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("12", F(12), ""),
        ("23-1/4", F(93, 4), ""),
        ("5/8", F(5, 8), ""),
        ("1.5", F(3, 2), ""),
        (".5", F(1, 2), ""),
        ("600mm", F(600), "mm"),
        ("1.2m", F(6, 5), "m"),
        ("13in", F(13), "in"),
        ('5/8"', F(5, 8), "in"),
        ("3ft", F(3), "ft"),
        ("3'", F(3), "ft"),
        ("3'4-1/2\"", F(81, 2), "in"),
        ("3' 4-1/2\"", F(81, 2), "in"),
        ("3'4\"", F(40), "in"),
        ("2yd", F(2), "yd"),
    ],
)
def test_a_number_reads(text, value, unit):
    number = value_of(text)
    assert (number.value, number.unit, number.text) == (value, unit, text)
    assert (number.span.start, number.span.end) == (8, 8 + len(text))


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("23-5/4", "rod120"),
        ("23-4/4", "rod120"),
        ("1/0", "rod121"),
        ("23-1/0", "rod121"),
        ("5furlong", "rod122"),
        ("18 mm", "rod122"),
        ("1e5", "rod122"),
        ("1.5.2", "rod123"),
        ("5/8/2", "rod123"),
        ("3'4", "rod123"),
        ("2-1", "rod114"),
        ("9" * 13, "rod124"),
        ("1/" + "9" * 13, "rod124"),
        ("23½", "rod104"),
        ("½", "rod104"),
    ],
)
def test_a_wrong_number_has_an_error_of_its_own_and_no_other(text, code):
    assert codes_of(text) == [code]


def test_the_help_writes_the_number_that_was_meant():
    (improper,) = read(Source("spec.rod", "let a = 23-5/4")).diagnostics
    (apart,) = read(Source("spec.rod", "let a = 18 mm")).diagnostics
    (unit,) = read(Source("spec.rod", "let a = 18fot")).diagnostics
    assert "24-1/4" in improper.help and "18mm" in apart.help and "`ft`" in unit.help


def test_sizes_without_blanks_are_one_mistake():
    checked = read(Source("spec.rod", "stock ply { sheet 96x48x3/4 }"))
    assert [d.code for d in checked.diagnostics] == ["rod115"]
    assert "96 x 48 x 3/4" in checked.diagnostics[0].help
    assert [v.value for v in checked.value.statements[0].clauses[0].values] == [96, 48, F(3, 4)]


@pytest.mark.parametrize("text", ["w-1/2", "w - 1/2 -w", "w -1", "w- 1", "(w)-1", "- 3", "w-toe"])
def test_a_minus_is_unmistakable(text):
    assert codes_of(text) == ["rod114"]


@given(st.fractions(min_value=0, max_value=999, max_denominator=4096))
def test_a_printed_length_reads_back_as_the_same_length(value):
    number = value_of(exact(value))
    assert isinstance(number, Number) and number.value == value


@given(st.fractions(min_value=0, max_value=999, max_denominator=4096), st.sampled_from([F(1, 32), F(1, 10), F(5, 127)]))
def test_a_rounded_length_reads_back_as_it_was_printed(value, mark):
    metric = mark == F(5, 127)
    p = printed(value, Style(metric, mark))
    number = value_of(p.text + ("mm" if metric else '"'))
    assert number.value * (F(5, 127) if metric else 1) == value + p.error
