"""What is pencilled on a piece: the footprints on all of its boards, laid over each other on the one that is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from setout.geometry import IDENTITY, Axis, Box, Face, Motion
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
    """Where partners land on boards of one piece: `area` on `face` of the drawn board, which stands square before the
    reader, as `box` does. `partners` as seen from the boards' own assembly, with their `marks`. `on` are the boards it
    is on, () for all of the piece. `waits`: hangs on a measure. `thick` and `run` as a Board's. `seen`: on
    a face that a drawing of the piece shows, and on the drawn board."""

    box: Box
    thick: Axis
    run: Axis | None
    face: Face
    area: Box
    marks: tuple[str, ...]
    partners: tuple[Where, ...]
    on: tuple[str, ...]
    waits: bool
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
    found = _laid_over(facts, piece, piece.exemplar)
    made = [_landing(facts, piece, square, spot, prints) for spot, prints in found.items()]
    turn = {path: n for n, path in enumerate(piece.boards)}
    return tuple(sorted(made, key=lambda one: ([turn[path] for path in one.on], *_in_order(one))))


def _in_order(landing: Landing) -> tuple:
    axis = landing.across[0]
    return landing.face, axis, landing.area.lo[axis], landing.area.hi[axis]


def _laid_over(facts: Facts, piece: Piece, drawn: JoinedBoard) -> Mapping[Spot, list[Footprint]]:
    """The footprints on all the boards, as if they were on the drawn one; a board that can be laid over it in several
    ways is laid so that most of its footprints are there already, or else as it stands."""
    found: dict[Spot, list[Footprint]] = {}
    upright = ways_flat(drawn)[0].inverse
    for path in piece.boards:
        board, prints = facts.joined.boards[path], facts.footprints.get(path, ())
        if not prints:
            continue
        ways = [IDENTITY] if path == drawn.board.path else [upright.after(way) for way in ways_flat(board)]
        ways.sort(key=lambda way: not _keeps_directions(facts, board, drawn, way))
        way = max(ways, key=lambda way: sum(spot in found for spot in _spots(way, prints)))
        for spot, one in zip(_spots(way, prints), prints):
            found.setdefault(spot, []).append(one)
    return found


def _keeps_directions(facts: Facts, board: JoinedBoard, drawn: JoinedBoard, way: Motion) -> bool:
    """Whether left stays left and so on, each as seen in its own assembly."""
    ours, theirs = (squared(facts.scene.instances[one.board.owner].motion) for one in (board, drawn))
    whole = theirs.after(way).after(ours.inverse)
    return (whole.to, whole.sign) == (IDENTITY.to, IDENTITY.sign)


def _spots(way: Motion, prints: Iterable[Footprint]) -> Iterator[Spot]:
    return (_moved(way, (one.face, one.area)) for one in prints)


def _moved(way: Motion, spot: Spot) -> Spot:
    return way.face(spot[0]), way.box(spot[1])


def _landing(facts: Facts, piece: Piece, square: Motion, spot: Spot, prints: list[Footprint]) -> Landing:
    from setout.drawing import faces_to_draw  # late: a comparison's text draws nothing

    assert piece.exemplar is not None
    drawn, on = piece.exemplar.board, tuple(dict.fromkeys(one.board for one in prints))
    face, area = _moved(square, spot)
    return Landing(
        box=square.box(piece.exemplar.box),
        thick=square.axis(drawn.thick),
        run=None if drawn.run is None else square.axis(drawn.run),
        face=face,
        area=area,
        marks=tuple(dict.fromkeys(facts.mark_of[one.partner] for one in prints)),
        partners=fold(dict.fromkeys(_partner(facts, one) for one in prints)),
        on=() if len(on) == piece.count else on,
        waits=any((one.board, one.partner, one.face) in facts.footprints_wait for one in prints),
        seen=drawn.path in on and spot[0] in faces_to_draw(piece.exemplar),
    )


def _partner(facts: Facts, one: Footprint) -> tuple[str, str]:
    """Owner and name, without the owner where it is the board's own."""
    partner, board = facts.scene.boards[one.partner], facts.scene.boards[one.board]
    return ("" if partner.owner == board.owner else partner.owner), partner.name
