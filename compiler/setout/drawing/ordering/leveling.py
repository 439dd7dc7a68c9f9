"""Steps put on levels that a page can hold: what a step waits for stands above it, and no level is too wide."""

from __future__ import annotations

from collections.abc import Mapping, Sequence


def reduced(needs: Mapping[int, Sequence[int]]) -> dict[int, tuple[int, ...]]:
    """Each step's needs without those that follow from another need. `needs` lists the steps in order, needs first."""
    before: dict[int, set[int]] = {}
    out = {}
    for step, direct in needs.items():
        wanted = [n for n in dict.fromkeys(direct) if n in before]
        further = {m for n in wanted for m in before[n]}
        out[step] = tuple(n for n in sorted(wanted) if n not in further)
        before[step] = further.union(wanted)
    return out


def levelled(steps: Sequence[int], needs: Mapping[int, Sequence[int]], most: int) -> list[list[int]]:
    """The steps in levels of at most `most`, each below all it needs, as high up as there is room."""
    levels: list[list[int]] = []
    level_of: dict[int, int] = {}
    for step in steps:
        at = max((level_of[n] + 1 for n in needs[step] if n in level_of), default=0)
        while at < len(levels) and len(levels[at]) >= most:
            at += 1
        if at == len(levels):
            levels.append([])
        levels[at].append(step)
        level_of[step] = at
    return levels


def sheets(
    steps: Sequence[int], needs: Mapping[int, Sequence[int]], most: int, deep: int, many: int
) -> list[list[int]]:
    """The steps cut, in order, into stretches of at most `deep` levels and at most `many` steps, about equally full."""
    out: list[list[int]] = []
    rest = list(steps)
    while rest:
        count = _fitting(rest, needs, most, deep, many)
        out.append(rest[:count])
        rest = rest[count:]
    if len(out) > 1:
        share = -(-len(steps) // len(out))
        even = [list(steps[i : i + share]) for i in range(0, len(steps), share)]
        if all(len(levelled(s, needs, most)) <= deep for s in even):
            return even
    return out


def _fitting(rest: Sequence[int], needs: Mapping[int, Sequence[int]], most: int, deep: int, many: int) -> int:
    count = min(len(rest), many)
    while count > 1 and len(levelled(rest[:count], needs, most)) > deep:
        count -= 1
    return count
