"""Where other boards land on a board: what is pencilled on it before it is put together.

A board's broad face is lined out for all that joints bring against it, an edge only for what comes to it; what covers
the whole of a face or an edge lies flush and needs no line, and a housing shows its own place.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from operator import sub
from typing import TYPE_CHECKING

from setout.geometry import Axis, Box, Face

if TYPE_CHECKING:
    from setout.join.model import Contact, Joined, JoinedBoard, JoinedScene

Spot = tuple[str, str, Face]


@dataclass(frozen=True)
class Footprint:
    """`partner` covers `area` of the board's `face`; coordinates are the job's."""

    board: str
    partner: str
    face: Face
    area: Box


def footprints(joined: JoinedScene) -> Mapping[str, tuple[Footprint, ...]]:
    """By board, each in the order of the joints; boards without any are left out."""
    housed = {(cut.joint, path, cut.for_board) for path, board in joined.boards.items() for cut in board.cuts}
    found: dict[str, dict[Footprint, None]] = {}
    for contact in joined.contacts:
        for print_ in _both(joined, contact):
            if not {(contact.joint, contact.a, contact.b), (contact.joint, contact.b, contact.a)} & housed:
                found.setdefault(print_.board, {})[print_] = None
    return {path: tuple(prints) for path, prints in found.items()}


def unsettled(joined: Joined) -> frozenset[Spot]:
    """Board, partner and face of the footprints that another scene has elsewhere on the board, or not at all."""
    first, *others = (_on_boards(scene) for scene in joined.scenes)
    return frozenset(spot for other in others for spot, _ in first ^ other)


def _on_boards(joined: JoinedScene) -> set[tuple[Spot, tuple[Fraction, ...]]]:
    """Footprints as they lie on their boards, wherever those are."""
    prints = (print_ for prints in joined.footprints.values() for print_ in prints)
    return {((p.board, p.partner, p.face), _from_corner(p.area, joined.boards[p.board].box)) for p in prints}


def _from_corner(area: Box, box: Box) -> tuple[Fraction, ...]:
    return tuple(map(sub, area.lo + area.hi, box.lo + box.lo))


def _both(joined: JoinedScene, contact: Contact) -> Iterator[Footprint]:
    if contact.b is None:
        return
    sides = ((contact.b, contact.a, contact.face_b, True), (contact.a, contact.b, contact.face_a, False))
    for path, partner, face, receives in sides:
        board = joined.boards.get(path)
        if board is not None and (receives or face.axis == board.board.thick) and _to_be_lined(board, face, contact):
            yield Footprint(path, partner, face, contact.area)


def _to_be_lined(board: JoinedBoard, face: Face, contact: Contact) -> bool:
    """Not what lies deeper than the face, in a notch, nor what reaches all over it; of an edge, all along it. Tongues
    are in their housings, and not looked at."""
    ends = (face.axis,) if face.axis == board.board.thick else (face.axis, board.board.thick)
    across = [axis for axis in Axis if axis not in ends]
    at_face = contact.area.lo[face.axis] == board.box.face(face)
    return at_face and any(contact.area.size(axis) < board.board.box.size(axis) for axis in across)
