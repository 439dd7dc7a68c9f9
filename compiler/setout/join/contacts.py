"""Where the parts that a joint names meet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.geometry import Axis, Box, Face
from setout.join import problems
from setout.join.ground import Ground
from setout.join.model import Contact
from setout.join.solid import Solid, touch
from setout.join.touching import Pair, Touches
from setout.place.model import Board, Joint, Rest, Side


@dataclass(frozen=True)
class Meetings:
    """`contacts` of the joints; `covered`: pairs of boards (in both orders) that some joint or rest speaks of."""

    contacts: tuple[Contact, ...]
    covered: frozenset[Pair]
    diagnostics: tuple[Diagnostic, ...]


def meetings(ground: Ground, touches: Touches) -> Meetings:
    """The contacts of every joint, each receiving side of it served by each entering one."""
    contacts: dict[str, Contact] = {}
    found: list[Diagnostic] = []
    covered = _covered(ground, touches)
    for joint in ground.scene.joints:
        for entering in joint.entering:
            for receiving in joint.receiving:
                here, wrong = _side(ground, touches, covered, joint, entering, receiving)
                contacts.update((c.id, c) for c in here)
                found += wrong
    found += [problems.rests_on_nothing(rest) for rest in ground.scene.rests if _hovers(ground, touches, rest)]
    return Meetings(tuple(contacts.values()), covered, tuple(found))


def _hovers(ground: Ground, touches: Touches, rest: Rest) -> bool:
    """Whether nothing of what rests touches anything of what it rests on. The floor and the walls are not looked at."""
    lower = {path for path in rest.lower if path in ground.scene.boards}
    upper = [path for path in rest.upper if path in ground.scene.boards]
    return bool(lower and upper) and not any(lower.intersection(touches.neighbours.get(path, ())) for path in upper)


def _side(
    ground: Ground, touches: Touches, covered: frozenset[Pair], joint: Joint, entering: Side, receiving: Side
) -> tuple[list[Contact], list[Diagnostic]]:
    if receiving.wall is not None:
        wall, boards = receiving.wall, _boards(ground, entering)
        here = [c for a in boards for c in _on_wall(ground, joint, a, wall)]
        here = here or [c for a in boards for c in _by_a_panel(ground, touches, covered, joint, a, wall)]
        known = bool(_boards(ground, entering)) and ground.scene.room is not None
        missed = known and not here
        if not missed:
            return here, []
        between = next(((a, b) for a in boards for b in _panels(ground, touches, a, wall)), None)
        return here, [problems.not_at_wall(ground, entering, receiving, between)]
    pairs = list(_touching_pairs(touches, entering, receiving))
    here = [c for a, b in pairs for c in _between(ground, touches, joint, a, b)]
    if here or not _boards(ground, entering) or not _boards(ground, receiving):
        return here, []
    if any(touches.between(a, b).shared or touches.between(a, b).intricate for a, b in pairs):
        return here, []  # the overlap is what is wrong, and is told
    if any(touches.between(a, b).meetings for a, b in pairs):
        return here, [problems.only_leaves_nothing(joint, entering, receiving)]
    if _outright(entering) and _outright(receiving):
        a, b = _boards(ground, entering)[0], _boards(ground, receiving)[0]
        return here, [problems.parts_apart(ground, entering, receiving, a, b, _gaps(a.box, b.box))]
    return here, [problems.nothing_touches(joint, entering, receiving)]


def _boards(ground: Ground, side: Side) -> list[Board]:
    """The side's boards that could be placed."""
    return [ground.scene.boards[path] for path in side.boards if path in ground.scene.boards]


def _outright(side: Side) -> bool:
    """Whether one part is named; a repeat stands for whichever of its members touch."""
    return side.single and len(side.boards) == 1


def _touching_pairs(touches: Touches, entering: Side, receiving: Side) -> Iterable[Pair]:
    seen, receivers = set(), set(receiving.boards)
    for a in entering.boards:
        for b in touches.neighbours.get(a, ()):
            if b in receivers and a != b and (b, a) not in seen:
                seen.add((a, b))
                yield a, b


