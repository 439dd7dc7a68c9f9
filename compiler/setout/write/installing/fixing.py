"""Screws into the walls of the room."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from setout.geometry import Axis
from setout.write.facts import Facts
from setout.write.facts.scenes import InScene
from setout.write.facts.sizes import Length, length, maybe_bought


@dataclass(frozen=True)
class Fixing:
    """Screws of one size into one wall. `at` heights above the floor, `along` places from the left wall. `studs`: into
    those."""

    wall: str
    count: int
    gauge: int | None
    length: Length | None
    at: tuple[Length, ...]
    along: tuple[Length, ...]
    studs: bool


def fixings(facts: Facts, unit: str) -> tuple[Fixing, ...]:
    """Screws into walls, by wall and size, with where they are drilled."""
    contacts = {c.id: c for c in facts.room_contacts_of.get(unit, ()) if c.face_a.axis != Axis.HIGH}
    found: dict[tuple, list[str]] = {}
    count: dict[tuple, int] = {}
    for f in facts.joined.fastenings:
        if f.kind == "screws" and f.contact in contacts:
            key = contacts[f.contact].face_a.word, f.gauge, f.length
            found.setdefault(key, []).append(f.contact)
            count[key] = count.get(key, 0) + f.count
    studs = {c.id for c in contacts.values() if any(m.studs for m in facts.joint_by_id[c.joint].methods)}
    return tuple(_fixing(facts, key, count[key], ids, not studs.isdisjoint(ids)) for key, ids in found.items())


def _fixing(facts: Facts, key: tuple, count: int, ids: list[str], studs: bool) -> Fixing:
    wall, gauge, long = key
    side = Axis.WIDE if wall in ("front", "back") else Axis.DEEP
    return Fixing(
        wall,
        count,
        gauge,
        maybe_bought(long, facts.style),
        _places(facts, ids, Axis.HIGH),
        _places(facts, ids, side),
        studs,
    )


def _places(facts: Facts, ids: list[str], axis: Axis) -> tuple[Length, ...]:
    """Of the screws of those contacts; one that another scene has nowhere hangs on a measure."""
    scenes = [_drilled(scene, ids, axis) for scene in facts.in_scenes]
    settled = frozenset.intersection(*scenes)
    return tuple(replace(length(v, facts.style), waits=v not in settled) for v in sorted(scenes[-1]))


def _drilled(scene: InScene, ids: list[str], axis: Axis) -> frozenset[Fraction]:
    bores = (bore for board in scene.joined.boards.values() for bore in board.bores if bore.source in ids)
    return frozenset(bore.at[axis] - scene.datum.lo[axis] for bore in bores)
