"""Pieces that a pencilled size cannot tell apart."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache

from setout.diagnostics import Diagnostic
from setout.piece import problems
from setout.piece.gather import Group
from setout.piece.letters import mark_order
from setout.units import Style, printed


def similar(groups: Sequence[Group], marks: Sequence[str], style: Style) -> Mapping[str, tuple[str, ...]]:
    """For each mark the others of unequal shape whose sizes print the same."""
    return {
        marks[i]: tuple(sorted((marks[j] for j in alike if j != i), key=mark_order))
        for alike in _print_alike(groups, style)
        for i in alike
    }


def near_misses(groups: Sequence[Group], marks: Sequence[str], style: Style) -> tuple[Diagnostic, ...]:
    """A note for every set of pieces that print one size and have different ones. Equal sizes with other machining are
    ordinary: left and right sides."""
    found = []
    for alike in _print_alike(groups, style):
        by_size = {_size(groups[i]): i for i in reversed(alike)}
        if len(by_size) > 1:
            one, other = sorted(by_size.values())[:2]
            found.append(problems.prints_alike(groups[one], marks[one], groups[other], marks[other], style))
    return tuple(found)


def _print_alike(groups: Sequence[Group], style: Style) -> list[list[int]]:
    found: dict[tuple, list[int]] = {}
    text = cache(lambda value: printed(value, style).text)
    for i, group in enumerate(groups):
        if not group.is_.measures:
            shown = tuple(map(text, _size(group)))
            found.setdefault((group.stock.name, group.is_.grain, shown), []).append(i)
    return [alike for alike in found.values() if len(alike) > 1]


def _size(group: Group) -> tuple:
    return group.is_.length.amount, group.is_.width.amount, group.is_.thick
