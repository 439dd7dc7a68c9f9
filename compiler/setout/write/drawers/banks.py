"""Banks of drawers that are alike share a schedule."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from fractions import Fraction

from setout.drawing import Drawing
from setout.place.model import Drawer, DrawerBank
from setout.write.drawers.model import Bank, Block, Front, Row, Slides
from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import Length, decimal, length

Alike = tuple[DrawerBank, ...]


def alike_banks(facts: Facts) -> tuple[Alike, ...]:
    """Those of the same numbers and marks, in the order placed; the first stands for all."""
    found: dict[tuple, list[DrawerBank]] = {}
    for bank in facts.scene.banks:
        found.setdefault(_likeness(facts, bank), []).append(bank)
    return tuple(tuple(banks) for banks in found.values())


def bank_of(facts: Facts, banks: Alike, drawings: Mapping[str, Drawing]) -> Bank:
    one = banks[0]
    return Bank(
        names=tuple(spoken(bank.path) for bank in banks),
        drawing=drawings.get(one.path),
        opening=_lengths(facts, one.opening),
        style=one.style,
        reveal=length(one.reveal, facts.style),
        clearance=length(one.clearance, facts.style),
        rows=tuple(_row(facts, drawer) for drawer in one.drawers),
        slides=_slides(facts, banks),
        sides=tuple(facts.mark_of[path] for path in one.sides),
        packers=_counted(facts, one.packers),
        blocks=_blocks(facts, banks, "slides"),
        gaps=_blocks(facts, banks, "fronts"),
        waits=_waits(facts, one),
    )


def _row(facts: Facts, drawer: Drawer) -> Row:
    faces = [path for path in drawer.boards if path.endswith(".front_panel")] if drawer.front else []
    front = None
    if drawer.front is not None and drawer.front_low is not None:
        mark = facts.mark_of[faces[0]] if faces else ""
        front = Front(mark, _lengths(facts, drawer.front), length(drawer.front_low, facts.style))
    return Row(
        number=drawer.number,
        front=front,
        box=_lengths(facts, drawer.box or ()),
        bottom=() if drawer.bottom is None else _lengths(facts, _bottom_cut(facts, drawer)),
        slide=None if drawer.slide is None else length(drawer.slide, facts.style),
        boards=_counted(facts, [path for path in drawer.boards if path not in faces]),
    )


def _bottom_cut(facts: Facts, drawer: Drawer) -> tuple[Fraction, Fraction]:
    """Wide and deep with the tongues in its grooves: what the cut list says."""
    path = f"{drawer.path}.bottom_panel"
    wide, _, deep = facts.scene.instances[drawer.path].motion.own_sizes(facts.joined.boards[path].box.sizes)
    return wide, deep


def _slides(facts: Facts, banks: Alike) -> Slides | None:
    one = banks[0]
    if one.hardware is None or one.hardware.slide is None:
        return None
    slide, style = one.hardware.slide, facts.style
    return Slides(
        title=one.hardware.title or one.hardware.name,
        kind=slide.kind,
        length=length(slide.length, style),
        pairs=len(banks) * sum(drawer.box is not None for drawer in one.drawers),
        setback=length(slide.setback, style),
        screws=_lengths(facts, slide.screws),
        load="" if slide.load is None else decimal(slide.load, 0),
        each="" if one.load is None else decimal(one.load, 0),
    )


def _blocks(facts: Facts, banks: Alike, kind: str) -> tuple[Block, ...]:
    """One set of slide blocks serves all the copies, so they are cut once."""
    found = (spacer for spacer in banks[0].spacers if spacer.kind == kind)
    return tuple(Block(length(s.size, facts.style), s.number, s.count) for s in found)


def _waits(facts: Facts, bank: DrawerBank) -> bool:
    """Whether its numbers are others in another scene."""
    scenes = facts.plan.pieces.joined.placed.scenes
    return len({_numbers(b) for scene in scenes for b in scene.banks if b.path == bank.path}) > 1


def _likeness(facts: Facts, bank: DrawerBank) -> tuple:
    marks = tuple(facts.mark_of[path] for drawer in bank.drawers for path in drawer.boards)
    sides = tuple(facts.mark_of[path] for path in bank.sides)
    hardware = None if bank.hardware is None else bank.hardware.name
    return _numbers(bank), marks, sides, hardware, bank.load, facts.scene.instances[bank.owner].definition


def _numbers(bank: DrawerBank) -> tuple:
    drawers = tuple((d.number, d.front, d.front_low, d.box, d.box_low, d.bottom, d.slide) for d in bank.drawers)
    return bank.opening, bank.style, bank.reveal, bank.clearance, drawers, bank.spacers


def _counted(facts: Facts, paths) -> tuple[tuple[str, int], ...]:
    return tuple(Counter(facts.mark_of[path] for path in paths).items())


def _lengths(facts: Facts, values) -> tuple[Length, ...]:
    return tuple(length(value, facts.style) for value in values)
