"""Guillotine trees that change while searching.

A node lays its kids side by side along its direction (0: x, 1: y); a kid that is a node runs the other way. The order
of kids is free, and leftovers are not stored: a node is as tight as its kids allow, so what is left follows from the
sizes. Seen from its parent every kid has an extent `a` along the parent's direction and `c` across it. For a node that
means: `c` is what its own kids fill, `a` is its widest kid.
"""

from __future__ import annotations

from operator import attrgetter

ACROSS = attrgetter("c")


class Node:
    """A leaf has no kids and a `kind`. `s2` and `s2c` sum a² and a²·c over the kids: with them a growth is priced
    without a loop."""

    __slots__ = ("a", "c", "d", "kids", "kind", "parent", "s2", "s2c")

    def __init__(self, d: int, kids: list[Node] | None, a: int = 0, c: int = 0, kind: int = -1):
        self.d = d
        self.kids = kids
        self.a = a
        self.c = c
        self.kind = kind
        self.parent: Node | None = None
        self.s2 = self.s2c = 0


class Board:
    """One bin being cut: its index among the bins, its sizes along x and y, the area that items cover, how many they
    are. `rooms`: the places it has for more (see `places`), until it changes.
    """

    __slots__ = ("area", "bin", "count", "rooms", "root", "size", "squares")

    def __init__(self, bin: int, size: tuple[int, int]):
        self.bin = bin
        self.size = size
        self.root: Node | None = None
        self.area = self.count = 0
        self.squares = -1  # not worked out yet
        self.rooms: list[tuple] | None = None

    def copy(self) -> Board:
        twin = Board(self.bin, self.size)
        twin.root = _copied(self.root) if self.root else None
        twin.area = self.area
        twin.count = self.count
        return twin


def leaves(node: Node | None) -> list[Node]:
    found: list[Node] = []
    stack = [node] if node else []
    while stack:
        node = stack.pop()
        if node.kids is None:
            found.append(node)
        else:
            stack += node.kids
    return found


def kinds_on(board: Board) -> list[int]:
    return [leaf.kind for leaf in leaves(board.root)]


def refresh(node: Node) -> None:
    """Work out a node's sizes and sums from its kids, and sort them from the narrowest to the widest."""
    kids = node.kids
    if len(kids) > 1:
        kids.sort(key=ACROSS)
    used = s2 = s2c = 0
    for kid in kids:
        a = kid.a
        used += a
        a *= a
        s2 += a
        s2c += a * kid.c
    node.c = used
    node.a = kids[-1].c
    node.s2 = s2
    node.s2c = s2c


def refresh_up(node: Node | None) -> None:
    while node is not None:
        refresh(node)
        node = node.parent


def adopt(d: int, kids: list[Node]) -> Node:
    node = Node(d, kids)
    for kid in kids:
        kid.parent = node
    refresh(node)
    return node


def turn(leaf: Node) -> None:
    """A leaf that comes under a parent of the other direction sees its extents exchanged."""
    leaf.a, leaf.c = leaf.c, leaf.a


def remove(board: Board, node: Node) -> list[int]:
    """Take a leaf or a whole branch off the board; the kinds that were on it."""
    gone = [node] if node.kids is None else leaves(node)
    board.rooms = None
    board.count -= len(gone)
    board.area -= sum(leaf.a * leaf.c for leaf in gone)
    parent = node.parent
    if parent is None or board.count == 0:
        board.root = None
    else:
        parent.kids.remove(node)
        _tidy(board, parent)
    return [leaf.kind for leaf in gone]


def _tidy(board: Board, node: Node) -> None:
    """A node left with a single kid is no cut: its kid takes its place."""
    while len(node.kids) < 2:
        parent = node.parent
        if not node.kids:
            parent.kids.remove(node)
            node = parent
            continue
        kid = node.kids[0]
        if parent is None:
            if kid.kids is None:
                break
            board.root = node = kid
            kid.parent = None
            continue
        parent.kids.remove(node)
        if kid.kids is None:
            turn(kid)
            parent.kids.append(kid)
            kid.parent = parent
        else:
            for grandkid in kid.kids:
                grandkid.parent = parent
            parent.kids += kid.kids
        node = parent
    refresh_up(node)


def squares(board: Board) -> int:
    """The sum of the squared areas of what is left over: few large leftovers are worth more than many small ones."""
    width, height = board.size
    root = board.root
    if root is None:
        return (width * height) ** 2
    cap, out = (height, width - root.a) if root.d else (width, height - root.a)
    return (out * cap) ** 2 + ((cap - root.c) * root.a) ** 2 + _inner_squares(root)


def _inner_squares(node: Node) -> int:
    need = node.a
    total = 0
    for kid in node.kids:
        total += (kid.a * (need - kid.c)) ** 2
        if kid.kids is not None:
            total += _inner_squares(kid)
    return total


def _copied(node: Node) -> Node:
    twin = Node(node.d, None, node.a, node.c, node.kind)
    if node.kids is not None:
        twin.s2 = node.s2
        twin.s2c = node.s2c
        kids = []
        for kid in node.kids:
            kid = Node(0, None, kid.a, kid.c, kid.kind) if kid.kids is None else _copied(kid)
            kid.parent = twin
            kids.append(kid)
        twin.kids = kids
    return twin
