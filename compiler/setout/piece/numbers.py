"""Exact numbers and straight-line formulas as the register writes them.

The spelling is the register's own and never changes: a register outlives styles of printing.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from fractions import Fraction

_NUMBER = r"-?(?:\d+-\d+/\d+|\d+/\d+|\d+)"
_TERM = rf" ([+-]) (?:({_NUMBER}) )?([^\W\d]\w*)"
FORM = rf"(?:{_NUMBER}|\({_NUMBER}(?: [+-] (?:{_NUMBER} )?[^\W\d]\w*)+\))"
"""A regular expression for one number or one formula in brackets."""


def number_text(value: Fraction) -> str:
    """`22-9/16`, `3`, `5/8`, `-1-1/2`."""
    over, under = value.numerator, value.denominator
    whole, rest = divmod(abs(over), under)
    sign = "-" if over < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{whole}-{rest}/{under}" if whole else f"{sign}{rest}/{under}"


def form_text(form: Sequence[Fraction], measures: Iterable[str]) -> str:
    """`22-9/16`, or `(40 - bed + 1/2 gap)` when it hangs on measures. `form`: the constant, then a slope a measure."""
    if len(form) == 1:
        return number_text(form[0])
    terms = "".join(_term(k, name) for k, name in zip(form[1:], measures) if k)
    return f"({number_text(form[0])}{terms})" if terms else number_text(form[0])


def number(text: str) -> Fraction:
    """The value of `number_text`'s spelling. Raises ValueError or ZeroDivisionError for any other."""
    sign = -1 if text.startswith("-") else 1
    whole, _, part = text.removeprefix("-").rpartition("-")
    return sign * (Fraction(whole or 0) + Fraction(part))


def form(text: str) -> dict[str, Fraction]:
    """The constant (under "") and the slopes by measure of what `form_text` wrote."""
    inside = text.removeprefix("(").removesuffix(")")
    constant = re.match(_NUMBER, inside)
    if constant is None:
        raise ValueError(text)
    found = {"": number(constant[0])}
    for sign, k, name in re.findall(_TERM, inside[constant.end() :]):
        found[name] = (-1 if sign == "-" else 1) * (number(k) if k else Fraction(1))
    return found


def _term(k: Fraction, name: str) -> str:
    size = "" if abs(k) == 1 else f"{number_text(abs(k))} "
    return f" {'-' if k < 0 else '+'} {size}{name}"
