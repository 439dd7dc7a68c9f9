"""How many of each kind, packed in one whole number: a field for each kind, with a guard bit on top of it that shows
when more is taken away than there is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence


class Counts:
    """`unit[k]` stands for one item of kind k, `full` for all items. `part` fits in `whole` when
    `((whole | guard) - part) & guard == guard`."""

    def __init__(self, most: Sequence[int]):
        self.unit: list[int] = []
        self.guard = self.full = 0
        self._fields: list[tuple[int, int]] = []
        at = 0
        for count in most:
            bits = count.bit_length()
            self.unit.append(1 << at)
            self.guard |= 1 << (at + bits)
            self.full |= count << at
            self._fields.append((at, (1 << bits) - 1))
            at += bits + 1

    def of(self, code: int) -> list[int]:
        return [code >> at & mask for at, mask in self._fields]

    def kinds(self, code: int) -> Iterator[int]:
        """Those it holds any of."""
        return (k for k, (at, mask) in enumerate(self._fields) if code >> at & mask)

    def has(self, code: int, k: int) -> bool:
        at, mask = self._fields[k]
        return bool(code >> at & mask)

    def holds(self, whole: int, part: int) -> bool:
        return ((whole | self.guard) - part) & self.guard == self.guard
