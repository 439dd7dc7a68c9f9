"""What holds for some values of the measures only."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.units import Style, said


def in_case(found: Diagnostic, taken: Sequence[tuple[str, Fraction]], style: Style) -> Diagnostic:
    """A finding that only holds for these values of the measures."""
    case = " and ".join(f"`{name}` is {said(value, style)}" for name, value in taken)
    return replace(found, message=f"{found.message} when {case}")
