"""Marks for groups of boards: those the register remembers, and new ones that it never gave away before."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.piece.gather import Group
from setout.piece.letters import JOB, all_letters, letter_of, number_of
from setout.piece.model import Entry, Register
from setout.piece.parse import bare, evaluated, measures_of, parse_shape
from setout.piece.shape import shape


@dataclass(frozen=True)
class Marks:
    """`marks` one for each group, in their order; `letters` by assembly definition; `fresh` the entries to add."""

    marks: tuple[str, ...]
    letters: Mapping[str, str]
    fresh: tuple[Entry, ...]


def give_marks(groups: Sequence[Group], register: Register, taken: Mapping[str, Fraction]) -> Marks:
    """A mark for each group. `taken` are the measures whose values are known."""
    marks = _remembered(groups, register)
    _come_off_hold(groups, register, taken, marks)
    letters = _letters(groups, marks, register)
    top = _highest(register)
    for i, group in enumerate(groups):
        if i not in marks:
            letter = letters[group.home]
            top[letter] = top.get(letter, 0) + 1
            marks[i] = f"{letter}{top[letter]}"
    entries = [Entry(marks[i], g.is_.kind, g.is_.shape) for i, g in enumerate(groups)]
    known = set(register.entries)
    fresh = (*_letter_lines(letters, register), *(e for e in entries if e not in known))
    return Marks(tuple(e.mark for e in entries), letters, fresh)


def _remembered(groups: Sequence[Group], register: Register) -> dict[int, str]:
    """Cut boards come first: where a held board's mark has since gone to a board that is cut, that board keeps it."""
    known = {(e.kind, e.shape): e.mark for e in register.entries if e.kind != "letter"}
    marks: dict[int, str] = {}
    for i in sorted(range(len(groups)), key=lambda i: groups[i].is_.kind != "cut"):
        mark = known.get((groups[i].is_.kind, groups[i].is_.shape))
        if mark and mark not in marks.values():
            marks[i] = mark
    return marks


def _come_off_hold(groups: Sequence[Group], register: Register, taken: Mapping[str, Fraction], marks: dict[int, str]):
    """Add to `marks` those that boards bore while a measure was open, by putting its value into the formula.

    First exactly; then by the sizes alone, for machining that followed no formula. Nobody has cut a held board, so
    no pencilled mark can come to a wrong one.
    """
    latest = {e.mark: e for e in register.entries}
    busy = set(marks.values())
    waiting = [e for e in latest.values() if e.kind == "held" and e.mark not in busy]
    waiting = [e for e in waiting if measures_of(e.shape).intersection(taken)]
    for key in (_whole, _sizes) if waiting else ():
        said: dict[tuple, list[str]] = {}
        for entry in waiting:
            if entry.mark not in busy:
                said.setdefault(key(entry.shape, taken), []).append(entry.mark)
        for i, group in enumerate(groups):
            same = said.get(key(group.is_.shape, {})) if i not in marks else None
            if same:
                marks[i] = same.pop(0)
                busy.add(marks[i])


def _whole(text: str, taken: Mapping[str, Fraction]) -> tuple:
    outline = parse_shape(bare(text))
    if outline is None:
        return (text,)
    return (shape(evaluated(outline, taken)).text,)


def _sizes(text: str, taken: Mapping[str, Fraction]) -> tuple:
    """Stock, grain, sizes, and what it still hangs on. A size that follows no formula matches nothing."""
    head = bare(text).split(" | ")[0].split("; ")[0].rpartition(": ")[2]
    outline = parse_shape(head)
    if outline is None:
        return (text,)
    return shape(evaluated(outline, taken)).text, measures_of(text).difference(taken)


def _letters(groups: Sequence[Group], marks: Mapping[int, str], register: Register) -> dict[str, str]:
    """An assembly keeps the letter most of its pieces bear (it may have been renamed); when all its pieces are new, as
    after a change of thickness, the letter its name had; a new one takes the next that was never used."""
    homes = list(dict.fromkeys(g.home for g in groups))
    votes: dict[str, Counter[str]] = {home: Counter() for home in homes}
    for i, group in enumerate(groups):
        if i in marks:
            votes[group.home][letter_of(marks[i])] += 1
    letters: dict[str, str] = {}
    for home in homes:
        best = next((x for x, _ in votes[home].most_common() if x not in letters.values()), None)
        if best:
            letters[home] = best
    named = _named(register)
    for home in homes:
        if home not in letters and home in named and named[home] not in letters.values():
            letters[home] = named[home]
    used = {letter_of(e.mark) for e in register.entries}
    free = (letter for letter in all_letters() if letter not in used)
    return {home: letters.get(home) or next(free) for home in homes}


def _named(register: Register) -> dict[str, str]:
    """The letter each assembly name had last."""
    return {"" if e.shape == JOB else e.shape: e.mark for e in register.entries if e.kind == "letter"}


def _letter_lines(letters: Mapping[str, str], register: Register) -> list[Entry]:
    named = _named(register)
    return [Entry(letter, "letter", home or JOB) for home, letter in letters.items() if named.get(home) != letter]


def _highest(register: Register) -> dict[str, int]:
    top: dict[str, int] = {}
    for entry in register.entries:
        if entry.kind != "letter":
            letter = letter_of(entry.mark)
            top[letter] = max(top.get(letter, 0), number_of(entry.mark))
    return top
