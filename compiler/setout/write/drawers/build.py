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
from setout.write.facts.sizes import bored, deep, length, listed_over_scenes, over_scenes

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
        kept=tuple(_kept(facts, item, n) for n, item in enumerate(scene.items)),
    )


def _door(facts: Facts, door: HungDoor) -> Door:
    style, motion = facts.style, facts.scene.instances[door.owner].motion
    scenes = facts.plan.pieces.joined.placed.scenes
    sizes = [motion.own_sizes(scene.boards[door.boards[0]].box.sizes) for scene in scenes]
    cups = [one.cups for scene in scenes for one in scene.doors if one.path == door.path]
    hinge = None if door.hardware is None else door.hardware.hinge
    return Door(
        name=spoken(door.path),
        leaves=tuple(_leaf(facts, door, *on) for on in zip(door.boards, door.sides)),
        size=listed_over_scenes(sizes, style),
        overlay=door.overlay,
        hinge="" if door.hardware is None else door.hardware.title or door.hardware.name,
        cup=None if hinge is None else bored(hinge.cup, style),
        deep=None if hinge is None else deep(hinge.depth, style),
        inward=None if hinge is None else deep(hinge.edge + hinge.cup / 2, style),
        apart=None if hinge is None or hinge.plate is None else deep(hinge.plate[1], style),
        cups=listed_over_scenes(cups, style),
    )


def _leaf(facts: Facts, door: HungDoor, leaf: str, side: str) -> Leaf:
    """The plates where they are drilled, and so right for inset doors and sides that stand back."""
    own = facts.scene.instances[door.owner].motion.inverse
    backs = []
    for joined in facts.plan.pieces.joined.scenes:
        front = own.box(joined.boards[side].box).lo[Axis.DEEP]
        drilled = (f.points[0] for f in joined.scene.fittings if f.id == plates_of(leaf))
        backs += [own.point(point)[Axis.DEEP] - front for point in drilled]
    return Leaf(facts.mark_of[leaf], facts.mark_of[side], over_scenes(backs, facts.style) if backs else None)


def _shelves(facts: Facts, bay: ShelfBay) -> Shelves:
    steps = {b - a for a, b in zip(bay.pins, bay.pins[1:])}
    even = len(bay.pins) >= EVEN and len(steps) == 1
    scenes = facts.plan.pieces.joined.placed.scenes
    pins = [one.pins for scene in scenes for one in scene.shelves if one.path == bay.path]
    pitches = [some[1] - some[0] for some in pins if len(some) >= EVEN]
    return Shelves(
        name=spoken(bay.path),
        marks=tuple(Counter(facts.mark_of[path] for path in bay.boards).items()),
        pins=listed_over_scenes(pins, facts.style),
        every=over_scenes(pitches, facts.style, deep) if even else None,
    )


def _kept(facts: Facts, item: ItemFit, n: int) -> Kept:
    """The item that comes `n`th in every scene."""
    spares = [scene.items[n].spare for scene in facts.plan.pieces.joined.placed.scenes]
    sizes = tuple(length(item.size[axis], facts.style) for axis in Axis)
    return Kept(item.title, spoken(item.opening), sizes, listed_over_scenes(spares, facts.style))
