"""All openings of a scene gone through."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

from setout.place.filling.banks import bank
from setout.place.filling.collisions import collisions
from setout.place.filling.doors import door
from setout.place.filling.ground import Ground, ground_of
from setout.place.filling.items import clear_of_parts, item
from setout.place.filling.made import Made
from setout.place.filling.shelving import shelves
from setout.place.model import Joint, Scene
from setout.place.site import Scope, Site

WORKS: tuple[tuple[str, Callable[[Ground, Any, Made], None]], ...] = (
    ("banks", bank),
    ("doors", door),
    ("shelves", shelves),
    ("items", item),
)


def fill(site: Site, scene: Scene, scopes: Sequence[Scope]) -> Scene:
    """The scene with what fills its openings told, its hardware and packers added. Reports what doesn't go in."""
    made = Made()
    for scope in scopes:
        for field, work in WORKS:
            for written in getattr(scope.body, field):
                ground = _ground(site, scene, scope, written)
                if ground is not None:
                    work(ground, written, made)
        clear_of_parts(site, scene, scope)
    lost = collisions(site, scene, made)
    boards = {path: board for path, board in {**scene.boards, **made.boards}.items() if path not in lost}
    return replace(
        scene,
        boards=boards,
        joints=tuple(joint for joint in (*scene.joints, *made.joints) if _whole(joint, lost)),
        rests=tuple(rest for rest in scene.rests if not lost & {*rest.upper, *rest.lower}),
        fittings=(*scene.fittings, *(f for f in made.fittings if f.board in boards)),
        banks=tuple(made.banks),
        doors=tuple(made.doors),
        shelves=tuple(made.shelves),
        items=tuple(made.items),
    )


def _whole(joint: Joint, lost: set[str]) -> bool:
    """Whether none of the boards left out stands in it."""
    return not any(path in lost for side in (*joint.entering, *joint.receiving) for path in side.boards)


def _ground(site: Site, scene: Scene, scope: Scope, written: Any) -> Ground | None:
    """None where it is left out by a `when`, or its opening has no place."""
    name = written.opening[0]
    if name not in scope.things or not site.engine.answer(("there", scope, name)):
        return None
    if any(site.engine.answer(("holds", scope, expr)) is not True for expr in written.when):
        return None
    return ground_of(site, scene, scope, name)
