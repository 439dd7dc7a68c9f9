"""The manner of working tried out: which settings to put off, which stops to keep to one saw."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from fractions import Fraction

from setout.plan.cutting.sequence.equal import Made, Size, groups, unlike
from setout.plan.cutting.sequence.manner import PLAIN, Manner
from setout.plan.cutting.sequence.order import Floor
from setout.plan.cutting.sequence.trimming import Start

MOST, LEAST = 12_000, 12  # cuts gone through while trying; but so many trials in any case

Done = tuple[list[Start], Floor]


def chosen(in_manner: Callable[[Manner], Done]) -> Manner:
    """One change after the other, each kept when it is a gain."""
    manner, done = PLAIN, in_manner(PLAIN)
    worth, left = _worth(done), max(MOST - done[1].number, LEAST * done[1].number)
    for candidates, change in _CHANGES:
        for setting in candidates(done):
            if left < done[1].number:
                return manner
            other = change(manner, setting)
            trial = in_manner(other)
            left -= trial[1].number
            if _saws(trial) <= worth[:3] and (better := _worth(trial)) < worth:
                manner, done, worth = other, trial, better
    return manner


def _of_several_saws(done: Done) -> list[Fraction]:
    saws: dict[Fraction, set[str]] = {}
    for one in done[1].settings:
        if one.kind == "crosscut":
            saws.setdefault(one.setting, set()).add(one.saw.name)
    return sorted(setting for setting, names in saws.items() if len(names) > 1)


def _by_the_fence(done: Done) -> list[Fraction]:
    """The least used first."""
    used: Counter[Fraction] = Counter()
    for one in done[1].settings:
        if one.kind == "rip":
            used[one.setting] += len(one.cuts)
    return sorted(used, key=lambda setting: (used[setting], setting))


def _of_unequal_boards(done: Done) -> list[Fraction]:
    """Sizes that equal boards get from several settings, those of the most boards' first."""
    apart: Counter[Fraction] = Counter()
    for size, boards in _groups(done).items():
        long, short = unlike(boards)
        apart.update([size.long] * long + [size.short] * short)
    return sorted(apart, key=lambda size: (-apart[size], size))


_CHANGES: tuple[tuple[Callable[[Done], Iterable[Fraction]], Callable[[Manner, Fraction], Manner]], ...] = (
    (_of_several_saws, Manner.keeping),
    (_by_the_fence, Manner.leaving),
    (_of_unequal_boards, Manner.leaving),
)


def _worth(done: Done) -> tuple[int, ...]:
    apart = sum(sum(unlike(boards)) for boards in _groups(done).values())
    return *_saws(done), apart, len(done[1].settings)


def _saws(done: Done) -> tuple[int, int, int]:
    """Cuts that no saw can make, fence settings, cuts."""
    floor = done[1]
    return len(floor.failed), len({one.setting for one in floor.settings if one.kind == "rip"}), floor.number


def _groups(done: Done) -> dict[Size, list[Made]]:
    starts, floor = done
    return groups(((start.bench.source.stock.name, start.bench.cuts) for start in starts), floor.settings)
