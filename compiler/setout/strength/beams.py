"""How far a shelf or a top sags. Inches, pounds, psi; a stiffness is E I in lb in2.

sag = share x W x L^3 / (E I), W the whole load, the share by how the board is held and loaded: Wood Handbook eq. 9-2.
Shear is left out: a shelf is some forty times as long as thick, and the moduli as printed have part of it in them.
Exact where Fractions come in, floats where floats do.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from setout.strength.tables import Number, figure

Ends = Literal["simple", "clamped", "cantilever"]
Load = Literal["spread", "middle", "end"]

STEP = Fraction(1, 16)  # spans are told to this; a shelf's length is not chosen more finely
FARTHEST = 1200  # inches: where the search for a span gives up
SQUARE_FOOT = 144


@dataclass(frozen=True)
class Limit:
    """The most that a span may sag: a share of it, and `most` inches whatever the span."""

    share: Fraction
    most: Fraction | None = None

    def allowed(self, span: Number) -> Number:
        """Inches of sag."""
        own = span / self.share
        return own if self.most is None else min(own, self.most)


@dataclass(frozen=True)
class Layer:
    """One rectangle of a section: `width` along the shelf's depth, `high`, its under side at `low`; its modulus."""

    width: Number
    high: Number
    low: Number
    modulus: Number


def casework_limit() -> Limit:
    """A 144th of the span: Architectural Woodwork Standards 1.2.21.3."""
    return Limit(figure("casework_share"))


def shelf_test_limit() -> Limit:
    """1/16 in a foot, 1/4 in at most: ANSI/KCMA A161.1."""
    return Limit(figure("shelf_test_share"), figure("shelf_test_most"))


def sag(load: Number, span: Number, stiffness: Number, ends: Ends = "simple", at: Load = "spread") -> Number:
    """First sag in inches under the whole `load` in pounds; of a cantilever, the drop of its free end.

    "end" goes with "cantilever" alone, "middle" with the other two (KeyError else).
    """
    return figure(f"sag_{at}_{ends}") * load * span**3 / stiffness


def stiffness(layers: Sequence[Layer]) -> Number:
    """E I of a section glued up of layers, about its own neutral axis (the transformed section)."""
    parts = [(layer.modulus * layer.width * layer.high, layer.low + Fraction(1, 2) * layer.high) for layer in layers]
    neutral = sum(ea * middle for ea, middle in parts) / sum(ea for ea, _ in parts)
    return sum(
        ea * (layer.high**2 / Fraction(12) + (middle - neutral) ** 2)
        for layer, (ea, middle) in zip(layers, parts, strict=True)
    )


def flat(width: Number, thick: Number, modulus: Number) -> Number:
    """E I of a plain board: `width` is the shelf's depth, front to back."""
    return stiffness((Layer(width, thick, 0, modulus),))


def edged(
    width: Number, thick: Number, modulus: Number, strip_thick: Number, strip_high: Number, strip_modulus: Number
) -> Number:
    """E I with a strip glued along an edge, flush with the top and hanging below it. For strips at the front and at the
    back, give both thicknesses together."""
    strip = Layer(strip_thick, strip_high, thick - strip_high, strip_modulus)
    return stiffness((Layer(width, thick, 0, modulus), strip))


def longest_span(
    modulus: Number, thick: Number, psf: Number, limit: Limit | None = None, ends: Ends = "simple", creep: Number = 1
) -> Fraction:
    """The longest span of a board of any depth under `psf` pounds to the square foot; down to a whole 1/16 in, so that
    it never exceeds the exact root. `limit`: casework if not given."""
    return longest_span_of(flat(1, thick, modulus), Fraction(psf) / SQUARE_FOOT, limit, ends, creep)


def longest_span_of(
    stiffness: Number, per_inch: Number, limit: Limit | None = None, ends: Ends = "simple", creep: Number = 1
) -> Fraction:
    """The same for any section, under `per_inch` pounds to the inch of span. `creep` multiplies the first sag."""
    limit = limit or casework_limit()
    unit = Fraction(creep) * sag(Fraction(per_inch), 1, Fraction(stiffness), ends)
    low, high = 0, int(FARTHEST / STEP)  # in steps; sag over allowance grows with the span, so halving finds the last
    while low < high:
        middle = (low + high + 1) // 2
        span = middle * STEP
        low, high = (middle, high) if unit * span**4 <= limit.allowed(span) else (low, middle - 1)
    return low * STEP


def stiffness_needed(
    span: Number, per_inch: Number, limit: Limit | None = None, ends: Ends = "simple", creep: Number = 1
) -> Number:
    """The E I that holds a span within the limit."""
    limit = limit or casework_limit()
    return creep * sag(per_inch * span, span, 1, ends) / limit.allowed(span)


def thickness_needed(
    span: Number, psf: Number, modulus: Number, limit: Limit | None = None, ends: Ends = "simple", creep: Number = 1
) -> float:
    """The thickness in inches that holds a span within the limit, the board of any depth."""
    needed = stiffness_needed(span, psf / Fraction(SQUARE_FOOT), limit, ends, creep)
    return float(12 * needed / modulus) ** (1 / 3)
