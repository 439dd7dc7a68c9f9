"""Boards as they are compared: in the directions of the assembly that they belong to, over all scenes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from setout.compare.model import BoardSide, Extent
from setout.compare.names import Names
from setout.geometry import IDENTITY, Axis, Box, Face, Motion, Vec
from setout.join.model import JoinedBoard
from setout.piece.model import Piece
from setout.piece.outline import by_item, outline
from setout.place.model import Instance, LooseBoard
from setout.plan.model import Plan

Place = tuple[Extent, Extent, Extent]
Spot = tuple[tuple[Fraction, ...], ...]


@dataclass(frozen=True)
class Item:
    """One thing done to a board. `faces` as (axis, sign), `points` from the box's low corner (a box of material gone
    has two, low and high)."""

    word: str
    faces: tuple[tuple[int, int], ...]
    points: Spot
    numbers: tuple[Fraction, ...]


@dataclass(frozen=True)
class Known:
    """`sizes` wide, high, deep (of loose boards length, width, thick) in the assembly's own directions, as is
    everything here. `low` is the place of the low corner in it; None for loose boards. `stock` is the name that its
    stock is compared under, `key` the shape with stocks so named. `drawn` are the sizes in the scene that is drawn,
    `joined` the board in it and `motion` its assembly's; loose boards have none."""

    side: BoardSide
    stock: str
    key: str
    sizes: Place
    low: Place | None
    thick: int
    grain: str
    face: str
    mirrored: bool
    drawn: Vec
    joined: JoinedBoard | None = None
    motion: Motion = IDENTITY

    @property
    def path(self) -> str:
        return self.side.path

    @cached_property
    def items(self) -> tuple[Item, ...]:
        """What is done to it, in the scene that is drawn."""
        return () if self.joined is None else _items(self.joined, self.motion)

    def is_worked_like(self, other: Known) -> bool:
        """Whether all that is done to both is the same in their assemblies. Most boards stay where they are, which is
        soon seen."""
        a, b = self.joined, other.joined
        if a is not None and b is not None and (a.box, self.motion) == (b.box, other.motion):
            if (a.board.bands, a.cuts, a.bores, a.features) == (b.board.bands, b.cuts, b.bores, b.features):
                return True
        return self.items == other.items


def boards_of(plan: Plan, names: Names) -> tuple[Known, ...]:
    """All boards, in the plan's order."""
    pieces = plan.pieces
    by_mark = {piece.mark: piece for piece in pieces.pieces}
    joined = pieces.joined
    found = [_placed(plan, path, by_mark[pieces.mark_of[path]], names) for path in joined.drawn.boards]
    drawn = joined.drawn.scene
    for index, loose in enumerate(drawn.loose):
        found.append(_loose(plan, index, loose, by_mark[pieces.mark_of[loose.path]], names))
    return tuple(found)


def stand(instances: Mapping[str, Instance], path: str) -> Box | None:
    """The box of an assembly in the one that holds it, in that one's directions."""
    instance = instances[path]
    return None if instance.box is None else instances[instance.parent or ""].motion.inverse.box(instance.box)


def extent(amounts) -> Extent:
    amounts = list(amounts)
    return Extent(min(amounts), max(amounts))


def _placed(plan: Plan, path: str, piece: Piece, names: Names) -> Known:
    joined = plan.pieces.joined
    drawn = joined.drawn.boards[path]
    owner = drawn.board.owner
    motion = joined.drawn.scene.instances[owner].motion
    backs = [s.scene.instances[owner].motion.inverse for s in joined.scenes]
    boxes = [back.box(s.boards[path].box) for back, s in zip(backs, joined.scenes)]
    sizes = tuple(map(extent, zip(*(box.sizes for box in boxes))))
    low = tuple(map(extent, zip(*(box.lo for box in boxes))))
    back = backs[-1]  # of the scene that is drawn
    grain = drawn.board.grain
    show = drawn.board.show
    return Known(
        _side(drawn.board.path, drawn.board.name, owner, piece, 1),
        names.stock(piece.stock.name),
        names.shape(piece.shape),
        sizes,  # type: ignore[arg-type]
        low,  # type: ignore[arg-type]
        back.axis(drawn.board.thick),
        back.axis(grain).word if isinstance(grain, Axis) else grain or "",
        "" if show is None else back.face(show).word,
        motion.reflects,
        motion.own_sizes(drawn.box.sizes),
        drawn,
        motion,
    )


def _loose(plan: Plan, index: int, loose: LooseBoard, piece: Piece, names: Names) -> Known:
    scenes = [s.scene.loose[index] for s in plan.pieces.joined.scenes]
    thick = extent([loose.stock.thick])
    sizes = (extent(b.length for b in scenes), extent(b.width for b in scenes), thick)
    side = _side(loose.path, loose.name, loose.owner, piece, loose.count)
    stock, key = names.stock(loose.stock.name), names.shape(piece.shape)
    first: Vec = (sizes[0].low, sizes[1].low, sizes[2].low)
    return Known(side, stock, key, sizes, None, 2, loose.grain or "", "", False, first)


def _side(path: str, name: str, owner: str, piece: Piece, count: int) -> BoardSide:
    sizes = tuple(extent([s.amount, s.amount if s.high is None else s.high]) for s in (piece.length, piece.width))
    cut = (*sizes, Extent(piece.thick, piece.thick))
    stock = piece.stock
    material = stock.title or stock.name
    return BoardSide(path, name, owner, stock.name, piece.mark, piece.shape, cut, count, material)  # type: ignore[arg-type]


def _items(board: JoinedBoard, motion: Motion) -> tuple[Item, ...]:
    made, back, found = outline(board), motion.inverse, []
    rows = made.columns[0]
    for item, at, numbers in by_item(made.skeleton, rows):
        points = [_own_point(motion, rows[:3], point) for point in at]
        if len(points) == 2:
            points = [tuple(map(min, *points)), tuple(map(max, *points))]
        faces = tuple(back.face(Face(Axis(axis), sign)) for axis, sign in item.faces)
        found.append(Item(item.word, faces, tuple(points), numbers))
    return tuple(sorted(found, key=lambda i: (i.word, i.faces, i.points, i.numbers)))


def _own_point(motion: Motion, sizes, point) -> tuple[Fraction, ...]:
    axes = [(motion.to[i], motion.sign[i]) for i in range(3)]
    return tuple(point[axis] if sign > 0 else sizes[axis] - point[axis] for axis, sign in axes)
