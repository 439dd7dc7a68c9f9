"""From strips and blocks to the tree of a board."""

from __future__ import annotations

from collections.abc import Sequence

from setout.plan.cutting.search.full.blocks import Block
from setout.plan.cutting.search.full.peeling import Peeled
from setout.plan.cutting.search.trees import Board, Node, adopt, leaves, turn


def planted(bin: int, size: tuple[int, int], peeled: Peeled, kinds: Sequence[int]) -> Board:
    """A board cut like this; empty when nothing is on it. `kinds` are those that the blocks count."""
    board = Board(bin, size)
    node = peeled.last and _block(*peeled.last)
    for strip in reversed(peeled.strips):
        row = [_block(entry.block, *_laid(strip.d, strip.thick, entry.length)) for entry in strip.row]
        whole = _together(strip.d, row)
        node = _together(1 - strip.d, [whole, node] if node else [whole])
    if node is not None:
        board.root = node if node.kids is not None else adopt(0, [node])
        found = leaves(board.root)
        board.count = len(found)
        board.area = sum(leaf.a * leaf.c for leaf in found)
        for leaf in found:
            leaf.kind = kinds[leaf.kind]
    return board


def _laid(d: int, thick: int, length: int) -> tuple[int, int]:
    return (length, thick) if d == 0 else (thick, length)


def _block(block: Block, wide: int, high: int) -> Node:
    """A block laid with these sizes."""
    if isinstance(block.made, int):
        return Node(0, None, wide, high, block.made)
    d, one, other = block.made
    side = block.wide if d else block.high
    turned = block.wide != wide
    parts = []
    for part in (one, other):
        length = part.wide + part.high - side
        parts.append(_block(part, *_laid(1 - d if turned else d, side, length)))
    return _together(1 - d if turned else d, parts)


def _together(d: int, parts: list[Node]) -> Node:
    """Side by side along d. A part that is cut the same way gives its own parts; a leaf, made as it lies under a node
    along x, sees its extents exchanged under one along y."""
    if len(parts) == 1:
        return parts[0]
    kids: list[Node] = []
    for part in parts:
        if part.kids is not None and part.d == d:
            kids += part.kids
            continue
        if part.kids is None and d:
            turn(part)
        kids.append(part)
    return adopt(d, kids)
