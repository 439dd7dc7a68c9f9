"""Order lines that change nothing, because all they ask for follows from the rest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setout.plan.order.declared import Asked
from setout.plan.order.draft import Link
from setout.plan.order.model import StepId

EFFORT = 1_000_000
"""Links looked at before the search is given up: nobody misses these notes in a job that large."""


def idle(asked: Sequence[Asked], links: Sequence[Link]) -> Iterator[Asked]:
    """Lines that ask for what follows without them. Of lines that follow from each other, the first written stays."""
    after: dict[StepId, list[Link]] = {}
    for link in links:
        after.setdefault(link.before, []).append(link)
    left = [EFFORT]
    found: list[Asked] = []
    dropped: set[int] = set()
    for line in reversed(asked):
        if line.is_rule and line.wanted:
            without = dropped | {line.line}
            if all(_follows(first, then, after, without, left) for first, then in line.wanted):
                dropped.add(line.line)
                found.append(line)
    yield from reversed(found)


def _follows(first, then, after: dict[StepId, list[Link]], without: set[int], left: list[int]) -> bool:
    wanted = set(then)
    return all(wanted <= _reached(a, wanted, after, without, left) for a in first)


def _reached(start: StepId, wanted: set[StepId], after, without: set[int], left: list[int]) -> set[StepId]:
    reached: set[StepId] = set()
    waiting = [start]
    missing = len(wanted)
    while waiting and missing and left[0] > 0:
        for link in after.get(waiting.pop(), ()):
            left[0] -= 1
            if link.line not in without and link.after not in reached:
                reached.add(link.after)
                missing -= link.after in wanted
                waiting.append(link.after)
    return reached if left[0] > 0 else set()
