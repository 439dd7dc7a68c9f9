"""A joined scene as a foreman sees it: units that are carried in one by one, what touches what, what each weighs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from itertools import accumulate, combinations

from setout.geometry import Axis, Box, Face, bounding
from setout.join.model import JoinedBoard, JoinedScene
from setout.join.sweep import close_pairs
from setout.place.model import Notch, Scene
from setout.practice import Practice
from setout.strength import weight
from setout.units import Style

_MANY_CUTS = 12  # beyond it the volume gone is added up cut by cut, which is off only where cuts overlap


@dataclass(frozen=True)
class Touching:
    """`board` touches `other` (None: the room) with its `face`, over `area`."""

    other: str | None
    face: Face
    area: Box


@dataclass(frozen=True)
class View:
    joined: JoinedScene
    practice: Practice
    style: Style

    @property
    def scene(self) -> Scene:
        return self.joined.scene

    @cached_property
    def units(self) -> dict[str, tuple[str, ...]]:
        """What is carried in as one, with its boards: assemblies placed in the job, and the job's own boards."""
        found: dict[str, list[str]] = {}
        for path in self.joined.boards:
            found.setdefault(self.unit_of[path], []).append(path)
        return {unit: tuple(boards) for unit, boards in found.items()}

    @property
    def unit_of(self) -> Mapping[str, str]:
        return self.scene.unit_of

    @cached_property
    def boards_in(self) -> dict[str, list[str]]:
        """By assembly all its boards, those of the assemblies in it too."""
        found: dict[str, list[str]] = {path: [] for path in self.scene.instances}
        for path, board in self.joined.boards.items():
            for outer in accumulate(board.board.owner.split("."), "{}.{}".format):
                if outer in found:  # a drawer is `chest.bay.1`, and there is no `chest.bay`
                    found[outer].append(path)
        return found

    @property
    def floor(self) -> Fraction:
        return self.scene.room.lo[Axis.HIGH] if self.scene.room is not None else Fraction(0)

    @cached_property
    def feet(self) -> dict[str, Fraction]:
        """By how much feet lift the boards under which they are fitted."""
        found: dict[str, Fraction] = {}
        for fitting in self.scene.fittings:
            if fitting.face == Face(Axis.HIGH, -1):
                found[fitting.board] = max(found.get(fitting.board, Fraction(0)), fitting.hardware.raises)
        return found

    def outline(self, boards: Iterable[str]) -> Box:
        """The smallest box about the boards, their feet and banding put on top."""
        return bounding(self.true_box(path) for path in boards)

    def true_box(self, path: str) -> Box:
        """A board with its feet and the banding put on top."""
        banded = self.joined.boards[path].board.banded
        return banded.stretched(Face(Axis.HIGH, -1), self.feet.get(path, Fraction(0)))

    @cached_property
    def touching(self) -> dict[str, list[Touching]]:
        """By board: its joints' contacts, and what it rests on without one."""
        found: dict[str, list[Touching]] = {path: [] for path in self.joined.boards}
        for contact in self.joined.contacts:
            found[contact.a].append(Touching(contact.b, contact.face_a, contact.area))
            if contact.b is not None:
                found[contact.b].append(Touching(contact.a, contact.face_b, contact.area))
        for upper, lower in {(u, low) for rest in self.scene.rests for u in rest.upper for low in rest.lower}:
            area = self.joined.boards[upper].board.box.shared(self.joined.boards[lower].board.box)
            flat = [k for k in range(3) if area is not None and area.size(k) == 0]
            if area is None or len(flat) != 1:
                continue
            sign = 1 if self.joined.boards[upper].board.box.hi[flat[0]] == area.lo[flat[0]] else -1
            face = Face(Axis(flat[0]), sign)
            found[upper].append(Touching(lower, face, area))
            found[lower].append(Touching(upper, face.opposite, area))
        return {path: sorted(some, key=lambda t: (t.other or "", t.face, t.area.lo)) for path, some in found.items()}

    @cached_property
    def joined_to(self) -> Mapping[str, set[str]]:
        """By unit, the others that a joint holds to it."""
        found: dict[str, set[str]] = {unit: set() for unit in self.units}
        for contact in self.joined.contacts:
            if contact.b is not None:
                a, b = self.unit_of[contact.a], self.unit_of[contact.b]
                if a != b:
                    found[a].add(b)
                    found[b].add(a)
        return found

    @cached_property
    def right_under(self) -> dict[str, list[Touching]]:
        """By board, those that it lies on with its feet or its own underside, joined or not: they carry it anyhow."""
        paths = list(self.joined.boards)
        boxes = [self.true_box(path) for path in paths]
        found: dict[str, list[Touching]] = {}
        for i, j in close_pairs(boxes):
            for low, high in ((i, j), (j, i)):
                area = boxes[low].shared(boxes[high])
                if area is not None and boxes[low].hi[Axis.HIGH] == boxes[high].lo[Axis.HIGH] and _flat(area):
                    found.setdefault(paths[high], []).append(Touching(paths[low], Face(Axis.HIGH, -1), area))
        return found

    @cached_property
    def weights(self) -> dict[str, Fraction | None]:
        """Boards, assemblies and loose boards (all copies); None where something in it has no density."""
        found = dict(self._weight_of)
        for path in self.scene.instances:
            if path:
                found[path] = self.total(self.boards_in[path])
        for loose in self.scene.loose:
            stock = loose.stock
            one = loose.length * loose.width * stock.thick
            found[loose.path] = weight(one, stock.density) * loose.count if stock.density else None  # type: ignore[assignment]
        return found

    def total(self, boards: Iterable[str]) -> Fraction | None:
        each = [self._weight_of[path] for path in boards]
        return None if any(w is None for w in each) else sum((w for w in each if w is not None), Fraction(0))

    @cached_property
    def _weight_of(self) -> dict[str, Fraction | None]:
        return {path: board_weight(b) for path, b in self.joined.boards.items()}


