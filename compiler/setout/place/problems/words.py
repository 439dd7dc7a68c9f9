"""How amounts and names are said."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.place.site import Thing
from setout.source import Span
from setout.units import Style, exact, printed, said


def amount(style: Style, value: Fraction) -> str:
    """A length with its unit; one too small for the mark is said exactly, so that no amount reads as nothing."""
    if value and not printed(value, style).error + value:
        return f"{exact(value)} in"
    return said(value, style)


def head(thing: Thing) -> Span:
    return getattr(thing, "head", thing.span)


def listed(names: Sequence[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)
