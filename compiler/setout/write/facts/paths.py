"""Paths as one says them, many in few words: `left base, big base: shelf 1–3`."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby

from setout.units import spoken


@dataclass(frozen=True)
class Where:
    """The same `names` in each of `owners` (empty: the job itself)."""

    owners: tuple[str, ...]
    names: tuple[str, ...]


def fold(places: Iterable[tuple[str, str]]) -> tuple[Where, ...]:
    """(owner, name) pairs gathered: owners that hold the same names stand together, members of a repeat too."""
    names_in: dict[str, list[str]] = {}
    for owner, name in places:
        names_in.setdefault(owner, []).append(name)
    owners_of: dict[tuple[str, ...], list[str]] = {}
    for owner, names in names_in.items():
        owners_of.setdefault(ranges(names), []).append(owner)
    return tuple(Where(ranges(o for o in owners if o), names) for names, owners in owners_of.items())


def ranges(names: Iterable[str]) -> tuple[str, ...]:
    """Spoken, members of a repeat together: `shelf.1 shelf.2 shelf.3` → `shelf 1–3`. In order of first appearance."""
    members: dict[str, list[int]] = {}
    for name in names:
        stem, _, number = name.rpartition(".")
        if stem and number.isdecimal():
            members.setdefault(stem, []).append(int(number))
        else:
            members.setdefault(name, [])
    return tuple(f"{spoken(stem)} {runs(numbers)}".rstrip() for stem, numbers in members.items())


def runs(numbers: list[int]) -> str:
    """[1, 2, 3, 5] → "1–3, 5"."""
    out = []
    for _, group in groupby(enumerate(sorted(set(numbers))), lambda pair: pair[1] - pair[0]):
        run = [n for _, n in group]
        out.append(str(run[0]) if len(run) == 1 else f"{run[0]}–{run[-1]}" if len(run) > 2 else f"{run[0]}, {run[1]}")
    return ", ".join(out)
