"""Boards of one width side by side: laid as one rectangle, opened up afterwards."""

from __future__ import annotations

import random
from collections.abc import Sequence

from setout.plan.cutting.search.kinds import Kind
from setout.plan.cutting.search.trees import Board, Node, adopt, leaves, refresh_up, turn

Row = tuple[int, int, int, list[tuple[int, int, int]]]
"""Direction (0: x, 1: y), x size, y size, members: kind, x size, y size."""


def rows_of(pool: Sequence[int], kinds: Sequence[Kind], d: int, room: int, rng: random.Random) -> list[Row]:
    """The pool in rows along `d`, each of one width and no longer than `room`; a kind that may turn joins the width
    that most share."""
    common: dict[int, int] = {}
    for k in pool:
        for shape in kinds[k].shapes:
            common[shape[1 - d]] = common.get(shape[1 - d], 0) + shape[d]
    groups: dict[int, list[tuple[int, int]]] = {}
    for k in pool:
        able = [shape for shape in kinds[k].shapes if shape[d] <= room] or kinds[k].shapes
        shape = able[0] if len(able) == 1 else max(able, key=lambda s: common[s[1 - d]] * (0.7 + 0.6 * rng.random()))
        groups.setdefault(shape[1 - d], []).append((shape[d], k))
    return [
        _row(d, width, members)
        for width in sorted(groups)
        for members in _filled(sorted(groups[width], reverse=True), room)
    ]


def opened(board: Board, rows: dict[int, Row]) -> None:
    """Put the members of every row that was laid in its place."""
    for leaf in leaves(board.root):
        if leaf.kind in rows:
            _open(board, leaf, rows[leaf.kind])


def _filled(members: list[tuple[int, int]], room: int) -> list[list[tuple[int, int]]]:
    """Longest first, each in the first row that has room."""
    rows: list[list] = []
    for length, k in members:
        row = next((row for row in rows if row[0] + length <= room), None)
        if row is None:
            rows.append([length, [(length, k)]])
        else:
            row[0] += length
            row[1].append((length, k))
    return [row[1] for row in rows]


def _row(d: int, width: int, members: list[tuple[int, int]]) -> Row:
    length = sum(one for one, _ in members)
    laid = [(k, width, one) if d else (k, one, width) for one, k in members]
    return (d, width, length, laid) if d else (d, length, width, laid)


def _open(board: Board, leaf: Node, row: Row) -> None:
    d, _, _, members = row
    kids = [Node(0, None, y, x, k) if d else Node(0, None, x, y, k) for k, x, y in members]
    parent = leaf.parent
    board.rooms = None
    board.count += len(kids) - 1
    if len(kids) == 1 or parent.d == d:
        if parent.d != d:
            for kid in kids:
                turn(kid)
        parent.kids = [kid for kid in parent.kids if kid is not leaf] + kids
        for kid in kids:
            kid.parent = parent
        refresh_up(parent)
        return
    node = adopt(d, kids)
    if len(parent.kids) == 1:  # the board held nothing else: the row is its root
        board.root = node
        return
    parent.kids = [node if kid is leaf else kid for kid in parent.kids]
    node.parent = parent
    refresh_up(parent)
