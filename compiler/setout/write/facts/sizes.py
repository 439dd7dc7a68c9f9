"""Lengths as they are printed: rounded once, and saying so."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import isqrt

from setout.piece.model import Size
from setout.units import Printed, Style, as_metric, drilled, exact, printed, sunk
from setout.write.facts.paths import spoken

MM = Fraction(127, 5)


@dataclass(frozen=True)
class Term:
    """One term of a held size's formula: `sign` "+" or "−", `factor` "" for one, `name` the measure."""

    sign: str
    factor: str
    name: str


@dataclass(frozen=True)
class Held:
    """Why a size has a blank: `start` and `terms` make its formula (None: no straight line)."""

    start: Length | None
    terms: tuple[Term, ...]
    low: Length
    high: Length


@dataclass(frozen=True)
class Length:
    """A length without its unit. When `rounded`, the true size is `error` longer ("+0.010") or shorter than printed.
    `waits`: it is another for other values of the measures not taken yet."""

    text: str
    rounded: bool = False
    error: str = ""
    held: Held | None = None
    waits: bool = False


@dataclass(frozen=True)
class Count:
    """A number of things; `low` and `high` differ only where it hangs on a measure not taken yet."""

    low: int
    high: int


def length(value: Fraction, style: Style) -> Length:
    return _length(printed(value, style), style)


def over_scenes(values: Iterable[Fraction], style: Style, by: Callable[[Fraction, Style], Length] = length) -> Length:
    """A length from its value in each scene; the last is drawn."""
    every = tuple(values)
    return replace(by(every[-1], style), waits=len(set(every)) > 1)


def listed_over_scenes(lists: Iterable[Sequence[Fraction]], style: Style) -> tuple[Length, ...]:
    """Lengths from their list in each scene; the last is drawn. Where they are more or fewer all of them wait."""
    every = [tuple(values) for values in lists]
    if len({len(values) for values in every}) > 1:
        return tuple(replace(length(value, style), waits=True) for value in every[-1])
    return tuple(over_scenes(values, style) for values in zip(*every))


def bored(value: Fraction, style: Style) -> Length:
    """The diameter of a drill, as drills are sold."""
    return _length(drilled(value, style), style)


def deep(value: Fraction, style: Style) -> Length:
    """How deep a hole is, or how far one is from the next."""
    return _length(sunk(value, style), style)


def bought(value: Fraction, style: Style) -> Length:
    """A fastener's size as it is on the box: in inches, and about so many millimetres where the job is metric; or in
    millimetres, where it is made in them."""
    if odd := as_metric(value):
        return Length(odd)
    about = f" in ({decimal(value * MM, 0)} mm)" if style.metric else ""
    return Length(exact(value) + about)


def maybe_bought(value: Fraction | None, style: Style) -> Length | None:
    return None if value is None else bought(value, style)


def size(value: Size, style: Style) -> Length:
    """A piece's size: a plain length, or a formula to fill in."""
    shown = length(value.amount, style)
    if value.high is None:
        return shown
    low, high = sorted((value.amount, value.high))
    start: Length | None = None
    terms: tuple[Term, ...] = ()
    if value.formula is not None:
        start = length(value.formula[0], style)
        terms = tuple(Term("+" if k > 0 else "−", _factor(abs(k)), spoken(name)) for name, k in value.formula[1])
    return Length(shown.text, shown.rounded, shown.error, Held(start, terms, length(low, style), length(high, style)))


def diagonal(a: Fraction, b: Fraction, style: Style) -> Length:
    """sqrt(a² + b²) to the nearest mark, by whole-number roots alone."""
    ratio = (a * a + b * b) / (style.mark * style.mark)
    marks = (isqrt(4 * ratio.numerator // ratio.denominator) + 1) // 2
    text = printed(marks * style.mark, style).text
    return Length(text, marks * marks != ratio)


def rounded_up(value: Fraction) -> int:
    return -(-value.numerator // value.denominator)


def decimal(value: Fraction, places: int) -> str:
    """To that many decimals, halves up; no float on the way."""
    scaled = value * 10**places
    whole = (2 * scaled.numerator + scaled.denominator) // (2 * scaled.denominator)
    digits = str(abs(whole)).rjust(places + 1, "0")
    text = digits[:-places] + "." + digits[-places:] if places else digits
    return "-" + text if whole < 0 else text


def area(square_inches: Fraction, style: Style) -> str:
    """Square feet or square metres, to one and two decimals."""
    return decimal(square_inches * MM * MM / 1_000_000, 2) if style.metric else decimal(square_inches / 144, 1)


def run(inches: Fraction, style: Style) -> str:
    """A running length of stick in feet or metres."""
    return decimal(inches * MM / 1000, 2) if style.metric else decimal(inches / 12, 1)


def _length(p: Printed, style: Style) -> Length:
    return Length(p.text, not p.exact, "" if p.exact else _error(-p.error, style))


def _factor(k: Fraction) -> str:
    return "" if k == 1 else f"{k} × "


def _error(off: Fraction, style: Style) -> str:
    """True size less printed size, signed, to a thousandth of the project's unit."""
    amount = abs(off) * MM if style.metric else abs(off)
    return ("+" if off > 0 else "−") + (decimal(amount, 3) if amount >= Fraction(1, 2000) else "under 0.001")
