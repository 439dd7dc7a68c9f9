"""What the order of the cuts leaves open: settings to do without where that can be, and saws to keep to."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Manner:
    """`late`: settings put off, so that what has such a size is what remains of a board once the rest is cut off it.
    `one_saw`: stops at which all boards go to the saw that takes the widest, not each to the smallest that can."""

    late: frozenset[Fraction] = frozenset()
    one_saw: frozenset[Fraction] = frozenset()

    def leaving(self, setting: Fraction) -> Manner:
        return Manner(self.late | {setting}, self.one_saw)

    def keeping(self, setting: Fraction) -> Manner:
        return Manner(self.late, self.one_saw | {setting})

    def per(self, unit: int) -> Manner:
        """In inches, when so far an inch counted as `unit`."""
        return Manner(
            frozenset(Fraction(one, unit) for one in self.late), frozenset(Fraction(one, unit) for one in self.one_saw)
        )


PLAIN = Manner()
