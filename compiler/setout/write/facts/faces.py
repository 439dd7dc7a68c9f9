"""Faces and sizes in the words of the assembly a board belongs to, standing square before the reader."""

from __future__ import annotations

from setout.geometry import Face, Motion, Vec
from setout.place.model import Board, Scene
from setout.write.facts.turning import squared


def own_face(scene: Scene, board: Board, face: Face) -> Face:
    """The job's `face` as one says it before the board's own assembly (they differ when that was turned)."""
    return squared(scene.instances[board.owner].motion).face(face)


def own_sizes(motion: Motion, sizes: Vec) -> Vec:
    """A box's sizes in the job turned to the assembly's own wide, high, deep."""
    return (sizes[motion.to[0]], sizes[motion.to[1]], sizes[motion.to[2]])
