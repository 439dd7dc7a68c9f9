"""Old lots tried as new ones. A pair is looked at when it is asked for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from math import inf

from setout.compare.reuse.assigning import Edge
from setout.compare.reuse.body import Body
from setout.compare.reuse.fitting import A_CUT, Fit, fewest_cuts, fit
from setout.compare.reuse.lots import Lot, shared
from setout.compare.reuse.plugging import plugged

Pair = tuple[int, int]

_OWN = 0.5  # a board is rather made what its own place wants
_ANEW = 25  # and rather left as it is than worked on, even if another then is worked on more


@dataclass(frozen=True)
class Trials:
    """Pairs are indices of `old` and `new`, lots that all have bodies. `own`: how many copies of a pair are one board
    in both plans. `between`: see plugged. `home_only`: no pair is tried that shares no board."""

    old: Sequence[Lot]
    new: Sequence[Lot]
    own: Mapping[Pair, int]
    unit: int
    tape: int
    between: int
    home_only: bool
    _fits: dict[Pair, Fit | None] = field(default_factory=dict)

    def fit(self, i: int, j: int) -> Fit | None:
        if (i, j) not in self._fits:
            self._fits[i, j] = self._tried(i, j)
        return self._fits[i, j]

    def _tried(self, i: int, j: int) -> Fit | None:
        one, other = _body(self.old[i]), _body(self.new[j])
        found = fit(one, other, self.tape)
        return plugged(one, other, self.between) if found is None and self.own[i, j] else found

    def edges(self, j: int) -> Iterator[Edge]:
        """What the new lot may be made of. A board with plugged holes is good for its own place alone."""
        saves = float(Fraction(_body(self.new[j]).volume, self.unit**3))
        for i in self.candidates(j):
            found = self.fit(i, j)
            if found is None:
                continue
            own, most = self.own[i, j], min(len(self.old[i].left), len(self.new[j].left))
            if own:
                yield Edge(i, j, saves, self.at_home(i, j), own)
            if most > own and not found.plugs:
                yield Edge(i, j, saves, self.elsewhere(i, j), most - own)

    def at_home(self, i: int, j: int) -> float:
        """The effort for one of the pair's own boards; no end of it where it can't be made the new one."""
        found = self.fit(i, j)
        if found is None:
            return inf
        return 0 if self.old[i].key == self.new[j].key else found.effort + _ANEW

    def elsewhere(self, i: int, j: int) -> float:
        """The same for a copy of the old lot that is none of them."""
        found = self.fit(i, j)
        return inf if found is not None and found.plugs else self.at_home(i, j) + _OWN

    def least_elsewhere(self, i: int, j: int) -> float:
        """What that is at the least, soon seen."""
        if self.old[i].key == self.new[j].key:
            return _OWN
        return A_CUT * fewest_cuts(_body(self.old[i]), _body(self.new[j])) + _ANEW + _OWN

    def candidates(self, j: int) -> Sequence[int]:
        """Old lots that may be of use as the new one."""
        if self.home_only:
            return self.homes[j]
        return self._of_stock.get(_stock(self.new[j]), ())

    @cached_property
    def homes(self) -> Mapping[int, list[int]]:
        """For each new lot the old ones with boards of its own."""
        return {j: [i for i, k in self.own if k == j] for j in range(len(self.new))}

    @cached_property
    def _of_stock(self) -> Mapping[tuple[str, str], list[int]]:
        found: dict[tuple[str, str], list[int]] = {}
        for i, lot in enumerate(self.old):
            found.setdefault(_stock(lot), []).append(i)
        return found


def own_pairs(old: Sequence[Lot], new: Sequence[Lot], to_new: Mapping[str, str]) -> Counter[Pair]:
    """How many copies of each pair are one board in both plans. `to_new`: boards' paths."""
    at = {path: j for j, lot in enumerate(new) for path in lot.left}
    near = {(i, at[to_new[path]]) for i, lot in enumerate(old) for path in lot.left if to_new.get(path) in at}
    return Counter({(i, j): shared(old[i], new[j], to_new) for i, j in sorted(near)})


def _body(lot: Lot) -> Body:
    assert lot.body is not None
    return lot.body


def _stock(lot: Lot) -> tuple[str, str]:
    return _body(lot).stock, _body(lot).kind
