"""What is pencilled on a piece: the footprints on all of its boards, laid over each other on the one that is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from operator import sub
from typing import TYPE_CHECKING

from setout.geometry import ALL_FACES, IDENTITY, Axis, Box, Face, Motion
from setout.join import Footprint
from setout.join.model import JoinedBoard
from setout.piece import Piece, ways_flat
from setout.write.facts.paths import Where, fold
from setout.write.facts.turning import is_turned, squared

if TYPE_CHECKING:
    from setout.write.facts.model import Facts

Spot = tuple[Face, Box]


@dataclass(frozen=True)
class Landing:
    """Where partners land on boards of one piece: `area` on `face` of the drawn board, as it is sawn, which stands
    square before the reader, as `box` does. `partners` as seen from the boards' own assembly, with their `marks`. `on`
    are the boards it is on, () for all of the piece; `stand` turns the faces of the drawn board into those that each of
    them has in its own assembly. `moves`: its ends that are elsewhere for other values of a measure. `thick` and `run`
    as a Board's. `seen`: on a face that a drawing of the piece shows, and on the drawn board."""

    box: Box
    thick: Axis
    run: Axis | None
    face: Face
    area: Box
    marks: tuple[str, ...]
    partners: tuple[Where, ...]
    on: tuple[str, ...]
    stand: tuple[Motion, ...]
    moves: frozenset[Face]
    seen: bool

    def span(self, axis: Axis) -> tuple:
        """From and to along an axis, from the board's low end."""
        return self.area.lo[axis] - self.box.lo[axis], self.area.hi[axis] - self.box.lo[axis]

    def is_whole(self, axis: Axis) -> bool:
        return self.area.size(axis) == self.box.size(axis)

    @property
    def across(self) -> tuple[Axis, Axis]:
        """The face's two axes, the one that is narrower on it first: a line each side of it is drawn across that."""
        one, other = (axis for axis in Axis if axis != self.face.axis)
        return (one, other) if self._rank(one) <= self._rank(other) else (other, one)

    def _rank(self, axis: Axis) -> tuple:
        return self.is_whole(axis), self.area.size(axis)


def landings(facts: Facts, piece: Piece) -> tuple[Landing, ...]:
    """What all boards share first; by face, then in the order in which a tape passes them."""
    if piece.exemplar is None or not any(path in facts.footprints for path in piece.boards):
        return ()
    motion = facts.scene.instances[piece.exemplar.board.owner].motion
    square = squared(motion) if is_turned(motion) else IDENTITY
    found, ways = _laid_over(facts, piece, piece.exemplar)
    stand = {path: _own(facts, path).after(way.inverse).after(square.inverse) for path, way in ways.items()}
    made = [_landing(facts, piece, square, stand, ways, spot, prints) for spot, prints in found.items()]
    turn = {path: n for n, path in enumerate(piece.boards)}
    return tuple(sorted(made, key=lambda one: ([turn[path] for path in one.on], *_in_order(one))))


def _in_order(landing: Landing) -> tuple:
    axis = landing.across[0]
    return landing.face, axis, landing.area.lo[axis], landing.area.hi[axis]


def _laid_over(
    facts: Facts, piece: Piece, drawn: JoinedBoard
) -> tuple[Mapping[Spot, list[Footprint]], Mapping[str, Motion]]:
    """The footprints on all the boards, as if they were on the drawn one, and how each board is laid over it. One that
    can be laid in several ways is laid so that most of its footprints are there already, or else as it stands."""
    found: dict[Spot, list[Footprint]] = {}
    chosen: dict[str, Motion] = {}
    upright = ways_flat(drawn)[0].inverse
    for path in piece.boards:
        board, prints = facts.joined.boards[path], facts.footprints.get(path, ())
        if not prints:
            continue
        ways = [IDENTITY] if path == drawn.board.path else [upright.after(way) for way in ways_flat(board)]
        ways.sort(key=lambda way: not _keeps_directions(facts, board, drawn, way))
        way = chosen[path] = max(ways, key=lambda way: sum(spot in found for spot in _spots(way, prints)))
        for spot, one in zip(_spots(way, prints), prints):
            found.setdefault(spot, []).append(one)
    return found, chosen


