"""Where an item can go on a board, and what each place does to the leftovers.

A place is worth the change of the sum of squared leftovers it brings (see `trees.squares`). Four kinds of place: at
the end of a node's kids; beside one leaf, in the strip that the leaf leaves free; beside several narrow kids together;
and beside the whole tree. A node may grow to take an item as long as there is room around it.

A frame is what must be known of a node to price its growth: (node, `cap` the length its kids may fill, `grow` how far
it can widen into what is left beside it, `most` how far it can widen when the nodes above widen too, the parent's
frame).
"""

from __future__ import annotations

from setout.plan.cutting.search.trees import Board, Node, adopt, refresh_up, turn

Place = tuple  # (node, what beside: None its end, a leaf, a list of kids, or 0 the whole tree; x size; y size)
NOWHERE = -(1 << 400)


def look(board: Board, w: int, h: int, best: int, place: Place | None) -> tuple[int, Place | None]:
    """The best place for a `w` by `h` item on a board that isn't empty, if it betters `best`."""
    root = board.root
    width, height = board.size
    if root.d:
        frame = (root, height, width - root.a, width - root.a, None)
        along, across = h, w
    else:
        frame = (root, width, height - root.a, height - root.a, None)
        along, across = w, h
    cap, out = frame[1], frame[2]
    if across <= out and along <= cap:
        gain = ((out - across) * cap) ** 2 + ((cap - along) * across) ** 2 - (out * cap) ** 2
        if gain > best:
            best = gain
            place = (root, 0, w, h)
    stack = [(frame, along, across)]
    while stack:
        frame, along, across = stack.pop()
        node, cap, _, most, up = frame
        need = node.a
        wider = across - need
        if wider > most:  # nothing in this node can widen so far
            continue
        free = cap - node.c
        room = free + up[3] if up else free  # how far this node's kids can lengthen, or widen if they are nodes
        excess = along - free
        kids = node.kids
        if along <= room:
            if excess > 0:
                gain = _lengthened(frame, along, across, excess)
            elif wider > 0:
                gain = _widened(frame, wider) + (excess * across) ** 2 - (free * across) ** 2
            else:
                gain = (excess * need) ** 2 + (along * wider) ** 2 - (free * need) ** 2
            if gain > best:
                best = gain
                place = (node, None, w, h)
        if wider < 0 and len(kids) > 2:
            gain, few = _beside_several(kids, -wider, need, along, across)
            if few and gain > best:
                best = gain
                place = (node, few, w, h)
        for kid in kids:
            if kid.kids is None:
                ka = kid.a
                kc = kid.c
                wide = kc + wider
                longer = along - ka
                if wide <= most and longer <= free:
                    if wide <= 0 and longer <= 0:
                        gain = (ka * wide) ** 2 + (across * longer) ** 2 - (ka * (need - kc)) ** 2
                    else:
                        gain = _beside(frame, ka, kc, along, across, wide, longer)
                    if gain > best:
                        best = gain
                        place = (node, kid, w, h)
            elif along <= kid.a + room:
                stack.append(((kid, need, free, room, frame), across, along))
    return best, place


def look_empty(board: Board, w: int, h: int) -> int:
    """What the first item does to an empty board, NOWHERE when it's too large for it."""
    width, height = board.size
    if w > width or h > height:
        return NOWHERE
    over, beside = ((height - h) * width) ** 2, ((width - w) * h) ** 2
    return over + beside - (width * height) ** 2


def put(board: Board, kind: int, place: Place) -> None:
    """Lay an item of this kind at a place that `look` found (or on an empty board: node None)."""
    node, beside, w, h = place
    board.count += 1
    board.area += w * h
    if node is None:
        board.root = adopt(0, [Node(0, None, w, h, kind)])
        return
    d = node.d
    new = Node(0, None, h, w, kind) if d else Node(0, None, w, h, kind)
    if beside is None:
        new.parent = node
        node.kids.append(new)
    elif beside == 0:
        turn(new)
        if len(node.kids) == 1:
            node = node.kids[0]
            if node.kids is None:
                turn(node)
        board.root = adopt(1 - d, [node, new])
        return
    elif type(beside) is list:
        inner = adopt(d, beside)
        turn(new)
        _replace(node, beside, adopt(1 - d, [inner, new]))
    else:
        turn(beside)
        turn(new)
        _replace(node, [beside], adopt(1 - d, [beside, new]))
    refresh_up(node)
    if len(node.kids) == 1 and node.kids[0].kids is not None:  # only a root can come to this
        board.root = node.kids[0]
        board.root.parent = None


def _replace(node: Node, kids: list[Node], by: Node) -> None:
    gone = set(map(id, kids))
    node.kids = [kid for kid in node.kids if id(kid) not in gone]
    node.kids.append(by)
    by.parent = node


def _widened(frame: tuple, g: int) -> int:
    """The change of squares when a node widens by `g`."""
    node, cap, grow, _, up = frame
    need = node.a
    free = cap - node.c
    change = g * (need + need + g) * (node.s2 + free * free) - 2 * g * node.s2c
    if g <= grow:
        return change + ((grow - g) ** 2 - grow * grow) * cap * cap
    # What is left beside it isn't enough: the node two levels above widens too, and the parent is filled from end to
    # end.
    over = g - grow
    return change + _widened(up[4], over) - ((grow + over) * cap) ** 2


def _lengthened(frame: tuple, along: int, across: int, excess: int) -> int:
    """The change when an item goes to the end of a node that must lengthen by `excess` for it (its parent widens)."""
    node, cap, grow, _, up = frame
    need = node.a
    free = cap - node.c
    wider = across - need
    change = _widened(up, excess) - ((free + excess) * need) ** 2
    if wider > 0:
        n2 = need + wider
        change += wider * (need + n2) * node.s2 - 2 * wider * node.s2c
        if wider <= grow:
            change += ((grow - wider) ** 2 - grow * grow) * cap * cap
        else:
            change -= (grow * cap) ** 2
    else:
        change += (along * wider) ** 2
    return change


def _beside(frame: tuple, ka: int, kc: int, along: int, across: int, wide: int, longer: int) -> int:
    """The change when an item goes beside a leaf and the node must widen by `wide` or the strip lengthen by `longer`
    (or both)."""
    node, cap, _, _, _ = frame
    need = node.a
    free = cap - node.c
    change = 0
    if wide > 0:
        change = _widened(frame, wide)
        need += wide
    rest = need - kc - across
    old = (ka * (need - kc)) ** 2
    if longer > 0:
        change += (along * rest) ** 2 + (kc * longer) ** 2 - old + ((free - longer) * need) ** 2 - (free * need) ** 2
    else:
        change += (ka * rest) ** 2 + (across * longer) ** 2 - old
    return change


def _beside_several(kids: list[Node], top: int, need: int, along: int, across: int) -> tuple[int, list[Node] | None]:
    """The change when the narrowest kids (no wider than `top`) are put together until an item fits beside them all."""
    run = low = old = 0
    for n, kid in enumerate(kids):
        low = kid.c
        if low > top:
            return 0, None
        run += kid.a
        old += (kid.a * (need - low)) ** 2
        if run >= along and n:
            break
    if run < along or n + 1 == len(kids):
        return 0, None
    few = kids[: n + 1]
    change = ((top - low) * run) ** 2 + ((run - along) * across) ** 2 - old
    for kid in few:
        change += (kid.a * (low - kid.c)) ** 2
    return change, few
