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
    """`glued`: clamps are wanted."""

    fasteners: tuple[FastenerLine, ...]
    glued: bool


@dataclass(frozen=True)
class Made:
    """A joint as far as a step makes it: the contacts, and the sides that they are about."""

    joint: Joint
    contacts: tuple[Contact, ...]
    entering: tuple[Side, ...]
    receiving: tuple[Side, ...]


def joints_made(facts: Facts, step: Step) -> tuple[Made, ...]:
    """A joint may be made in several steps, in each what it puts in place."""
    found = []
    for ident in step.joints:
        contacts = facts.contacts_of.get(ident, ())
        if facts.steps_of[ident] > 1:
            contacts = tuple(c for c in contacts if any(_is_in(c, thing) for thing in put(step)))
        if contacts:
            joint = facts.joint_by_id[ident]
            found.append(Made(joint, contacts, _touched(joint.entering, contacts), _touched(joint.receiving, contacts)))
    return tuple(found)


def makings(facts: Facts, joints: Iterable[Made]) -> tuple[Making, ...]:
    alike: dict[tuple, list[Made]] = {}
    for one in joints:
        texts = (tuple(side.text for side in some) for some in (one.entering, one.receiving))
        alike.setdefault((*texts, tuple(m.kind for m in one.joint.methods)), []).append(one)
    return tuple(_making(facts, some) for some in alike.values())


def at_hand(facts: Facts, joints: Sequence[Made]) -> AtHand:
    return AtHand(*_fastened(facts, joints))


def put(step: Step) -> tuple[str, ...]:
    """The things that a step puts in place or together."""
    return step.things or (step.id.target,)


def _is_in(contact: Contact, thing: str) -> bool:
    return any(f"{board}.".startswith(f"{thing}.") for board in (contact.a, contact.b) if board)


def _touched(sides: Iterable[Side], contacts: Sequence[Contact]) -> tuple[Side, ...]:
    """Without those that no contact is about."""
    boards = {path for c in contacts for path in (c.a, c.b)}
    return tuple(s for s in sides if s.wall is not None or not boards.isdisjoint(s.boards))


def _making(facts: Facts, some: Sequence[Made]) -> Making:
    first = some[0]
    cuts = (cut.kind for one in some for cut in facts.cavities_of.get(one.joint.id, ()))
    return Making(
        ranges(dict.fromkeys(side.text for side in first.entering)),
        ranges(dict.fromkeys(side.text for side in first.receiving if side.wall is None)),
        tuple(side.wall.word for side in first.receiving if side.wall is not None),
        tuple(dict.fromkeys(cuts)),
        *_fastened(facts, some),
    )


def _fastened(facts: Facts, some: Sequence[Made]) -> tuple[tuple[FastenerLine, ...], bool]:
    """Fasteners by size in every scene, and whether there is glue."""
    ids = {contact.id for one in some for contact in one.contacts}
    wanted = [one.joint.id for one in some]
    scenes = [
        tuple(f for joint in wanted for f in scene.get(joint, ()) if f.contact in ids) for scene in facts.fastenings_of
    ]
    return fastener_lines(facts, fasteners(scenes)), any(f.kind == "glue" for f in scenes[-1])
