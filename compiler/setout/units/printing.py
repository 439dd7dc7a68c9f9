"""Lengths, counts and names as text. A length is rounded once, here, to the mark that the spec names."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import floor

_MM = Fraction(5, 127)  # inches in a millimetre
_FINE = Fraction(1, 64)  # the steps in which drills are sold


@dataclass(frozen=True)
class Style:
    """How a spec's lengths are printed: in millimetres or inches, to multiples of `mark` (inches, above 0)."""

    metric: bool
    mark: Fraction


@dataclass(frozen=True)
class Printed:
    """A length as printed, without its unit. `error`, in inches, is the printed length less the true one."""

    text: str
    exact: bool
    error: Fraction

    @property
    def marked(self) -> str:
        """With `≈` in front where it was rounded."""
        return self.text if self.exact else "≈" + self.text


def printed(value: Fraction, style: Style) -> Printed:
    """`value` (inches) at the nearest multiple of the mark; half-way goes up, 1/64 to a mark of 1/32 is 1/32."""
    near = floor(value / style.mark + Fraction(1, 2)) * style.mark
    text = _decimal(near / _MM) if style.metric else _mixed(near)
    return Printed(text, near == value, near - value)


def say(value: Fraction, style: Style) -> str:
    """The printed length, `≈` in front where it was rounded: `22-9/16`, `≈571.5`. No unit."""
    return printed(value, style).marked


def said(value: Fraction, style: Style) -> str:
    """The printed length with its unit: `22-9/16 in`, `≈18 mm`."""
    return f"{say(value, style)} {'mm' if style.metric else 'in'}"


def drilled(value: Fraction, style: Style) -> Printed:
    """A drill's diameter, as drills are sold: `5 mm` (`as_metric`), else in 64ths of an inch or tenths of a millimetre,
    whatever the mark."""
    return sunk(value, Style(style.metric, _MM / 10 if style.metric else _FINE))


def sunk(value: Fraction, style: Style) -> Printed:
    """How deep a hole is, or how far one is from the next: `32 mm` (`as_metric`), else to the mark."""
    odd = None if style.metric else as_metric(value)
    return printed(value, style) if odd is None else Printed(odd, True, Fraction(0))


def as_metric(value: Fraction) -> str | None:
    """`5 mm`, with its unit, for what is made in millimetres: exact in halves of one, and not in 64ths of an inch."""
    if (value / _MM * 2).denominator != 1 or (value / _FINE).denominator == 1:
        return None
    return f"{_decimal(value / _MM)} mm"


def exact(value: Fraction) -> str:
    """The exact inches as a mixed number, however odd the fraction: `22-15/32`, `90/127`."""
    return _mixed(value)


def counted(count: int, what: str) -> str:
    """How many of what has its plural with an s: `1 board`, `1,200 boards`."""
    return f"{count:,} {what}{'' if count == 1 else 's'}"


def spoken(path: str) -> str:
    """A path or name as one says it: `left_base.shelf.1` → `left base shelf 1`."""
    return path.replace("_", " ").replace(".", " ")


def _mixed(value: Fraction) -> str:
    sign = "-" if value < 0 else ""
    whole, rest = divmod(abs(value.numerator), value.denominator)
    if not rest:
        return f"{sign}{whole}"
    part = f"{rest}/{value.denominator}"
    return f"{sign}{whole}-{part}" if whole else sign + part


def _decimal(value: Fraction) -> str:
    """All the digits there are; a fraction where they would never end (a mark of 1/3 mm)."""
    places = _places(value.denominator)
    if places is None:
        return _mixed(value)
    digits = str(abs(value.numerator) * 10**places // value.denominator).rjust(places + 1, "0")
    sign = "-" if value < 0 else ""
    if not places:
        return sign + digits
    return f"{sign}{digits[:-places]}.{digits[-places:]}"


def _places(denominator: int) -> int | None:
    """How many decimal places a fraction with this denominator needs; None when no number is enough."""
    counts = []
    for prime in (2, 5):
        n = 0
        while denominator % prime == 0:
            denominator //= prime
            n += 1
        counts.append(n)
    return max(counts) if denominator == 1 else None
