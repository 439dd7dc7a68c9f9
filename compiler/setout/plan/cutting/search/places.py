"""Where an item can go on a board, and what each place does to the leftovers.

A place is worth the change of the sum of squared leftovers it brings (see `trees.squares`). Four kinds of place: at
the end of a node's kids; beside one leaf, in the strip that the leaf leaves free; beside several narrow kids together;
and beside the whole tree. A node may grow to take an item as long as there is room around it.

How large an item may be to go somewhere doesn't depend on the item. So the places of a board are listed once, each
with the sizes it takes, and the list stands until the board changes: most items are turned away from most places by two
comparisons. This is the inner loop of every search, written for speed: long functions, tuples for objects.

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
    rooms = board.rooms
    if rooms is None:
        rooms = listed(board)
    for widest, highest, frame, beside in rooms:
        if w > widest or h > highest:
            continue
        node = frame[0]
        along, across = (h, w) if node.d else (w, h)
        need = node.a
        if beside is None:
            cap = frame[1]
            free = cap - node.c
            excess = along - free
            wider = across - need
            if excess > 0:
                gain = _lengthened(frame, along, across, excess)
            elif wider > 0:
                gain = _widened(frame, wider) + across * across * (excess * excess - free * free)
            else:
                along *= wider
                gain = need * need * (excess * excess - free * free) + along * along
        elif type(beside) is Node:
            ka = beside.a
            kc = beside.c
            wide = kc + across - need
            longer = along - ka
            if wide <= 0 and longer <= 0:
                top = need - kc
                across *= longer
                gain = ka * ka * (wide * wide - top * top) + across * across
            else:
                gain = _beside(frame, ka, kc, along, across, wide, longer)
        elif beside == 0:
            _, cap, out, _, _ = frame
            gain = ((out - across) * cap) ** 2 + ((cap - along) * across) ** 2 - (out * cap) ** 2
        elif along > beside[1]:
            beside = node.kids[: beside[0]]
            gain = _beside_several(beside, need, along, across)
        else:
            continue
        if gain > best:
            best = gain
            place = (node, beside, w, h)
    return best, place


def listed(board: Board) -> list[tuple]:
    """The places of a board that isn't empty: (largest x size, largest y size, frame, what beside), where several kids
    are told by how many and by the length that fewer would do for."""
    root = board.root
    width, height = board.size
    if root.d:
        out = width - root.a
        frame = (root, height, out, out, None)
        rooms = [(out, height, frame, 0)]
    else:
        out = height - root.a
        frame = (root, width, out, out, None)
        rooms = [(width, out, frame, 0)]
    if not out:
        rooms.clear()
    stack = [frame]
    while stack:
        frame = stack.pop()
        node, cap, _, most, up = frame
        need = node.a
        kids = node.kids
        free = cap - node.c
        room = free + up[3] if up else free  # how far this node's kids can lengthen, or widen if they are nodes
        wide = need + most
        down = node.d
        if room:
            rooms.append((wide, room, frame, None) if down else (room, wide, frame, None))
        count = len(kids)
        if count > 2:
            run = kids[0].a
            for n in range(1, count - 1):
                kid = kids[n]
                top = need - kid.c
                if top <= 0:
                    break
                fewer = run if n > 1 else 0
                run += kid.a
                rooms.append((top, run, frame, (n + 1, fewer)) if down else (run, top, frame, (n + 1, fewer)))
        for kid in kids:
            if kid.kids is None:
                top = wide - kid.c
                if top:
                    rooms.append((top, kid.a + free, frame, kid) if down else (kid.a + free, top, frame, kid))
            else:
                stack.append((kid, need, free, room, frame))
    board.rooms = rooms
    return rooms


def room_for(board: Board) -> tuple[int, int]:
    """The longest side, and the longest of the shorter sides, of what any place takes."""
    if board.root is None:
        return max(board.size), min(board.size)
    rooms = board.rooms
    if rooms is None:
        rooms = listed(board)
    longest = shortest = 0
    for wide, high, _, _ in rooms:
        if wide < high:
            wide, high = high, wide
        if wide > longest:
            longest = wide
        if high > shortest:
            shortest = high
    return longest, shortest


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
    board.rooms = None
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


def _beside_several(few: list[Node], need: int, along: int, across: int) -> int:
    """The change when these kids, the narrowest, are put together and an item goes beside them all."""
    low = few[-1].c
    run = change = 0
    for kid in few:
        ka = kid.a
        kc = kid.c
        run += ka
        inside, before = low - kc, need - kc
        change += ka * ka * (inside * inside - before * before)
    return change + ((need - across - low) * run) ** 2 + ((run - along) * across) ** 2
