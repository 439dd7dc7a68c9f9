"""What every step of joining looks at."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.join.solid import Solid
from setout.place.model import Board, Scene
from setout.practice import Practice
from setout.resolve.model import Room


@dataclass(frozen=True)
class Ground:
    """`say` prints a length with its unit, to the spec's mark; `fine` to 1/64 in or 0.1 mm.

    `solids` are the boards less their notches and, once cut, their housings. `drawers` are the paths of the assemblies
    that `drawers` clauses are made into.
    """

    scene: Scene
    room: Room | None
    practice: Practice
    say: Callable[[Fraction], str]
    fine: Callable[[Fraction], str]
    solids: Mapping[str, Solid]
    drawers: frozenset[str]

    def board(self, path: str) -> Board:
        return self.scene.boards[path]
