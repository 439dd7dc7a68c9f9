"""The lines to pencil on a piece, as they are printed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from setout.drawing import Drawing
from setout.geometry import Axis, Face
from setout.piece.model import Piece
from setout.write.facts import Facts
from setout.write.facts.layout import Landing
from setout.write.facts.paths import Where
from setout.write.facts.sizes import Length, length

BESIDE, LINE = 170.0, 15.0  # points: the width they need beside a drawing, and the height of each


@dataclass(frozen=True)
class Side:
    """A face of the board in its own assembly. `kind` "face", "edge" or "end"."""

    word: str
    kind: str


@dataclass(frozen=True)
class Line:
    """Partners, and how far it is from the group's zero to the near and to the far side of them. `along` the same in
    the other direction, from `along_zero`; None all along."""

    marks: tuple[str, ...]
    partners: tuple[Where, ...]
    span: tuple[Length, Length]
    along: tuple[Length, Length] | None
    along_zero: Side


@dataclass(frozen=True)
class Only:
    """Boards of a piece that are named, and what of the sides that their lines speak of lies elsewhere on them where
    they stand: the side as drawn, and the one that it is there."""

    where: tuple[Where, ...]
    turned: tuple[tuple[Side, Side], ...]


@dataclass(frozen=True)
class Lines:
    """Lines on one face, measured from one end of it. `only` says on which boards of the piece, () for all; those that
    stand as drawn come first. `unseen`: the piece's drawing doesn't show them."""

    face: Side
    unseen: bool
    zero: Side
    only: tuple[Only, ...]
    lines: tuple[Line, ...]


def lay_out(facts: Facts, piece: Piece, drawn: bool) -> tuple[Lines, ...]:
    """What all boards of the piece share comes first. `drawn`: it has a drawing."""
    found = groupby(facts.landings[piece.mark], _group_of)
    return tuple(_lines(facts, list(group), drawn) for _, group in found)


def stand_beside(facts: Facts, drawing: Drawing) -> bool:
    """Whether the lines to pencil find room beside the piece's drawing."""
    return drawing.width + BESIDE <= facts.width


def lines_high(found: Sequence[Landing]) -> float:
    """About how much of the page they take beneath it, in points."""
    return LINE * (len(found) + len({_group_of(one) for one in found}))


def _group_of(one: Landing) -> tuple:
    return one.on, one.face, one.across[0]


def _lines(facts: Facts, group: list[Landing], drawn: bool) -> Lines:
    first = group[0]
    return Lines(
        face=_side(first, first.face),
        unseen=drawn and not first.seen and first.face.axis == first.thick,
        zero=_zero(first, first.across[0]),
        only=_only(facts, group),
        lines=tuple(_line(facts, one) for one in group),
    )


def _only(facts: Facts, group: list[Landing]) -> tuple[Only, ...]:
    """Boards that stand alike together."""
    first = group[0]
    others = (one.across[1] for one in group if not one.is_whole(one.across[1]))
    faces = dict.fromkeys((first.face, *(Face(axis, -1) for axis in (first.across[0], *others))))
    found: dict[tuple[tuple[Side, Side], ...], list[str]] = {}
    for path, stand in zip(first.on, first.stand):
        turned = ((face, stand.face(face)) for face in faces if stand.face(face) != face)
        said = tuple((_side(first, face), Side(own.word, _side(first, face).kind)) for face, own in turned)
        found.setdefault(said, []).append(path)
    return tuple(Only(facts.places(found[turned]), turned) for turned in sorted(found, key=len))


def _line(facts: Facts, one: Landing) -> Line:
    axis, other = one.across
    return Line(
        marks=one.marks,
        partners=one.partners,
        span=_printed(facts, one, axis),
        along=None if one.is_whole(other) else _printed(facts, one, other),
        along_zero=_zero(one, other),
    )


def _printed(facts: Facts, one: Landing, axis: Axis) -> tuple[Length, Length]:
    near, far = one.span(axis)
    ends = ((near, Face(axis, -1)), (far, Face(axis, 1)))
    low, high = (replace(length(at, facts.style), waits=face in one.moves) for at, face in ends)
    return low, high


def _zero(one: Landing, axis: Axis) -> Side:
    """Where the tape hooks: the board's left, bottom or front."""
    return _side(one, Face(axis, -1))


def _side(one: Landing, face: Face) -> Side:
    return Side(face.word, "face" if face.axis == one.thick else "end" if face.axis == one.run else "edge")
