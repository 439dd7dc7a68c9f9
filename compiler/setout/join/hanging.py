"""Boards that nothing holds up, and what hangs on one screw."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from setout.diagnostics import Diagnostic, Severity
from setout.geometry import ALL_FACES, Axis, Box
from setout.join import problems
from setout.join.ground import Ground
from setout.join.model import Contact, Fastening
from setout.join.touching import Touches
from setout.place.model import Board, Scene

_LOOKED_AT = 40  # groups for which the nearest board is looked for
_LOOKED_FROM = 10  # boards of such a group
_NONE = Fraction(0)


def unheld(
    ground: Ground,
    found: Touches,
    contacts: Iterable[Contact],
    fastenings: Iterable[Fastening],
    told: Iterable[Diagnostic],
) -> list[Diagnostic]:
    """A warning for whatever hangs by one single screw, and for what nothing holds at all.

    With mistakes among `told` it isn't looked at what nothing holds: they may be why.
    """
    screws = _wall_screws(contacts, fastenings)
    is_sound = not any(d.severity is Severity.ERROR for d in told)
    if not is_sound and 1 not in screws.values():
        return []
    groups = _groups(ground.scene.boards, found.neighbours)
    return [*_on_one_screw(ground.scene, groups, screws), *(_in_the_air(ground, groups) if is_sound else ())]


def moving_fronts(scene: Scene) -> frozenset[str]:
    """The fronts of drawers, doors, and shelves on pins."""
    fronts = [f"{drawer.path}.front_panel" for bank in scene.banks for drawer in bank.drawers]
    pinned = [path for bay in scene.shelves if bay.pins for path in bay.boards]
    return frozenset((*fronts, *pinned, *(path for door in scene.doors for path in door.boards)))


def on_hardware(scene: Scene) -> frozenset[str]:
    """What stands on feet, runs on slides, or hangs on hinges or pins."""
    drawers = (path for bank in scene.banks for drawer in bank.drawers for path in drawer.boards)
    return moving_fronts(scene).union(drawers, (fitting.board for fitting in scene.fittings))


def _wall_screws(contacts: Iterable[Contact], fastenings: Iterable[Fastening]) -> dict[str, int]:
    """How many screws hold a board to the walls."""
    walls = {contact.id: contact for contact in contacts if contact.b is None and contact.face_a.axis is not Axis.HIGH}
    by_board: dict[str, int] = {}
    for fastening in fastenings:
        if fastening.contact in walls and fastening.kind == "screws":
            board = walls[fastening.contact].a
            by_board[board] = by_board.get(board, 0) + fastening.count
    return by_board


def _on_one_screw(scene: Scene, groups: list[list[str]], screws: Mapping[str, int]) -> list[Diagnostic]:
    """For whatever is off the floor and held to the walls by one single screw."""
    if 1 not in screws.values():
        return []
    floor = scene.room.lo[Axis.HIGH] if scene.room else _NONE
    told = []
    for group in groups:
        screwed = [path for path in group if screws.get(path)]
        stands = any(scene.boards[path].box.lo[Axis.HIGH] <= floor for path in group)
        if len(screwed) == 1 and screws[screwed[0]] == 1 and not stands:
            told.append(problems.one_stud_screw(scene.boards[screwed[0]]))
    return told


def _in_the_air(ground: Ground, groups: list[list[str]]) -> list[Diagnostic]:
    """For each board, or group of boards, that touches nothing else.

    Hardware holds what it is fitted to. A job without a room may hang anywhere: it is looked at only where some of it
    stands at its bottom.
    """
    scene = ground.scene
    held = on_hardware(scene)
    based = [any(_at_the_room(scene, scene.boards[path].box) for path in group) for group in groups]
    if scene.room is None and not any(based):
        return []
    loose = [g for g, at_room in zip(groups, based) if not at_room and not any(path in held for path in g)]
    return [_told(ground, group, count < _LOOKED_AT) for count, group in enumerate(loose)]


def _groups(boards: Mapping[str, Board], neighbours: Mapping[str, list[str]]) -> list[list[str]]:
    groups, met = [], set()
    for path in boards:
        if path in met:
            continue
        met.add(path)
        group = [path]
        for at in group:
            new = [other for other in dict.fromkeys(neighbours.get(at, ())) if other not in met]
            met.update(new)
            group += new
        groups.append(group)
    return groups


def _at_the_room(scene: Scene, box: Box) -> bool:
    if scene.room is None:
        return box.lo[Axis.HIGH] <= 0
    return any((box.face(face) - scene.room.face(face)) * face.sign >= 0 for face in ALL_FACES)


def _told(ground: Ground, group: list[str], look: bool) -> Diagnostic:
    boards, inside = ground.scene.boards, set(group)
    one = boards[group[0]]
    others = [board for path, board in boards.items() if path not in inside] if look else []
    pairs = ((_apart(boards[a].box, other.box), other) for a in group[:_LOOKED_FROM] for other in others)
    near = min(pairs, key=lambda pair: pair[0][1], default=None)
    if near is None:
        return problems.hangs_in_the_air(ground, one, len(group), None, None, _NONE)
    (axis, _, gap), other = near
    return problems.hangs_in_the_air(ground, one, len(group), other, axis, gap)


def _apart(a: Box, b: Box) -> tuple[Axis, Fraction, Fraction]:
    """The axis on which they are farthest apart, the distance squared, and how far on that axis."""
    gaps = [max(b.lo[k] - a.hi[k], a.lo[k] - b.hi[k], _NONE) for k in Axis]
    axis = max(Axis, key=lambda k: gaps[k])
    return axis, sum((gap * gap for gap in gaps), _NONE), gaps[axis]
