"""Paths as they have to be written where a joint between two boards can stand."""

from __future__ import annotations

from collections.abc import Iterator

from setout.join.ground import Ground
from setout.place.model import Board, Joint


def seen_together(ground: Ground, a: Board, b: Board) -> tuple[str, str, str]:
    """Both paths as seen from the innermost assembly that holds both; and which that is, unless it is their own."""
    if a.owner == b.owner:
        return a.name, b.name, ""
    around = set(_outwards(ground, a.owner))
    scope = next((path for path in _outwards(ground, b.owner) if path in around), "")
    skip = len(scope) + 1 if scope else 0
    where = f"; it stands in assembly `{ground.scene.instances[scope].definition}`" if scope else ""
    return a.path[skip:], b.path[skip:], where


def written(joint: Joint, board: Board) -> str:
    """The board's path as it is written in the assembly that the joint stands in."""
    return board.path.removeprefix(f"{joint.owner}." if joint.owner else "")


def _outwards(ground: Ground, owner: str) -> Iterator[str]:
    at: str | None = owner
    while at:
        yield at
        instance = ground.scene.instances.get(at)
        at = instance.parent if instance else None
