"""What lies in front of a board that is screwed to a wall: screws go through it too, or their heads are under it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping

from setout.geometry import Box, Face
from setout.join.ground import Ground
from setout.join.hanging import moving_fronts
from setout.join.model import Contact

Flat = Mapping[tuple[str, Face], tuple[str, ...]]


def flat_on(contacts: Iterable[Contact]) -> Flat:
    """By board and face, what a joint holds there flat, broad face on broad face."""
    found: dict[tuple[str, Face], list[str]] = defaultdict(list)
    for contact in contacts:
        if contact.b is not None and contact.kind == "face":
            found[contact.a, contact.face_a].append(contact.b)
            found[contact.b, contact.face_b].append(contact.a)
    return {at: tuple(dict.fromkeys(others)) for at, others in found.items()}


def layers(ground: Ground, flat: Flat, contact: Contact) -> tuple[str, ...]:
    """Boards of the same unit joined flat to the front of the screwed one, or to the front of those; outward."""
    unit, found = ground.scene.unit_of, [contact.a]
    for path in found:
        more = flat.get((path, contact.face_a.opposite), ())
        found += [other for other in more if other not in found and unit[other] == unit[contact.a]]
    return tuple(found[1:])


def covers(ground: Ground, contact: Contact, passed: tuple[str, ...]) -> tuple[str, ...]:
    """Other boards of the same unit that come up against the front of the board or of its layers; not what moves."""
    unit, moved = ground.scene.unit_of, moving_fronts(ground.scene)
    hosts = [ground.solids[path].box for path in (contact.a, *passed)]
    return tuple(
        path
        for path, solid in ground.solids.items()
        if unit[path] == unit[contact.a]
        and path not in (contact.a, *passed)
        and path not in moved
        and any(_comes_up(solid.box, host, contact.face_a) for host in hosts)
    )


def _comes_up(box: Box, host: Box, wall: Face) -> bool:
    front = host.face(wall.opposite)
    ends = (box.face(wall) - front) * wall.sign, (box.face(wall.opposite) - front) * wall.sign
    across = [k for k in range(3) if k != wall.axis]
    return ends[1] < 0 <= ends[0] and all(box.lo[k] < host.hi[k] and host.lo[k] < box.hi[k] for k in across)
