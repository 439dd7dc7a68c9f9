"""From the tree of a board to regions and pieces with places."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setout.plan.cutting.search.kinds import Kind
from setout.plan.cutting.search.model import Item, Leftover, Piece, Region, Used
from setout.plan.cutting.search.trees import Board, Node


def used_of(
    boards: Sequence[Board], kinds: Sequence[Kind], items: Sequence[Item]
) -> tuple[tuple[Used, ...], dict[int, int]]:
    """The boards as bins that are cut, and how many items of each index they hold."""
    members = [iter(kind.members) for kind in kinds]
    writer = _Writer(kinds, items, members)
    used = tuple(Used(board.bin, writer.whole(board)) for board in boards if board.root is not None)
    return used, writer.laid


def leftovers(region: Region) -> Iterator[Leftover]:
    """What falls off inside a region by its cuts, from its lower left corner on."""
    along_x = region.along == "x"
    at = region.x if along_x else region.y
    for part in region.parts:
        if isinstance(part, Region):
            yield from leftovers(part)
        if along_x:
            at = part.x + part.width
            if part.height < region.height:
                yield Leftover(part.x, part.y + part.height, part.width, region.height - part.height)
        else:
            at = part.y + part.height
            if part.width < region.width:
                yield Leftover(part.x + part.width, part.y, region.width - part.width, part.height)
    if along_x and at < region.x + region.width:
        yield Leftover(at, region.y, region.x + region.width - at, region.height)
    if not along_x and at < region.y + region.height:
        yield Leftover(region.x, at, region.width, region.y + region.height - at)


class _Writer:
    def __init__(self, kinds: Sequence[Kind], items: Sequence[Item], members: list[Iterator[tuple[int, ...]]]):
        self.kinds = kinds
        self.items = items
        self.members = members
        self.laid: dict[int, int] = {}

    def whole(self, board: Board) -> Region:
        """The bin's own region is cut like the root's: the strip beyond the root, if any, is parted first by a region
        around it."""
        width, height = board.size
        root = board.root
        inner = self.region(root, 0, 0, *((root.a, height) if root.d else (width, root.a)))
        if (inner.width, inner.height) == (width, height):
            return inner
        return Region(0, 0, width, height, "x" if root.d else "y", (inner,))

    def region(self, node: Node, x: int, y: int, width: int, height: int) -> Region:
        """Kids from the widest to the narrowest, each as wide as itself: a kid that is a node fills its parent across.
        """
        parts: list[Region | Piece] = []
        at = 0
        for kid in reversed(node.kids):
            left, low = (x, y + at) if node.d else (x + at, y)
            if kid.kids is None:
                size = (kid.c, kid.a) if node.d else (kid.a, kid.c)
                parts.append(self.leaf(kid.kind, left, low, *size))
            else:
                size = (width, kid.a) if node.d else (kid.a, height)
                parts.append(self.region(kid, left, low, *size))
            at += kid.a
        return Region(x, y, width, height, "y" if node.d else "x", tuple(parts))

    def leaf(self, k: int, x: int, y: int, width: int, height: int) -> Region | Piece:
        kind = self.kinds[k]
        member = next(self.members[k])
        strip = kind.strips[kind.shapes.index((width, height))]
        if not strip:
            return self.piece(
                member[0], x, y, (width, height) != (self.items[member[0]].width, self.items[member[0]].height)
            )
        along, _, turned = strip.partition(" ")
        parts, at = [], 0
        for index in member:
            piece = self.piece(index, *((x + at, y) if along == "x" else (x, y + at)), bool(turned))
            at += piece.width if along == "x" else piece.height
            parts.append(piece)
        return Region(x, y, width, height, along, tuple(parts))

    def piece(self, index: int, x: int, y: int, turned: bool) -> Piece:
        item = self.items[index]
        self.laid[index] = self.laid.get(index, 0) + 1
        width, height = (item.height, item.width) if turned else (item.width, item.height)
        return Piece(index, x, y, width, height, turned)
