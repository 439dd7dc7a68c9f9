"""The text of a number, with all that is glued to it, made into its value."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.read import problems
from setout.read.limits import MAX_DIGITS
from setout.read.model import Number
from setout.source import Span
from setout.units import known_units

# 23-1/4  5/8  1.5  12
_AMOUNT = r"(?P<whole>\d+)-(?P<num>\d+)/(?P<den>\d+)|(?P<num2>\d+)/(?P<den2>\d+)|(?P<decimal>\d+\.?\d*|\.\d+)"
_PLAIN = re.compile(rf"(?:{_AMOUNT})(?P<unit>[^\W\d]\w*|\"|')?", re.ASCII)
_FEET = re.compile(rf"(?P<feet>\d+)'[ \t]?(?:{_AMOUNT})\"", re.ASCII)
_BY = re.compile(r"[\d./-]+\"?(?:[xX][\d./-]+[\"'\w]*)+", re.ASCII)
_MARKS = {'"': "in", "'": "ft", None: ""}


def number(text: str, span: Span) -> tuple[Number, Diagnostic | None]:
    """The number, and what is the matter with it. A wrong one still gets a value (0 where none can be guessed)."""
    long = re.search(rf"\d{{{MAX_DIGITS + 1},}}", text, re.ASCII)
    if long:
        return _of(Fraction(0), "", text, span), problems.too_many_digits(span, len(long.group()))
    match = _FEET.fullmatch(text) or _PLAIN.fullmatch(text)
    if not match:
        return _of(Fraction(0), "", text, span), _malformed(text, span)
    parts = match.groupdict()
    value, fault = _amount(parts, text, span)
    if parts.get("feet"):
        return _of(Fraction(parts["feet"]) * 12 + value, "in", text, span), fault
    unit = _MARKS.get(parts["unit"], parts["unit"])
    if unit and unit not in known_units:
        amount = text[: match.start("unit")]
        return _of(value, "", text, span), fault or problems.unknown_unit(span, amount, unit, known_units)
    return _of(value, unit, text, span), fault


def several(text: str) -> list[str]:
    """The numbers in `96x48x3/4`, whose blanks were left out; the text alone when it is nothing of the kind."""
    each = re.split("[xX]", text)
    return each if len(each) <= 4 and _BY.fullmatch(text) else [text]


def _of(value: Fraction, unit: str, text: str, span: Span) -> Number:
    return Number(value, unit, text, span)


def _amount(parts: dict[str, str | None], text: str, span: Span) -> tuple[Fraction, Diagnostic | None]:
    if parts["decimal"]:
        return Fraction(parts["decimal"]), None
    whole = int(parts["whole"] or 0)
    top, bottom = int(parts["num"] or parts["num2"] or 0), int(parts["den"] or parts["den2"] or 0)
    if not bottom:
        return Fraction(whole), problems.zero_denominator(span, text)
    value = whole + Fraction(top, bottom)
    if parts["whole"] and top >= bottom:
        return value, problems.improper(span, text, whole, Fraction(top, bottom))
    return value, None


def _malformed(text: str, span: Span) -> Diagnostic:
    in_one = next((char for char in text if unicodedata.numeric(char, 0.0) % 1), None)
    if in_one:
        return problems.odd_character(span, in_one, unicodedata.name(in_one).lower())
    if re.fullmatch(r"\d+-\d+", text, re.ASCII):
        return problems.dash_in_number(span, text)
    if re.fullmatch(r"\d+'[ \t]?\d+(?:[-./]\d+)*", text, re.ASCII):
        return problems.unfinished_feet(span, text)
    return problems.malformed_number(span, text)
