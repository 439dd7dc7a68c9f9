"""An assembly's joints as lines to read and tick."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from setout.join.model import Contact
from setout.place.model import Instance
from setout.write.assemblies.model import Housing, Joint, Side
from setout.write.assemblies.paths import within
from setout.write.facts import Facts
from setout.write.facts.lines import fastener_lines
from setout.write.facts.paths import fold
from setout.write.facts.sizes import length
from setout.write.facts.totals import fasteners

T = TypeVar("T")


def joints(facts: Facts, instance: Instance) -> tuple[Joint, ...]:
    """Those written in the assembly's own body that touch something."""
    ids = (joint.id for joint in facts.joints_of.get(instance.path, ()))
    made = ((id, facts.contacts_of.get(id, ())) for id in ids)
    return tuple(_joint(facts, instance, id, contacts) for id, contacts in made if contacts)


def _joint(facts: Facts, instance: Instance, id: str, contacts: tuple[Contact, ...]) -> Joint:
    made = [scene.get(id, ()) for scene in facts.fastenings_of]
    return Joint(
        entering=_side(facts, instance, contacts, [contact.a for contact in contacts]),
        receiving=_side(facts, instance, contacts, [contact.b for contact in contacts]),
        meets=_once(contact.kind for contact in contacts),
        places=len(contacts),
        housings=_housings(facts, id),
        fasteners=fastener_lines(facts, fasteners(made)),
        glued=any(fastening.kind == "glue" for fastening in made[-1]),
    )


def _side(facts: Facts, instance: Instance, contacts: tuple[Contact, ...], boards: list[str | None]) -> Side:
    paths = [path for path in boards if path is not None]
    in_place = [facts.scene.boards[path] for path in paths]
    return Side(
        where=fold(_once((within(instance, board.owner), board.name) for board in in_place)),
        marks=_once(facts.mark_of[path] for path in paths),
        walls=_once(c.face_b.opposite.word for c, path in zip(contacts, boards) if path is None),
    )


def _housings(facts: Facts, id: str) -> tuple[Housing, ...]:
    cavities = facts.cavities_of.get(id, ())
    kinds = _once((cavity.kind, cavity.depth, cavity.width) for cavity in cavities)
    return tuple(Housing(kind, length(deep, facts.style), length(wide, facts.style)) for kind, deep, wide in kinds)


def _once(items: Iterable[T]) -> tuple[T, ...]:
    return tuple(dict.fromkeys(items))