def _between(ground: Ground, touches: Touches, joint: Joint, a: str, b: str) -> Iterable[Contact]:
    boards = ground.scene.boards
    how = touches.between(a, b)
    if how.shared is not None:
        return  # what overlaps is told as such, and joined to nothing
    count = 0
    for meeting in how.meetings:
        kind = _kind(boards[a], boards[b], meeting.face)
        if joint.only is not None and kind != joint.only:
            continue
        count += 1
        ident = f"{joint.id}/{a}/{b}" + (f"/{count}" if count > 1 else "")
        yield Contact(ident, joint.id, a, b, meeting.face, meeting.face.opposite, meeting.area, kind)


def _kind(a: Board, b: Board, face: Face) -> str:
    return {(0, 1): "butt", (1, 0): "lap", (1, 1): "face", (0, 0): "edge"}[face.axis == a.thick, face.axis == b.thick]


def _gaps(a: Box, b: Box) -> list[tuple[Face, Fraction]]:
    """By how much `a` would have to move, and towards which of its faces, on each axis where they are apart."""
    gaps = []
    for axis in Axis:
        for face, gap in ((Face(axis, 1), b.lo[axis] - a.hi[axis]), (Face(axis, -1), a.lo[axis] - b.hi[axis])):
            if gap > 0:
                gaps.append((face, gap))
    return gaps


def _on_wall(ground: Ground, joint: Joint, board: Board, wall: Face) -> Iterable[Contact]:
    room = ground.scene.room
    if room is None:
        return
    behind = room.with_span(wall.axis, *_outside(room, wall))
    kind = "face" if wall.axis == board.thick else "butt"
    if joint.only is not None and kind != joint.only:
        return
    found = touch(ground.solids[board.path], Solid(behind)).meetings
    for count, meeting in enumerate(m for m in found if m.face == wall):
        ident = f"{joint.id}/{board.path}/room.{wall.word}" + (f"/{count + 1}" if count else "")
        yield Contact(ident, joint.id, board.path, None, meeting.face, wall.opposite, meeting.area, kind)


def _by_a_panel(
    ground: Ground, touches: Touches, covered: frozenset[Pair], joint: Joint, rail: Board, wall: Face
) -> Iterable[Contact]:
    """Where a rail reaches the wall by a panel behind it that it is joined to: what of the panel is behind the rail."""
    for panel in _panels(ground, touches, rail, wall):
        if (rail.path, panel.path) not in covered:
            continue
        for contact in _on_wall(ground, joint, panel, wall):
            at = contact.area.lo[wall.axis]
            behind = contact.area.shared(rail.box.with_span(wall.axis, at, at))
            if behind is not None and sum(size > 0 for size in behind.sizes) == 2:
                yield replace(contact, id=f"{contact.id}/{rail.path}", area=behind)


def _panels(ground: Ground, touches: Touches, rail: Board, wall: Face) -> list[Board]:
    """Boards of the same assembly that lie flat between this one and the wall."""
    room, unit, found = ground.scene.room, ground.scene.unit_of, []
    for path in touches.neighbours.get(rail.path, ()):
        panel = ground.scene.boards[path]
        if (
            room is not None
            and unit[path] == unit[rail.path]
            and wall.axis is not Axis.HIGH
            and wall.axis == rail.thick == panel.thick
            and panel.box.face(wall) == room.face(wall)
            and any(m.face == wall for m in touches.between(rail.path, path).meetings)
        ):
            found.append(panel)
    return found


def _outside(room: Box, wall: Face) -> tuple[Fraction, Fraction]:
    at = room.face(wall)
    return (at, at + 1) if wall.sign > 0 else (at - 1, at)


def _covered(ground: Ground, touches: Touches) -> frozenset[Pair]:
    scene = ground.scene
    sides = [(e.boards, r.boards) for j in scene.joints for e in j.entering for r in j.receiving]
    sides += [(rest.upper, rest.lower) for rest in scene.rests]
    covered: set[Pair] = set()
    for left, right in sides:
        others = set(right)
        for a in left:
            covered.update(pair for b in touches.neighbours.get(a, ()) if b in others for pair in ((a, b), (b, a)))
    return frozenset(covered)
