"""Joints cut into the boards: contacts, housings, holes, what fastens them."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from setout.diagnostics import Checked
from setout.join.fastening import Known
from setout.join.findings import findings
from setout.join.footprints import Footprint
from setout.join.ground import Ground
from setout.join.model import (
    Bore,
    Cavity,
    Contact,
    Fastening,
    Joined,
    JoinedBoard,
    JoinedScene,
)
from setout.join.scene import join_scene
from setout.join.touching import solid
from setout.place.model import Placed
from setout.units import Style, said

__all__ = [
    "Bore",
    "Cavity",
    "Contact",
    "Fastening",
    "Footprint",
    "Joined",
    "JoinedBoard",
    "JoinedScene",
    "join",
]

_SIXTY_FOURTH = Fraction(1, 64)
_TENTH = Fraction(1, 254)  # a tenth of a millimetre, in inches


def join(placed: Placed) -> Checked[Joined]:
    """Cut every joint of every scene."""
    project = placed.project
    say = partial(said, style=Style(project.metric, project.mark))
    fine = partial(said, style=Style(project.metric, _TENTH if project.metric else _SIXTY_FOURTH))
    scenes, told = [], []
    known: Known = {}
    for scene in placed.scenes:
        solids = {path: solid(board) for path, board in scene.boards.items()}
        drawers = frozenset(drawer.path for bank in scene.banks for drawer in bank.drawers)
        ground = Ground(scene, project.room, project.practice, say, fine, solids, drawers)
        joined, wrong = join_scene(ground, known)
        scenes.append(joined)
        told.append(wrong)
    return Checked(Joined(placed, tuple(scenes)), findings(placed, told, say))
