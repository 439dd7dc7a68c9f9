"""Arithmetic on values: exact, and watchful of dimensions."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setout.source import Span
from setout.values import CONDITION, LIMIT, Mismatch, Trace, Value, apply, condition, count, length, plain, stretched

AT = Span("t.rod", 0, 1)
INCH, MM = Fraction(1), Fraction(5, 127)  # 1 in = 25.4 mm exactly (NIST SP 811, appendix B.8)
amounts = st.fractions(-1000, 1000, max_denominator=1000)
steps = st.fractions(Fraction(1, 64), 10, max_denominator=64)


def value(amount, dim: int, flex=None, held=()) -> Value:
    amount = Fraction(amount)
    return Value(amount, dim, flex, Trace("literal", str(amount), amount, dim), frozenset(held))


def bare(amount, unit=INCH) -> Value:
    return value(amount, 0, unit)


def inches(amount, held=()) -> Value:
    return value(amount, 1, None, held)


def do(op: str, *args: Value) -> Value:
    made = apply(op, args, AT)
    assert isinstance(made, Value), made.kind
    return made


def refused(op: str, *args: Value) -> str:
    made = apply(op, args, AT)
    assert isinstance(made, Mismatch)
    return made.kind


@given(amounts, amounts)
def test_sums_and_differences_are_exact(a, b):
    assert do("+", inches(a), inches(b)).amount == a + b
    assert do("-", do("+", inches(a), inches(b)), inches(b)).amount == a


@given(amounts, amounts.filter(bool))
def test_what_is_divided_and_multiplied_again_comes_back(a, b):
    back = do("*", do("/", inches(a), bare(b)), bare(b))
    assert (back.amount, back.dim) == (a, 1)


@given(st.integers(0, 3), st.integers(0, 3), amounts.filter(bool), amounts.filter(bool))
def test_dimensions_add_in_products_and_subtract_in_quotients(m, n, a, b):
    product = apply("*", (value(a, m), value(b, n)), AT)
    quotient = apply("/", (value(a, m), value(b, n)), AT)
    assert (product.dim if isinstance(product, Value) else product.kind) == (m + n if m + n <= 3 else "product")
    assert (quotient.dim if isinstance(quotient, Value) else quotient.kind) == (m - n if m >= n else "quotient")


@given(amounts, amounts)
def test_a_bare_number_beside_a_length_is_one_in_its_own_files_unit(a, b):
    assert do("+", inches(a), bare(b, MM)).amount == a + b * MM
    assert do("max", bare(a, MM), inches(b)).amount == max(a * MM, b)


@given(amounts, steps)
def test_rounding_reaches_a_multiple_of_the_step_and_half_goes_up(x, step):
    low, near, high = (do(op, inches(x), inches(step)).amount for op in ("floor", "round", "ceil"))
    assert low <= x <= high and high - low in (0, step)
    assert all((v / step).denominator == 1 for v in (low, near, high))
    assert near == (high if x - low >= step / 2 else low)


@given(st.sampled_from(["<", "<=", ">", ">=", "=", "!="]), amounts, amounts)
def test_a_comparison_is_a_condition(op, a, b):
    made = do(op, inches(a), inches(b))
    expected = {"<": a < b, "<=": a <= b, ">": a > b, ">=": a >= b, "=": a == b, "!=": a != b}[op]
    assert (made.dim, bool(made.amount)) == (CONDITION, expected)


def test_a_plain_ratio_is_no_length_but_a_bare_number_is():
    ratio = do("/", inches(12), inches(4))
    assert refused("+", inches(1), ratio) == "clash"
    assert length(ratio, AT).kind == "not_length"
    assert length(bare(3, MM), AT).amount == 3 * MM
    assert do("/", bare(24), inches(4)).amount == 6


def test_areas_stay_areas():
    area = do("*", inches(2), inches(3))
    assert area.dim == 2
    assert length(area, AT).kind == "not_length"
    assert refused("+", area, inches(1)) == "clash"


def test_bare_numbers_of_two_units_are_counts_until_it_matters():
    total = do("+", bare(2, INCH), bare(3, MM))
    assert (total.amount, total.flex) == (5, None)
    assert do(">", bare(4, INCH), bare(3, MM)).amount == 1  # either way
    assert refused(">", bare(24, INCH), bare(600, MM)) == "mixed"
    assert do("+", bare(0, INCH), bare(3, MM)).flex == MM  # nothing is nothing in any unit


def test_conditions_and_numbers_do_not_mix():
    yes = do("<", bare(1), bare(2))
    assert do("and", yes, do("not", do("not", yes))).amount == 1
    assert refused("+", yes, bare(1)) == "not_number"
    assert refused("or", yes, bare(1)) == "not_condition"
    assert condition(bare(1), AT).kind == "not_condition"


@pytest.mark.parametrize(
    "op, args, kind",
    [
        ("/", (inches(1), inches(0)), "zero"),
        ("*", (bare(LIMIT), bare(2)), "large"),
        ("/", (bare(1), bare(LIMIT * 2 - 1)), "large"),
        ("floor", (inches("45/8"),), "step"),
        ("round", (inches(5), bare(0)), "bad_step"),
        ("min", (inches(5), value(5, 2)), "clash"),
    ],
)
def test_what_cannot_be_worked_out_says_why(op, args, kind):
    assert refused(op, *args) == kind


def test_measures_are_carried_along():
    total = do("+", inches(1, held=["bed"]), do("*", inches(2, held=["niche"]), bare(3)))
    assert total.held == {"bed", "niche"}
    assert count(value(3, 0, INCH, held=["bed"]), AT).kind == "held"
    assert condition(do("<", inches(1, held=["bed"]), inches(2)), AT).kind == "held"


@pytest.mark.parametrize("amount", ["5/2", -1])
def test_a_count_is_a_whole_number(amount):
    assert count(bare(amount), AT).kind == "not_count"
    assert count(inches(2), AT).kind == "not_count"
    assert count(bare(3), AT).amount == 3


def test_money_has_no_unit():
    assert plain(bare("34/5"), AT).amount == Fraction(34, 5)
    assert plain(inches(3), AT).kind == "not_plain"


@given(amounts, amounts)
def test_the_trace_leads_to_the_amount(a, b):
    made = do("+", inches(a), stretched(bare(b, MM)))
    assert made.trace.amount == made.amount == sum(part.amount for part in made.trace.parts)
    assert {part.dim for part in made.trace.parts} == {1}
