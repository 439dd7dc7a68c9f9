"""How each board is held to others."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Set

from setout.compare.known import Known
from setout.compare.model import Method
from setout.join.model import Contact
from setout.place.model import Joint
from setout.plan.model import Plan

Held = Mapping[str, tuple[Method, ...]]


def methods_of(plan: Plan) -> Held:
    """By board: each partner with each method, once."""
    drawn = plan.pieces.joined.drawn
    joints = {joint.id: joint for joint in drawn.scene.joints}
    lengths = {(f.contact, f.kind): (f.gauge, f.length) for f in drawn.fastenings}
    found: dict[str, dict[Method, None]] = {}
    for contact in drawn.contacts:
        for path, partner in _sides(contact):
            for method in _methods(joints[contact.joint], contact, partner, lengths):
                found.setdefault(path, {})[method] = None
    return {path: tuple(some) for path, some in found.items()}


def rejoined(
    old: Known, new: Known, held: tuple[Held, Held], to_new: Mapping[str, str], stayed: Set[str]
) -> tuple[tuple[Method, ...], tuple[Method, ...]]:
    """Methods that are gone and new, to partners that both plans have. `to_new`: boards' paths; `stayed`: the new ones
    of them."""
    before = [m for m in held[0].get(old.path, ()) if m.partner in to_new or m.partner.startswith("room.")]
    after = [m for m in held[1].get(new.path, ()) if m.partner in stayed or m.partner.startswith("room.")]
    one = Counter(_common(m, to_new) for m in before)
    other = Counter(_common(m, {}) for m in after)
    gone = tuple(m for m in before if _common(m, to_new) not in other)
    added = tuple(m for m in after if _common(m, {}) not in one)
    return gone, added


def _common(method: Method, to_new: Mapping[str, str]) -> tuple:
    partner = to_new.get(method.partner, method.partner)
    return partner, method.kind, method.gauge, method.length, method.depth


def _sides(contact: Contact) -> Iterator[tuple[str, str]]:
    wall = f"room.{contact.face_a.word}"
    yield contact.a, contact.b or wall
    if contact.b:
        yield contact.b, contact.a


def _methods(joint: Joint, contact: Contact, partner: str, lengths: Mapping) -> Iterator[Method]:
    for method in joint.methods:
        gauge, length = lengths.get((contact.id, method.kind), (None, None))
        yield Method(partner, method.kind, gauge, length, method.depth)


