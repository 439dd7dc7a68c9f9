"""Which measures decide where boards go, though their sizes may be known."""

from __future__ import annotations

from collections.abc import Iterable

from setout.geometry import Vec
from setout.join.model import Joined


class Moving:
    """Compares the scenes: each measure is at its high end in some of them and at its low end in the first."""

    def __init__(self, joined: Joined) -> None:
        self.measures = joined.placed.open_measures
        self.scenes = [(s.scene.taken, {p: b.box.lo for p, b in s.scene.boards.items()}) for s in joined.scenes]

    def inside(self, boards: Iterable[str]) -> tuple[str, ...]:
        """The measures that shift some of the boards against the first of them."""
        boards = tuple(boards)
        return self._measures([self._offsets(boards, at) for _, at in self.scenes]) if boards else ()

    def placing(self, boards: Iterable[str], holder: str | None) -> tuple[str, ...]:
        """The measures that shift the first of the boards in the room, or against a board of what holds it there."""
        first = next(iter(boards), None)
        if first is None or holder is None:
            return self._measures([at[first] for _, at in self.scenes]) if first else ()
        return self.inside((holder, first))

    def _measures(self, found: list) -> tuple[str, ...]:
        """What differs from the first scene is put down to the measures that do; where one does alone, to that one."""
        low = self.scenes[0][0]
        changed = [[m for m in self.measures if taken[m] != low[m]] for taken, _ in self.scenes]
        differs = [names for names, one in zip(changed, found) if one != found[0]]
        single = [names[0] for names in differs if len(names) == 1]
        return tuple(dict.fromkeys(single or [m for names in differs for m in names]))

    @staticmethod
    def _offsets(boards: tuple[str, ...], at: dict[str, Vec]) -> list[tuple]:
        first = at[boards[0]]
        return [tuple(a - b for a, b in zip(at[p], first)) for p in boards]
