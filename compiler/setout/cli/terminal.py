"""Words for the person at the terminal: what is safe to print there, and how far the run has got."""

from __future__ import annotations

import sys


def shown(text: str) -> str:
    """The text with control characters spelled out, so that a file's name can't steer the terminal."""
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in text)


def say(line: str) -> None:
    """A line for people on standard error; nothing when no person is watching."""
    if sys.stderr.isatty():
        print(shown(line), file=sys.stderr)


class Progress:
    """One line on a terminal that tells what is being done, wiped away at the end. Silent in a pipe."""

    def __init__(self) -> None:
        self._watched = sys.stderr.isatty()

    def __call__(self, stage: str) -> None:
        if self._watched:
            sys.stderr.write(f"\r\x1b[K{stage} …")
            sys.stderr.flush()

    def __enter__(self) -> Progress:
        return self

    def __exit__(self, *_: object) -> None:
        if self._watched:
            sys.stderr.write("\r\x1b[K")
            sys.stderr.flush()
