"""One sheet for each kind of assembly: what it is made of, how that is joined, and how to see that it is square."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace

from setout.drawing import Drawing
from setout.place.model import Fitting, Instance
from setout.write.assemblies.groups import Group, inside, room_for_parts, stands_beside
from setout.write.assemblies.joints import joints
from setout.write.assemblies.model import Assemblies, Hardware, Part, Sheet
from setout.write.assemblies.paths import within
from setout.write.assemblies.square import square
from setout.write.facts import Facts
from setout.write.facts.faces import own_face
from setout.write.facts.paths import ranges, spoken
from setout.write.facts.sizes import Length, bored, deep, length, size


def build(facts: Facts, groups: tuple[Group, ...], drawings: Mapping[str, Drawing]) -> Assemblies | None:
    """`drawings` by group key. None when nothing stands in place."""
    sheets = tuple(_sheet(facts, group, drawings.get(group.key)) for group in groups)
    many = Counter(sheet.title for sheet in sheets)
    told = (_told_apart(sheet, group) if many[sheet.title] > 1 else sheet for sheet, group in zip(sheets, groups))
    return Assemblies(tuple(told)) if sheets else None


def _told_apart(sheet: Sheet, group: Group) -> Sheet:
    return replace(sheet, called=", ".join(ranges(path for path in group.paths if path)))


def _sheet(facts: Facts, group: Group, drawing: Drawing | None) -> Sheet:
    first = group.first
    return Sheet(
        title=first.title or first.definition or facts.project.title,
        letter=facts.letter(first.definition),
        names=tuple(spoken(path) for path in group.paths if path),
        sizes=_sizes(facts, group) if first.path and first.box is not None else (),
        drawing=drawing,
        beside=drawing is not None and stands_beside(facts, first),
        parts=_parts(facts, first),
        sub=ranges(within(first, i.path) for i in inside(facts, first)),
        joints=joints(facts, first),
        hardware=_hardware(facts, first),
        square=square(facts, first),
        parts_wide=0 if drawing is None else room_for_parts(facts, drawing),
    )


def _sizes(facts: Facts, group: Group) -> tuple[Length, ...]:
    """Wide, high, deep; each of the assemblies alike may hang on a measure."""
    every = [facts.sizes_over_scenes(path) for path in group.paths]
    return tuple(next((one for one in sizes if one.waits), sizes[0]) for sizes in zip(*every))


def _parts(facts: Facts, instance: Instance) -> tuple[Part, ...]:
    """Its boards by mark, then what it has that stands nowhere."""
    named: dict[str, list[str]] = {}
    for path in facts.boards_of.get(instance.path, ()):
        named.setdefault(facts.mark_of[path], []).append(within(instance, path))
    placed = tuple(_part(facts, mark, names, len(names)) for mark, names in named.items())
    loose = facts.loose_of.get(instance.path, ())
    return placed + tuple(_part(facts, facts.mark_of[part.path], [part.name], part.count) for part in loose)


def _part(facts: Facts, mark: str, names: list[str], count: int) -> Part:
    piece = facts.piece_by_mark[mark]
    sides = (size(piece.length, facts.style), size(piece.width, facts.style), length(piece.thick, facts.style))
    return Part(mark, ranges(names), count, *sides)


def _hardware(facts: Facts, instance: Instance) -> tuple[Hardware, ...]:
    """A line for each kind and hole: a hinge has its cup in the door, its plate on the case."""
    kinds: dict[tuple, list[Fitting]] = {}
    for fitting in facts.fittings_of.get(instance.path, ()):
        kinds.setdefault((fitting.hardware.name, fitting.hardware.hole), []).append(fitting)
    return tuple(_kind(facts, fittings) for fittings in kinds.values())


def _kind(facts: Facts, fittings: list[Fitting]) -> Hardware:
    hardware = fittings[0].hardware
    hole = hardware.hole
    faces = ((f.board, own_face(facts.scene, facts.scene.boards[f.board], f.face).word) for f in fittings)
    return Hardware(
        title=hardware.title or hardware.name,
        count=sum(fitting.count for fitting in fittings),
        pairs=hardware.slide is not None,
        on=tuple(dict.fromkeys((facts.mark_of[board], face) for board, face in faces)),
        diameter=None if hole is None else bored(hole[0], facts.style),
        depth=None if hole is None or hole[1] is None else deep(hole[1], facts.style),
    )
