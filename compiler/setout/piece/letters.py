"""Marks as words: an assembly's letters, then a number."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import count, product

LETTERS = "ABCDEFGHJKLMNPRTUVWXY"
"""All but I, O, Q, S and Z, which are read as 1, 0, 0, 5 and 2 when pencilled."""
JOB = "the job"
"""What a letter line says for the job itself; no assembly's name has a blank in it."""


def letter_of(mark: str) -> str:
    return re.match(r"[A-Z]*", mark)[0]  # type: ignore[index]


def number_of(mark: str) -> int:
    return int(mark[len(letter_of(mark)) :])


def mark_order(mark: str) -> tuple[int, str, int]:
    """Sorts A2 before A10, Y1 before AA1."""
    letter = letter_of(mark)
    return len(letter), letter, number_of(mark)


def all_letters() -> Iterator[str]:
    """A to Y, then AA, AB … without end."""
    for length in count(1):
        for letters in product(LETTERS, repeat=length):
            yield "".join(letters)
