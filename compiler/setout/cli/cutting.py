"""Planning the cutting at a terminal: how far it has come, and Ctrl-C to take the best plan so far."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from setout.plan import Cut


def planner(seconds: float | None, tell: Callable[[str], None]) -> Cut:
    """How `build` plans the cutting: as much work as usual, the same on any machine, or as long as `seconds`."""

    def cut(pieces):
        from setout.plan.cutting import DEFAULT, Budget, cutting

        budget = DEFAULT if seconds is None else Budget(work=None, seconds=seconds)
        with _asked_to_stop() as stop:
            return cutting(pieces, budget, lambda told: tell(f"planning the cutting of {told.title}"), stop)

    return cut


@contextmanager
def _asked_to_stop() -> Iterator[Callable[[], bool]]:
    """Says whether Ctrl-C has been pressed meanwhile; a second one ends the program as ever."""
    pressed: list[int] = []

    def press(number, frame) -> None:
        pressed.append(number)
        signal.signal(signal.SIGINT, before)

    before = signal.getsignal(signal.SIGINT)
    try:
        signal.signal(signal.SIGINT, press)
    except ValueError:  # not the main thread: nobody can press anything
        yield lambda: False
        return
    try:
        yield lambda: bool(pressed)
    finally:
        signal.signal(signal.SIGINT, before)
