"""The joints that a step makes, in the order of making, and what is to be at hand for them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from setout.join.model import Contact
from setout.place.model import Joint, Side
from setout.plan.order.model import Step
from setout.write.facts import Facts
from setout.write.facts.lines import FastenerLine, fastener_lines
from setout.write.facts.paths import ranges
from setout.write.facts.totals import fasteners


@dataclass(frozen=True)
class Making:
    """Joints that read alike, made in one go: `entering` to `receiving` as the spec has them; a wall of the room stands
    in `walls` ("bottom" the floor). `housings` are the kinds of them; `fasteners` are those of all."""

    entering: tuple[str, ...]
    receiving: tuple[str, ...]
    walls: tuple[str, ...]
    housings: tuple[str, ...]
    fasteners: tuple[FastenerLine, ...]
    glued: bool


@dataclass(frozen=True)
class AtHand:
    """`clamps`: something is glued."""

    fasteners: tuple[FastenerLine, ...]
    glued: bool


def makings(facts: Facts, step: Step) -> tuple[Making, ...]:
    alike: dict[tuple, list[tuple[Joint, tuple[Contact, ...]]]] = {}
    for joint, contacts in _made(facts, step):
        sides = _touched(joint.entering, contacts), _touched(joint.receiving, contacts)
        texts = tuple(tuple(side.text for side in some) for some in sides)
        alike.setdefault((*texts, tuple(m.kind for m in joint.methods)), []).append((joint, contacts))
    return tuple(_making(facts, some) for some in alike.values())


def at_hand(facts: Facts, step: Step) -> AtHand:
    return AtHand(*_fastened(facts, list(_made(facts, step))))


def put(step: Step) -> tuple[str, ...]:
    """The things that a step puts in place or together."""
    return step.things or (step.id.target,)


def _made(facts: Facts, step: Step) -> Iterable[tuple[Joint, tuple[Contact, ...]]]:
    """With the contacts made in this step: a joint may be made in several, what each puts in place."""
    for ident in step.joints:
        contacts = facts.contacts_of.get(ident, ())
        if facts.steps_of[ident] > 1:
            contacts = tuple(c for c in contacts if any(_is_in(c, thing) for thing in put(step)))
        if contacts:
            yield facts.joint_by_id[ident], contacts


def _is_in(contact: Contact, thing: str) -> bool:
    return any(f"{board}.".startswith(f"{thing}.") for board in (contact.a, contact.b) if board)


def _touched(sides: Iterable[Side], contacts: Sequence[Contact]) -> list[Side]:
    """Without those that no contact is about."""
    boards = {path for c in contacts for path in (c.a, c.b)}
    return [s for s in sides if s.wall is not None or not boards.isdisjoint(s.boards)]


def _making(facts: Facts, some: list[tuple[Joint, tuple[Contact, ...]]]) -> Making:
    joint, contacts = some[0]
    receiving = _touched(joint.receiving, contacts)
    cuts = (cut.kind for joint, _ in some for cut in facts.cavities_of.get(joint.id, ()))
    return Making(
        ranges(dict.fromkeys(side.text for side in _touched(joint.entering, contacts))),
        ranges(dict.fromkeys(side.text for side in receiving if side.wall is None)),
        tuple(side.wall.word for side in receiving if side.wall is not None),
        tuple(dict.fromkeys(cuts)),
        *_fastened(facts, some),
    )


def _fastened(facts: Facts, some: list[tuple[Joint, tuple[Contact, ...]]]) -> tuple[tuple[FastenerLine, ...], bool]:
    """Fasteners by size in every scene, and whether there is glue."""
    ids = {contact.id for _, contacts in some for contact in contacts}
    wanted = [joint.id for joint, _ in some]
    scenes = [
        tuple(f for joint in wanted for f in scene.get(joint, ()) if f.contact in ids) for scene in facts.fastenings_of
    ]
    return fastener_lines(facts, fasteners(scenes)), any(f.kind == "glue" for f in scenes[-1])
