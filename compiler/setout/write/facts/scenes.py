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
    """`whole` is about all that stands in place, with its feet and banding; `datum` what positions are measured from,
    the room, else that; `outlines` by unit."""

    joined: JoinedScene
    whole: Box
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
    whole = view.outline(view.joined.boards)
    return InScene(view.joined, whole, view.scene.room or whole, outlines)
