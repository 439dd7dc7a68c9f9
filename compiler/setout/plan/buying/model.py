"""The buy list: numbers are exact, money is in the spec's own currency."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class BuyLine:
    """One thing to buy.

    kind      name, what is counted in `need`
    sheet     stock; sheets, `sizes` (length, width)
    stick     stock; sticks of `sizes[0]`
    hardware  hardware; pieces
    screws, pockets, brads, dowels   hardware that serves them, or ""; pieces, `gauge`, `length`, `diameter`
    glue      hardware that serves it, or ""; square inches of joint
    edging    hardware; inches, waste in it, `sizes` (length of a roll, width)

    `need` has the spares in it, `on_hand` (in the unit of `need`) is taken off; `packs` are bought, of `pack` each, at
    `price` a pack (None: the spec says none). `estimate`: least number by area, for want of a cutting plan.
    """

    kind: str
    name: str
    title: str
    need: Fraction
    on_hand: Fraction
    pack: Fraction
    packs: int
    price: Fraction | None
    sizes: tuple[Fraction, ...] = ()
    gauge: int | None = None
    length: Fraction | None = None
    diameter: Fraction | None = None
    estimate: bool = False

    @property
    def cost(self) -> Fraction | None:
        """Nothing to buy costs nothing, whether it has a price or not."""
        if not self.packs:
            return Fraction(0)
        return None if self.price is None else self.price * self.packs


@dataclass(frozen=True)
class BuyList:
    """`total` of what has a price; what is bought without one stands in `unpriced`."""

    lines: tuple[BuyLine, ...]

    @property
    def total(self) -> Fraction:
        return sum((line.cost for line in self.lines if line.cost is not None), Fraction(0))

    @property
    def unpriced(self) -> tuple[BuyLine, ...]:
        return tuple(line for line in self.lines if line.cost is None)
