"""What stands where in each scene: a number that is another in one of them hangs on a measure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from setout.geometry import Box
from setout.inspect import View
from setout.join.model import JoinedScene
from setout.plan.model import Plan
from setout.units import Style


@dataclass(frozen=True)
class InScene:
    """`datum` is what positions are measured from: the room, else the job's own outline. `outlines` by unit."""

    joined: JoinedScene
    datum: Box
    outlines: Mapping[str, Box]


def in_scenes(plan: Plan, style: Style) -> tuple[InScene, ...]:
    """The last is drawn. None where nothing stands in place."""
    practice = plan.pieces.joined.placed.project.practice
    return tuple(
        _in_scene(View(joined, practice, style)) for joined in plan.pieces.joined.scenes if joined.boards
    )


def _in_scene(view: View) -> InScene:
    outlines = {unit: view.outline(boards) for unit, boards in view.units.items()}
    return InScene(view.joined, view.scene.room or whole(view.joined), outlines)


def whole(joined: JoinedScene) -> Box:
    """The true outline of all boards; there must be some."""
    boxes = [board.box for board in joined.boards.values()]
    lo = tuple(min(box.lo[axis] for box in boxes) for axis in range(3))
    hi = tuple(max(box.hi[axis] for box in boxes) for axis in range(3))
    return Box(lo, hi)  # type: ignore[arg-type]
