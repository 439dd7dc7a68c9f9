"""Within one assembly: which joints are made first."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from setout.geometry import Axis
from setout.join.model import Contact
from setout.place.model import Joint, Scene

RANK = {"dado": 0, "groove": 0, "dowels": 0, "glue": 1, "pockets": 2, "screws": 2, "rabbet": 3, "brads": 3}
"""Housed parts are caught between their neighbours, so they go in while those come together; then what glue holds,
before it grabs; then what screws pull tight; backs in their open rabbets and what is only nailed on, with glue or
without, come last, and square the box."""
LAST = 4


def in_order(
    joints: Iterable[str], known: Mapping[str, Joint], contacts: Mapping[str, Sequence[Contact]], scene: Scene
) -> tuple[str, ...]:
    """Joint ids in the order of making: by rank, then from the bottom up, then as written."""

    def low(joint: str):
        return min((c.area.lo[Axis.HIGH] for c in contacts.get(joint, ())), default=0)

    place = {j.id: i for i, j in enumerate(scene.joints)}
    return tuple(sorted(joints, key=lambda j: (rank(known[j]), low(j), place[j])))


def rank(joint: Joint) -> int:
    kinds = {method.kind for method in joint.methods}
    if "brads" in kinds and kinds <= {"brads", "glue", "rabbet"}:
        return RANK["brads"]
    return min((RANK.get(kind, LAST) for kind in kinds), default=LAST)


def is_glued(joint: Joint) -> bool:
    return any(m.kind == "glue" for m in joint.methods)
