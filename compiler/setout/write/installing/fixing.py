"""Screws into the walls of the room."""

from __future__ import annotations

from dataclasses import dataclass

from setout.geometry import Axis
from setout.write.facts import Facts
from setout.write.facts.sizes import Length, length, maybe_bought
from setout.write.installing.units import datum


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
    room = datum(facts)
    assert room is not None
    points = [b.at for board in facts.joined.boards.values() for b in board.bores if b.source in ids]
    side = Axis.WIDE if wall in ("front", "back") else Axis.DEEP
    heights, places = (sorted({p[axis] - room.lo[axis] for p in points}) for axis in (Axis.HIGH, side))
    return Fixing(
        wall,
        count,
        gauge,
        maybe_bought(long, facts.style),
        tuple(length(v, facts.style) for v in heights),
        tuple(length(v, facts.style) for v in places),
        studs,
    )