def reached(start: Iterable[str], links: Mapping[str, set[str]]) -> set[str]:
    """Those that a way leads to from the first, and these."""
    found = set(start)
    waiting = sorted(found)
    while waiting:
        new = links.get(waiting.pop(), set()) - found
        found |= new
        waiting += sorted(new)
    return found


def _flat(area: Box) -> bool:
    return area.size(Axis.WIDE) > 0 and area.size(Axis.DEEP) > 0


def board_weight(board: JoinedBoard) -> Fraction | None:
    """Pounds, by what is left of the board after notches and housings; its holes are not taken off."""
    density = board.board.stock.density
    return None if density is None else Fraction(weight(_volume(board), density))


def _volume(board: JoinedBoard) -> Fraction:
    cuts = [cavity.box for cavity in board.cuts] + [f.box for f in board.features if isinstance(f, Notch)]
    gone = [shared for cut in cuts if (shared := board.box.shared(cut)) is not None and shared.volume]
    taken = _together(gone) if len(gone) <= _MANY_CUTS else sum((box.volume for box in gone), Fraction(0))
    return max(board.box.volume - taken, Fraction(0))


def _together(boxes: list[Box]) -> Fraction:
    """The volume of what several boxes cover together."""
    if not any(a.overlaps(b) for a, b in combinations(boxes, 2)):
        return sum((box.volume for box in boxes), Fraction(0))
    cuts = [sorted({end for box in boxes for end in (box.lo[k], box.hi[k])}) for k in range(3)]
    total = Fraction(0)
    for x in zip(cuts[0], cuts[0][1:]):
        for y in zip(cuts[1], cuts[1][1:]):
            for z in zip(cuts[2], cuts[2][1:]):
                cell = Box((x[0], y[0], z[0]), (x[1], y[1], z[1]))
                total += cell.volume if any(cell.overlaps(box) for box in boxes) else 0
    return total
