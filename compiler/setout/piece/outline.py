"""A board read as an outline: what is on it (words and faces) kept apart from how far (numbers).

Kept apart because a held board has the same words in every scene while its numbers run along straight lines.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeVar

from setout.geometry import Axis, Box, Face, Vec
from setout.join.model import Bore, JoinedBoard
from setout.place.model import LooseBoard, Mitre, Notch

T = TypeVar("T")
End = tuple[int, int]
"""A face as (axis, sign). Sign 0: the hole goes right through, so that neither end is its own."""


@dataclass(frozen=True)
class Item:
    """One thing done to a board.

    word    faces                 points      numbers
    cut     -                     low, high   -                  a box of material gone
    hole    the drilled face      place       diameter[, depth]  no depth: right through
    pocket  drilled face, edge    place       diameter[, depth]
    mitre   end, long face        -           degrees
    band …  the banded edge       -           -                  the word goes on with the edging's name, and `added`
    `on` are the axes along which the place follows from the faces, so that it isn't said.
    """

    word: str
    faces: tuple[End, ...]
    points: int
    numbers: int
    on: tuple[int, ...] = ()


@dataclass(frozen=True)
class Skeleton:
    """The words of an outline. `grain` "length", "any", "none", or "" for sticks.

    `long` is the axis that the length runs along, None when the board may be turned (then the longer one is taken).
    """

    kind: str
    stock: str
    grain: str
    thick: int
    long: int | None
    show: End | None
    items: tuple[Item, ...]


@dataclass(frozen=True)
class Outline:
    """`columns[0]` holds the constants, `columns[1 + i]` the slopes over `measures[i]`: one row a number, inches.

    The rows: the three sizes, then for each item its points (three each, from the box's low corner) and its numbers.
    """

    skeleton: Skeleton
    columns: tuple[tuple[Fraction, ...], ...]
    measures: tuple[str, ...] = ()


def by_item(skeleton: Skeleton, rows: Sequence[T]) -> Iterator[tuple[Item, list[tuple[T, ...]], tuple[T, ...]]]:
    """Each item with its points and its numbers. `rows` as in an outline's columns."""
    at = 3
    for item in skeleton.items:
        end = at + 3 * item.points
        points = [tuple(rows[i : i + 3]) for i in range(at, end, 3)]
        at = end + item.numbers
        yield item, points, tuple(rows[end:at])


def outline(board: JoinedBoard) -> Outline:
    """The outline of a placed board, as it is cut and machined."""
    sheet = board.board.stock.kind == "sheet"
    items: list[Item] = []
    rows: list[Fraction] = list(board.box.sizes)
    for item, numbers in _items(board):
        items.append(item)
        rows.extend(numbers)
    grain = board.board.grain
    show = board.board.show
    skeleton = Skeleton(
        kind=board.board.stock.kind,
        stock=board.board.stock.name,
        grain=("length" if isinstance(grain, Axis) else grain or "none") if sheet else "",
        thick=int(board.board.thick),
        long=(int(grain) if isinstance(grain, Axis) else None) if sheet else int(board.board.run or 0),
        show=None if show is None else (int(show.axis), show.sign),
        items=tuple(items),
    )
    return Outline(skeleton, (tuple(rows),))


def loose_outline(loose: LooseBoard) -> Outline:
    """The outline of a loose board: its length on axis 0, its width on axis 1."""
    sheet = loose.stock.kind == "sheet"
    grain = (loose.grain or "none") if sheet else ""
    long = None if grain in ("any", "none") else 0
    skeleton = Skeleton(loose.stock.kind, loose.stock.name, grain, 2, long, None, ())
    return Outline(skeleton, ((loose.length, loose.width, loose.stock.thick),))


def sources(board: JoinedBoard) -> tuple[str, ...]:
    """Where each item comes from, in the outline's order: tells whether two scenes list the same things."""
    cuts = [f"{c.joint}/{c.for_board}" for c in board.cuts]
    bores = [f"{b.kind}/{b.source}" for b in board.bores]
    return (*cuts, *bores, *(f.__class__.__name__ for f in board.features))


def _items(board: JoinedBoard) -> Iterator[tuple[Item, tuple[Fraction, ...]]]:
    box = board.box
    yield from _bands(board)
    for cavity in board.cuts:
        yield _cut(cavity.box, box)
    for bore in board.bores:
        yield _bore(bore, box)
    for feature in board.features:
        if isinstance(feature, Notch):
            yield _cut(feature.box, box)
        elif isinstance(feature, Mitre):
            yield Item("mitre", (_end(feature.end), _end(feature.long)), 0, 1), (feature.angle,)


def _bands(board: JoinedBoard) -> Iterator[tuple[Item, tuple[Fraction, ...]]]:
    for band in board.board.bands:
        added = " added" if band.added else ""
        yield Item(f"band {band.edging.name}{added}", (_end(band.face),), 0, 0), ()


def _cut(gone: Box, box: Box) -> tuple[Item, tuple[Fraction, ...]]:
    # Material beyond the board's faces is air: two cuts that differ only there are the same cut.
    kept = box.shared(gone) or gone
    return Item("cut", (), 2, 0), (*_from(kept.lo, box), *_from(kept.hi, box))


def _bore(bore: Bore, box: Box) -> tuple[Item, tuple[Fraction, ...]]:
    faces = (bore.face,) if bore.toward is None else (bore.face, bore.toward)
    through = bore.depth is None and bore.toward is None
    on = tuple(int(f.axis) for f in faces if through or bore.at[f.axis] == box.face(f))
    ends = ((int(bore.face.axis), 0),) if through else tuple(_end(f) for f in faces)
    numbers = (bore.diameter,) if bore.depth is None else (bore.diameter, bore.depth)
    word = "hole" if bore.toward is None else "pocket"
    return Item(word, ends, 1, len(numbers), on), (*_from(bore.at, box), *numbers)


def _from(point: Vec, box: Box) -> Vec:
    return (point[0] - box.lo[0], point[1] - box.lo[1], point[2] - box.lo[2])


def _end(face: Face) -> End:
    return int(face.axis), face.sign
