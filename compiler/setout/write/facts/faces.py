"""Faces in the words of the assembly a board belongs to, standing square before the reader."""

from __future__ import annotations

from setout.geometry import Face
from setout.place.model import Board, Scene
from setout.write.facts.turning import squared


def own_face(scene: Scene, board: Board, face: Face) -> Face:
    """The job's `face` as one says it before the board's own assembly (they differ when that was turned)."""
    return squared(scene.instances[board.owner].motion).face(face)
