"""The schedule of everything that goes into an opening."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from setout.drawing import Drawing
from setout.geometry import Axis
from setout.place.model import HungDoor, ItemFit, ShelfBay, plates_of
from setout.write.drawers.banks import alike_banks, bank_of
from setout.write.drawers.model import Door, Drawers, Kept, Leaf, Shelves
from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import bored, length

EVEN = 3  # holes; fewer are listed


def build(facts: Facts, drawings: Mapping[str, Drawing]) -> Drawers | None:
    """`drawings` by the path of the first of the banks that are alike. None when every opening stays open."""
    scene = facts.scene
    if not (scene.banks or scene.doors or scene.shelves or scene.items):
        return None
    return Drawers(
        drawers=sum(drawer.box is not None for bank in scene.banks for drawer in bank.drawers),
        banks=tuple(bank_of(facts, banks, drawings) for banks in alike_banks(facts)),
        doors=tuple(_door(facts, door) for door in scene.doors),
        shelves=tuple(_shelves(facts, bay) for bay in scene.shelves),
        kept=tuple(_kept(facts, item) for item in scene.items),
    )


def _door(facts: Facts, door: HungDoor) -> Door:
    style, motion = facts.style, facts.scene.instances[door.owner].motion
    wide, high, thick = motion.own_sizes(facts.scene.boards[door.boards[0]].box.sizes)
    hinge = None if door.hardware is None else door.hardware.hinge
    return Door(
        name=spoken(door.path),
        leaves=tuple(_leaf(facts, door, *on) for on in zip(door.boards, door.sides)),
        size=tuple(length(value, style) for value in (wide, high, thick)),
        overlay=door.overlay,
        hinge="" if door.hardware is None else door.hardware.title or door.hardware.name,
        cup=None if hinge is None else bored(hinge.cup, style),
        deep=None if hinge is None else length(hinge.depth, style),
        inward=None if hinge is None else length(hinge.edge + hinge.cup / 2, style),
        apart=None if hinge is None or hinge.plate is None else length(hinge.plate[1], style),
        cups=tuple(length(value, style) for value in door.cups),
    )


def _leaf(facts: Facts, door: HungDoor, leaf: str, side: str) -> Leaf:
    """The plates where they are drilled, and so right for inset doors and sides that stand back."""
    own = facts.scene.instances[door.owner].motion.inverse
    front = own.box(facts.joined.boards[side].box).lo[Axis.DEEP]
    drilled = (f.points for f in facts.scene.fittings if f.id == plates_of(leaf))
    backs = [own.point(points[0])[Axis.DEEP] - front for points in drilled]
    return Leaf(facts.mark_of[leaf], facts.mark_of[side], length(backs[0], facts.style) if backs else None)


def _shelves(facts: Facts, bay: ShelfBay) -> Shelves:
    steps = {b - a for a, b in zip(bay.pins, bay.pins[1:])}
    even = len(bay.pins) >= EVEN and len(steps) == 1
    return Shelves(
        name=spoken(bay.path),
        marks=tuple(Counter(facts.mark_of[path] for path in bay.boards).items()),
        pins=tuple(length(value, facts.style) for value in bay.pins),
        every=length(steps.pop(), facts.style) if even else None,
    )


def _kept(facts: Facts, item: ItemFit) -> Kept:
    sizes, spare = (tuple(length(values[axis], facts.style) for axis in Axis) for values in (item.size, item.spare))
    return Kept(item.title, spoken(item.opening), sizes, spare)
