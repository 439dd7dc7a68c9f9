"""The job before and after a change, from the front, the boards that changed hatched."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from setout.drawing.ink.room import clearly_best
from setout.drawing.ink.svg import Canvas
from setout.drawing.model import Drawing
from setout.drawing.views import LOOKS, Sheet, things_in
from setout.join.model import JoinedScene
from setout.units import Style

AROUND = 46.0, 40.0  # points that sizes and the floor take


@dataclass(frozen=True)
class Front:
    """A job to be seen from the front, the boards of the paths `hatched` so. Something must stand in it. `others` as in
    view()."""

    scene: JoinedScene
    mark_of: Mapping[str, str]
    hatched: frozenset[str]
    others: tuple[JoinedScene, ...] = ()


def fronts_alike(
    sides: Sequence[Front], rooms: Sequence[tuple[float, float]], style: Style
) -> tuple[int, tuple[Drawing, ...]]:
    """Several at one scale, in that of the `rooms` (width and height for each) where they come out largest, the first
    unless another shows them clearly larger; which of them that is."""
    look = LOOKS["front"]
    sheets = [Sheet(s.scene, things_in(s.scene), look, style, s.hatched, s.others) for s in sides]
    scales = [min(_scale(sheet, *room) for sheet in sheets) for room in rooms]
    best = clearly_best(scales)
    made = []
    for side, sheet in zip(sides, sheets):
        canvas = Canvas()
        sheet.draw(canvas, scales[best], (0, 0), side.mark_of)
        made.append(canvas.finished(f"{look.says}, what changes hatched"))
    return best, tuple(made)


def _scale(sheet: Sheet, width: float, height: float) -> float:
    return min((width - AROUND[0]) / sheet.wide, (height - AROUND[1] - sheet.below) / sheet.tall)
