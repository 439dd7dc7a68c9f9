"""An independent check of cutting plans: it makes the cuts, one after another, on exact rectangles, and looks at what
lies there in the end.

It shares no code with the planner; it only reads the values handed out. `faults` returns what is wrong in words, []
when all is well. `layout_faults` does the like for what the solver lays out in whole numbers.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from fractions import Fraction

Rect = tuple[Fraction, Fraction, Fraction, Fraction]  # x, y, along x, along y


def faults(cutting, pieces) -> list[str]:
    """All that is wrong with a `Cutting` of these `Pieces`."""
    project = pieces.joined.placed.project
    found: list[str] = []
    plans = [plan for stock in cutting.stocks for plan in stock.sources]
    fallen = {plan.source.id: _replayed(plan, project, found) for plan in plans}
    if len(fallen) != len(plans):
        found.append("two sources have one name")
    _pieces_right(cutting, pieces, fallen, found)
    for stock in cutting.stocks:
        _stock_right(stock, project, found)
    _runs_right(cutting, pieces, found)
    _numbers_right(cutting, plans, found)
    _rack_right(cutting, found)
    return found


# --- the cuts of one source -----------------------------------------------------------------------------------


def _replayed(plan, project, found: list[str]) -> list[tuple[object, Rect]]:
    """Make the cuts of a source; every board that came out with its Falls."""
    source = plan.source
    whole: Rect = (Fraction(0), Fraction(0), source.length, source.width)
    boards: dict[str, Rect] = {source.id: whole}
    out: list[tuple[object, Rect]] = []
    dust = Fraction(0)
    for cut in plan.cuts:
        where = f"cut {cut.number} on {cut.board}"
        board = boards.pop(cut.board, None)
        if board is None:
            found.append(f"{where}: there is no such board")
            continue
        _saw_right(cut, board, where, found)
        off, rest, lost = _parted(cut, board, where, found)
        dust += lost
        for falls, rect in ((cut.off, off), (cut.rest, rest)):
            if (falls is None) != (rect is None):
                found.append(f"{where}: {'nothing' if falls is None else falls.kind} is said of {rect}")
                continue
            if falls is None or rect is None:
                continue
            if (falls.length, falls.width) != rect[2:]:
                found.append(
                    f"{where}: {falls.kind} is said to be {falls.length} x {falls.width}, is {rect[2]} x {rect[3]}"
                )
            if falls.kind != "board":
                out.append((falls, rect))
            elif falls.board in boards:
                found.append(f"{where}: two boards are called {falls.board}")
            else:
                boards[falls.board] = rect
    _nothing_forgotten(plan, boards, whole, out, dust, found)
    _leftovers_right(plan, out, project, found)
    return out if plan.cuts else [(laid, whole) for laid in plan.laid]


def _parted(cut, board: Rect, where: str, found: list[str]) -> tuple[Rect | None, Rect | None, Fraction]:
    """What the kerf leaves of a board on both sides, `off` first, and the area that went to dust."""
    x, y, dx, dy = board
    low, high, across = (x, x + dx, dy) if cut.across == "x" else (y, y + dy, dx)
    if cut.cut_length != across:
        found.append(f"{where}: the cut is {cut.cut_length} long, the board {across}: not from edge to edge")
    begin, end = cut.at, cut.at + cut.kerf
    if not (begin <= high and end >= low and (begin > low or end < high)):
        found.append(f"{where}: the kerf from {begin} to {end} misses the board from {low} to {high}")
    setting = begin - low if cut.reference == "low" else high - end
    if setting != cut.setting:
        found.append(f"{where}: set to {cut.setting}, but that is {setting}")

    def strip(a: Fraction, b: Fraction) -> Rect | None:
        if b <= a:
            return None
        return (a, y, b - a, dy) if cut.across == "x" else (x, a, dx, b - a)

    near, far = strip(low, begin), strip(end, high)
    lost = (min(end, high) - max(begin, low)) * across
    return (near, far, lost) if cut.reference == "low" else (far, near, lost)


def _saw_right(cut, board: Rect, where: str, found: list[str]) -> None:
    saw = cut.saw
    if saw is None:
        return
    if cut.kerf != saw.kerf:
        found.append(f"{where}: kerf {cut.kerf} with a saw of {saw.kerf}")
    long, short = max(board[2:]), min(board[2:])
    if saw.takes is not None and (long > saw.takes[0] or short > saw.takes[1]):
        found.append(f"{where}: the {saw.title} doesn't take {long} x {short}")
    guided = saw.breaks_down and saw.rips is None and saw.crosscuts is None
    able = {
        "rip": saw.rips is not None and cut.setting <= saw.rips and cut.setting <= cut.cut_length,
        "crosscut": max(saw.crosscuts or 0, saw.sticks or 0) >= cut.cut_length,
        "break down": saw.breaks_down
        and (guided or (saw.rips or 0) >= cut.setting or (saw.crosscuts or 0) >= cut.cut_length),
        "trim": True,
    }
    if not able.get(cut.kind, False):
        found.append(f"{where}: the {saw.title} can't make a {cut.kind} {cut.cut_length} long at {cut.setting}")


def _nothing_forgotten(plan, boards, whole: Rect, out, dust: Fraction, found: list[str]) -> None:
    name = plan.source.id
    if not plan.cuts:
        if [(one.length, one.width) for one in plan.laid] != [whole[2:]]:
            found.append(f"{name}: it isn't cut, and isn't one board as it is")
        return
    if boards:
        found.append(f"{name}: {', '.join(boards)} lie about, cut no further")
    if sum((r[2] * r[3] for _, r in out), dust) != whole[2] * whole[3]:
        found.append(f"{name}: what came out and the dust don't make up the whole")
    laid = Counter((one.mark, one.copy, one.reserved, one.x, one.y, one.length, one.width) for one in plan.laid)
    came = Counter((f.mark, f.copy, f.kind == "reserved", *r) for f, r in out if f.kind in ("piece", "reserved"))
    if laid != came:
        found.append(f"{name}: what is laid isn't what is cut")


def _leftovers_right(plan, out, project, found: list[str]) -> None:
    name, value = plan.source.id, project.practice.value
    said = Counter((left.x, left.y, left.length, left.width, left.keep, left.name) for left in plan.leftovers)
    strips = [cut.off for cut in plan.cuts if cut.kind == "trim"]  # what trimming takes off is no leftover
    came = Counter(
        (*r, f.kind == "offcut", f.board)
        for f, r in out if f.kind in ("offcut", "waste") and all(f is not strip for strip in strips)
    )  # fmt: skip
    if came != said:
        found.append(f"{name}: leftovers are not as stated")
    for left in plan.leftovers:
        if plan.source.stock.kind == "stick":
            worth = left.length >= value("keep_stick") and left.width == plan.source.width
        else:
            long, short = max(left.length, left.width), min(left.length, left.width)
            worth = long >= value("keep_length") and short >= value("keep_width")
        if worth != left.keep or bool(left.name) != left.keep:
            found.append(f"{name}: a leftover {left.length} x {left.width} is{'' if left.keep else ' not'} kept")
        edge = left.x + left.length == plan.source.length or left.y + left.width == plan.source.width
        if left.keep and plan.source.kind == "sheet" and value("edge_trim") > 0:
            if edge or 0 in (left.x, left.y):
                found.append(f"{name}: a leftover has a factory edge")
    names = [left.name for left in plan.leftovers if left.keep]
    if len(set(names)) != len(names):
        found.append(f"{name}: two leftovers have one letter")


# --- the whole job --------------------------------------------------------------------------------------------


def _pieces_right(cutting, pieces, fallen, found: list[str]) -> None:
    """Every board comes out once, at its exact size, with the grain right, from its own stock."""
    of_source = {plan.source.id: plan.source for stock in cutting.stocks for plan in stock.sources}
    by_mark = {piece.mark: piece for piece in pieces.pieces}
    copies: Counter = Counter()
    for name, out in fallen.items():
        source = of_source[name]
        for falls, rect in out:
            if not falls.mark:
                continue
            piece = by_mark[falls.mark]
            copies[falls.mark, falls.copy] += 1
            if piece.stock.name != source.stock.name:
                found.append(f"{falls.mark} comes out of {name}")
            lies = _lies(piece, source)
            if rect[2:] not in lies:
                found.append(f"{falls.mark} on {name} is {rect[2]} x {rect[3]}, wanted {lies}")
    for plan in (plan for stock in cutting.stocks for plan in stock.sources):
        for laid in plan.laid:
            piece = by_mark[laid.mark]
            sizes = (piece.length.reserve, piece.width.reserve)
            if (laid.length, laid.width) != (sizes[::-1] if laid.turned else sizes) or laid.reserved != bool(
                piece.sized_by
            ):
                found.append(f"{laid.mark} {laid.copy} isn't laid as it says")
    missing = Counter({mark: count for stock in cutting.stocks for mark, count in stock.missing})
    if any(count > 1 for count in copies.values()):
        found.append("a board comes out twice")
    for mark, piece in by_mark.items():
        count = sum(1 for one, _ in copies if one == mark)
        if count + missing[mark] != piece.count:
            found.append(f"{mark}: {count} come out, {missing[mark]} are missing, {piece.count} are wanted")


def _lies(piece, source) -> set[tuple[Fraction, Fraction]]:
    """How it may lie on the source: its sizes along x and y."""
    straight = (piece.length.reserve, piece.width.reserve)
    if source.stock.kind == "stick":
        return {straight}
    if piece.grain not in ("length", "width") or source.grain is None:
        return {straight, straight[::-1]}
    return {straight} if piece.grain == source.grain else {straight[::-1]}


def _stock_right(plan, project, found: list[str]) -> None:
    stock = project.stocks[plan.stock.name]
    used = Counter(
        (s.source.kind, s.source.on_hand, s.source.length, s.source.width, s.source.grain) for s in plan.sources
    )
    rack: Counter = Counter()
    for board in project.rack:
        if board.stock == stock.name:
            rack[board.length, stock.short if board.width is None else board.width, board.grain] += board.count
    hand, most = dict(stock.on_hand), dict(stock.at_most)
    for (kind, on_hand, length, width, grain), count in used.items():
        if kind == "offcut":
            limit = rack[length, width, grain]
        else:
            sizes = [(stock.long, stock.short)] if stock.kind == "sheet" else [(n, stock.short) for n in stock.lengths]
            if (length, width) not in sizes:
                found.append(f"{stock.name}: there is no {length} x {width}")
            key = None if stock.kind == "sheet" else length
            only = stock.kind == "sheet" or len(stock.lengths) == 1
            table = hand if on_hand else most
            limit = table.get(key, table.get(None) if only else None)
            limit = (limit or 0) if on_hand else limit
        if limit is not None and count > limit:
            found.append(f"{stock.name}: {count} of {kind} {length} x {width}, there are {limit}")
    bought = [s.source for s in plan.sources if not s.source.on_hand]
    if not plan.missing and len(bought) < plan.bound:
        found.append(f"{stock.name}: {len(bought)} bought is under the bound of {plan.bound}")
    prices = [s.price for s in bought]
    if plan.cost is not None and (None in prices or sum(prices, Fraction(0)) != plan.cost):
        found.append(f"{stock.name}: the cost is not that of what is bought")
    if None not in (plan.cost, plan.bound_cost) and not plan.missing and plan.cost < plan.bound_cost:
        found.append(f"{stock.name}: cheaper than the bound")


def _runs_right(cutting, pieces, found: list[str]) -> None:
    """The members of each run lie side by side in their order, a kerf apart."""
    chains: Counter = Counter()
    wanted = Counter(tuple((m.mark, m.along) for m in run.members) for run in pieces.runs)
    short = {mark for stock in cutting.stocks for mark, _ in stock.missing}
    for stock in cutting.stocks:
        for plan in stock.sources:
            for key in wanted:
                chains[key] += sum(1 for first in plan.laid if _chain(first, key, plan.laid, stock.kerf))
    for key, count in wanted.items():
        if chains[key] < count and not short & {mark for mark, _ in key}:
            found.append(f"{'-'.join(mark for mark, _ in key)}: {chains[key]} of {count} runs lie in sequence")


def _chain(first, key, laid, kerf: Fraction) -> bool:
    if first.mark != key[0][0]:
        return False
    along_x = (key[0][1] == "length") != first.turned
    now = first
    for mark, _ in key[1:]:
        low, level = _place(now, along_x)
        end = low + (now.length if along_x else now.width)
        near = [one for one in laid if one.mark == mark and 0 <= _place(one, along_x)[0] - end <= kerf]
        now = next((one for one in near if _place(one, along_x)[1] == level), None)
        if now is None:
            return False
    return True


def _place(laid, along_x: bool) -> tuple[Fraction, Fraction]:
    """Where it begins along an axis, and its place on the other."""
    return (laid.x, laid.y) if along_x else (laid.y, laid.x)


def _numbers_right(cutting, plans, found: list[str]) -> None:
    numbers = [cut.number for plan in plans for cut in plan.cuts]
    if sorted(numbers) != list(range(1, len(numbers) + 1)):
        found.append("the cuts are not numbered from 1 on")
    if any(a.number >= b.number for plan in plans for a, b in zip(plan.cuts, plan.cuts[1:])):
        found.append("the cuts of a source are not in order")
    by_number = {cut.number: cut for plan in plans for cut in plan.cuts}
    batched: Counter = Counter()
    for one in cutting.settings:
        for number in one.cuts:
            cut = by_number.get(number)
            batched[number] += 1
            if cut is None or (cut.kind, cut.saw, cut.setting) != (one.kind, one.saw, one.setting):
                found.append(f"cut {number} isn't made at the setting it stands under")
    wanted = {n for n, cut in by_number.items() if cut.kind in ("rip", "crosscut") and cut.saw is not None}
    if set(batched) != wanted or any(n > 1 for n in batched.values()):
        found.append("the settings are not those of the cuts")


def _rack_right(cutting, found: list[str]) -> None:
    kept = Counter(
        (plan.stock.name, max(left.length, left.width), min(left.length, left.width))
        for plan in cutting.stocks for s in plan.sources for left in s.leftovers if left.keep
    )  # fmt: skip
    if kept != Counter((name, max(a, b), min(a, b)) for name, a, b, _ in cutting.rack):
        found.append("the rack isn't what is left")


# --- the solver's layouts -----------------------------------------------------------------------------------------


def layout_faults(items, bins, layout) -> list[str]:
    """The same for a solver's layout: items and bins as it was given them, whole numbers, no kerf."""
    found: list[str] = []
    laid: Counter = Counter()
    for used in layout.used:
        root, spec = used.root, bins[used.bin]
        if (root.x, root.y, root.width, root.height) != (0, 0, spec.width, spec.height):
            found.append(f"bin {used.bin} is not cut as a whole")
        for piece in cut_apart(root, found):
            item = items[piece.item]
            laid[piece.item] += 1
            sizes = (item.height, item.width) if piece.turned else (item.width, item.height)
            if (piece.width, piece.height) != sizes or (piece.turned and not item.turnable):
                found.append(f"item {piece.item} comes out as {piece.width} x {piece.height}")
    missing = dict(layout.missing)
    for i, item in enumerate(items):
        if laid[i] + missing.get(i, 0) != item.count:
            found.append(f"item {i}: {laid[i]} of {item.count}")
    for i, count in Counter(used.bin for used in layout.used).items():
        if bins[i].copies is not None and count > bins[i].copies:
            found.append(f"bin {i} is used {count} times")
    return found


def cut_apart(region, found: list[str]) -> Iterator:
    """The items of a region, each part cut off by a line through the whole of it."""
    waiting: list = [region]
    while waiting:
        one = waiting.pop()
        x, y = one.x, one.y
        parts: Iterable = one.parts
        for part in parts:
            if (
                (part.x, part.y) != (x, y)
                or part.x + part.width > one.x + one.width
                or part.y + part.height > one.y + one.height
            ):
                found.append(f"a part at {part.x}, {part.y} doesn't lie in its strip")
            x, y = (x + part.width, y) if one.along == "x" else (x, y + part.height)
            if hasattr(part, "parts"):
                waiting.append(part)
            else:
                yield part
