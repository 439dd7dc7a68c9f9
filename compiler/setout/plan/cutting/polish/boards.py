"""Layouts as trees that a search can change (see search.trees), and back."""

from __future__ import annotations

from collections.abc import Sequence

from setout.plan.cutting.search.kinds import Kind
from setout.plan.cutting.search.layout import used_of
from setout.plan.cutting.search.model import Bin, Item, Piece, Region, Used
from setout.plan.cutting.search.trees import Board, Node, adopt, leaves, turn


def boards_of(used: Sequence[Used], kinds: Sequence[Kind], bins: Sequence[Bin]) -> list[Board]:
    kind_of = {member[0]: k for k, kind in enumerate(kinds) for member in kind.members}
    return [_board(one, kind_of, bins[one.bin]) for one in used]


def used_from(boards: Sequence[Board], kinds: Sequence[Kind], items: Sequence[Item]) -> tuple[Used, ...]:
    return used_of(boards, kinds, items)[0]


def _board(used: Used, kind_of: dict[int, int], spec: Bin) -> Board:
    board = Board(used.bin, (spec.width, spec.height))
    root = _node(used.root, kind_of)
    if root.kids is None:  # a lone leaf, its extents as under a node along x
        root = adopt(0, [root])
    root.parent = None
    board.root = root
    found = leaves(root)
    board.count = len(found)
    board.area = sum(leaf.a * leaf.c for leaf in found)
    return board


def _node(region: Region | Piece, kind_of: dict[int, int]) -> Node:
    """As under a parent along x. A region of one part is no cut of its own, and one along its parent's direction is
    part of it."""
    if isinstance(region, Piece):
        return Node(0, None, region.width, region.height, kind_of[region.item])
    d = 0 if region.along == "x" else 1
    kids: list[Node] = []
    for part in region.parts:
        kid = _node(part, kind_of)
        if kid.kids is None:
            if d:
                turn(kid)
            kids.append(kid)
        elif kid.d == d:
            kids.extend(kid.kids)
        else:
            kids.append(kid)
    if len(kids) == 1:
        if kids[0].kids is None and d:
            turn(kids[0])
        return kids[0]
    return adopt(d, kids)
