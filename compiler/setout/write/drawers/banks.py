"""Banks of drawers that are alike share a schedule."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction

from setout.drawing import Drawing
from setout.place.model import Drawer, DrawerBank
from setout.write.drawers.model import Bank, Block, Front, Row, Slides
from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import Length, decimal, length, listed_over_scenes, over_scenes

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
        opening=_lengths(facts, one, lambda bank: bank.opening),
        style=one.style,
        reveal=length(one.reveal, facts.style),
        clearance=_one(facts, one, lambda bank: bank.clearance),
        rows=tuple(_row(facts, one, n) for n in range(len(one.drawers))),
        slides=_slides(facts, banks),
        sides=tuple(facts.mark_of[path] for path in one.sides),
        packers=_counted(facts, one.packers),
        blocks=_blocks(facts, one, "slides"),
        gaps=_blocks(facts, one, "fronts"),
        waits=_waits(facts, one),
    )


def _row(facts: Facts, bank: DrawerBank, n: int) -> Row:
    drawer = bank.drawers[n]
    faces = [path for path in drawer.boards if path.endswith(".front_panel")] if drawer.front else []
    front = None
    if drawer.front is not None and drawer.front_low is not None:
        mark = facts.mark_of[faces[0]] if faces else ""
        sizes = _lengths(facts, bank, lambda bank: bank.drawers[n].front or ())
        front = Front(mark, sizes, _one(facts, bank, lambda bank: bank.drawers[n].front_low))
    return Row(
        number=drawer.number,
        front=front,
        box=_lengths(facts, bank, lambda bank: bank.drawers[n].box or ()),
        bottom=() if drawer.bottom is None else _bottom_cut(facts, drawer),
        slide=None if drawer.slide is None else _one(facts, bank, lambda bank: bank.drawers[n].slide),
        boards=_counted(facts, [path for path in drawer.boards if path not in faces]),
    )


def _bottom_cut(facts: Facts, drawer: Drawer) -> tuple[Length, ...]:
    """Wide and deep with the tongues in its grooves: what the cut list says."""
    path, motion = f"{drawer.path}.bottom_panel", facts.scene.instances[drawer.path].motion
    sizes = [motion.own_sizes(scene.boards[path].box.sizes) for scene in facts.plan.pieces.joined.scenes]
    return listed_over_scenes([(wide, deep) for wide, _, deep in sizes], facts.style)


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
        screws=tuple(length(screw, style) for screw in slide.screws),
        load="" if slide.load is None else decimal(slide.load, 0),
        each="" if one.load is None else decimal(one.load, 0),
    )


def _blocks(facts: Facts, bank: DrawerBank, kind: str) -> tuple[Block, ...]:
    """One set of slide blocks serves all the copies, so they are cut once."""
    found = [spacer for spacer in bank.spacers if spacer.kind == kind]
    sizes = _lengths(facts, bank, lambda bank: [spacer.size for spacer in bank.spacers if spacer.kind == kind])
    return tuple(Block(size, s.number, s.count) for size, s in zip(sizes, found))


def _waits(facts: Facts, bank: DrawerBank) -> bool:
    """Whether any of its numbers is another in another scene."""
    return len({_numbers(one) for one in _in_scenes(facts, bank)}) > 1


def _in_scenes(facts: Facts, bank: DrawerBank) -> list[DrawerBank]:
    return [one for scene in facts.plan.pieces.joined.placed.scenes for one in scene.banks if one.path == bank.path]


def _likeness(facts: Facts, bank: DrawerBank) -> tuple:
    marks = tuple(facts.mark_of[path] for drawer in bank.drawers for path in drawer.boards)
    sides = tuple(facts.mark_of[path] for path in bank.sides)
    hardware = None if bank.hardware is None else bank.hardware.name
    numbers = tuple(map(_numbers, _in_scenes(facts, bank)))
    return numbers, marks, sides, hardware, bank.load, facts.scene.instances[bank.owner].definition


def _numbers(bank: DrawerBank) -> tuple:
    drawers = tuple((d.number, d.front, d.front_low, d.box, d.box_low, d.bottom, d.slide) for d in bank.drawers)
    return bank.opening, bank.style, bank.reveal, bank.clearance, drawers, bank.spacers


def _counted(facts: Facts, paths) -> tuple[tuple[str, int], ...]:
    return tuple(Counter(facts.mark_of[path] for path in paths).items())


def _lengths(facts: Facts, bank: DrawerBank, of: Callable[[DrawerBank], Sequence[Fraction]]) -> tuple[Length, ...]:
    return listed_over_scenes(map(of, _in_scenes(facts, bank)), facts.style)


def _one(facts: Facts, bank: DrawerBank, of: Callable[[DrawerBank], Fraction | None]) -> Length:
    """Of what the bank has."""
    values = (of(one) for one in _in_scenes(facts, bank))
    return over_scenes((value or Fraction(0) for value in values), facts.style)