def _keeps_directions(facts: Facts, board: JoinedBoard, drawn: JoinedBoard, way: Motion) -> bool:
    """Whether left stays left and so on, each as seen in its own assembly."""
    ours, theirs = _own(facts, board.board.path), _own(facts, drawn.board.path)
    whole = theirs.after(way).after(ours.inverse)
    return (whole.to, whole.sign) == (IDENTITY.to, IDENTITY.sign)


def _own(facts: Facts, path: str) -> Motion:
    """Takes the job's coordinates to those of the board's assembly."""
    return squared(facts.scene.instances[facts.scene.boards[path].owner].motion)


def _spots(way: Motion, prints: Iterable[Footprint]) -> Iterator[Spot]:
    return (_moved(way, (one.face, one.area)) for one in prints)


def _moved(way: Motion, spot: Spot) -> Spot:
    return way.face(spot[0]), way.box(spot[1])


def _landing(
    facts: Facts,
    piece: Piece,
    square: Motion,
    stand: Mapping[str, Motion],
    ways: Mapping[str, Motion],
    spot: Spot,
    prints: list[Footprint],
) -> Landing:
    from setout.drawing import faces_to_draw  # late: a comparison's text draws nothing

    assert piece.exemplar is not None
    drawn, on = piece.exemplar.board, tuple(dict.fromkeys(one.board for one in prints))
    (face, area), box = _moved(square, spot), square.box(piece.exemplar.box)
    return Landing(
        box=box,
        thick=square.axis(drawn.thick),
        run=None if drawn.run is None else square.axis(drawn.run),
        face=face,
        area=_as_sawn(area, box, face),
        marks=tuple(dict.fromkeys(facts.mark_of[one.partner] for one in prints)),
        partners=fold(dict.fromkeys(_partner(facts, one) for one in prints)),
        on=() if len(on) == piece.count else on,
        stand=() if len(on) == piece.count else tuple(stand[path] for path in on),
        moves=frozenset(face for one in prints for face in _moves(facts, one, square.after(ways[one.board]))),
        seen=drawn.path in on and spot[0] in faces_to_draw(piece.exemplar),
    )


def _moves(facts: Facts, one: Footprint, by: Motion) -> Iterator[Face]:
    """The ends of a footprint, as they lie after the motion, that another scene has elsewhere from the board's low
    ends; all of them where that scene hasn't got it."""
    if not facts.other_scenes:
        return
    mine = [p for p in facts.footprints[one.board] if (p.partner, p.face) == (one.partner, one.face)]
    here = _from_low(by, one, facts.joined.boards[one.board].box)
    for scene in facts.other_scenes:
        others = [p for p in scene.footprints.get(one.board, ()) if (p.partner, p.face) == (one.partner, one.face)]
        if len(others) != len(mine):
            yield from ALL_FACES
        else:
            there = _from_low(by, others[mine.index(one)], scene.boards[one.board].box)
            yield from (face for face in ALL_FACES if there.face(face) != here.face(face))


def _from_low(by: Motion, one: Footprint, box: Box) -> Box:
    """A footprint's area, turned, from the low corner of its board."""
    area, low = by.box(_as_sawn(one.area, box, one.face)), by.box(box).lo
    return Box(tuple(map(sub, area.lo, low)), tuple(map(sub, area.hi, low)))  # type: ignore[arg-type]


def _as_sawn(area: Box, box: Box, face: Face) -> Box:
    """Without what lies on the banding: lines are pencilled from the sawn edge, before that is put on."""
    lo = [area.lo[k] if k == face.axis else max(area.lo[k], box.lo[k]) for k in Axis]
    hi = [area.hi[k] if k == face.axis else max(lo[k], min(area.hi[k], box.hi[k])) for k in Axis]
    return Box(tuple(lo), tuple(hi))  # type: ignore[arg-type]


def _partner(facts: Facts, one: Footprint) -> tuple[str, str]:
    """Owner and name, without the owner where it is the board's own."""
    partner, board = facts.scene.boards[one.partner], facts.scene.boards[one.board]
    return ("" if partner.owner == board.owner else partner.owner), partner.name
