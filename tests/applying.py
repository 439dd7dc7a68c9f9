"""What a comparison says, carried out on the boards of the old plan. Knows nothing of how it was worked out."""

from __future__ import annotations

from collections import Counter

from cutboards import Work, cut, good, laid, plugs, shifted

from setout.compare import Changes
from setout.compare.model import BoardChange, Fate
from setout.piece.model import Piece
from setout.plan.model import Plan

CUT_ANEW = {"restocked", "resized", "regrained", "refaced", "other-hand", "machined", "turned"}


def pieces_of(plan: Plan) -> Counter[str]:
    """How many boards there are of each shape."""
    return Counter({piece.shape: piece.count for piece in plan.pieces.pieces})


def applied(old: Plan, changes: Changes) -> Counter[str]:
    """The old boards, with what was said of them and of nothing else: the new ones."""
    left = {path: (piece.shape, count) for path, piece, count in _boards(old)}
    for change in changes.boards:
        if change.old:
            shape, count = left.pop(change.old.path)
            assert (shape, count) == (change.old.shape, change.old.count)
            if change.new:
                left[f"new {change.new.path}"] = _changed(change, shape), change.new.count
        elif change.new:
            left[f"new {change.new.path}"] = change.new.shape, change.new.count
    found: Counter[str] = Counter()
    for shape, count in left.values():
        found[shape] += count
    return found


def boards_of(plan: Plan) -> list[tuple[str, str]]:
    """Every copy of every board: its path and its shape."""
    return [(path, piece.shape) for path, piece, count in _boards(plan) for _ in range(count)]


def _boards(plan: Plan):
    loose = {board.path: board.count for board in plan.pieces.joined.placed.drawn.loose}
    return [(path, piece, loose.get(path, 1)) for piece in plan.pieces.pieces for path in piece.boards]


def _changed(change: BoardChange, shape: str) -> str:
    assert change.old and change.new
    if not CUT_ANEW.intersection(change.how):
        return shape
    before = sorted((e.low, e.high) for e in change.old.sizes)
    if "turned" not in change.how:
        for sized in change.sized:
            before.remove((sized.old.low, sized.old.high))
            before.append((sized.new.low, sized.new.high))
        assert sorted(before) == sorted((e.low, e.high) for e in change.new.sizes)
    return change.new.shape


def account(old: Plan, new: Plan, changes: Changes) -> None:
    """Every old board has one fate, every new one comes from somewhere, and every way that is told is one."""
    before, after = ({piece.mark: piece for piece in plan.pieces.pieces} for plan in (old, new))
    spent: Counter[str] = Counter()
    made: Counter[str] = Counter({c.mark: c.count for c in changes.reuse.to_cut})
    for fate in changes.reuse.fates:
        assert fate.count == len(fate.boards) > 0
        spent[fate.old] += fate.count
        if fate.new is not None:
            assert len(fate.becomes) == fate.count
            made[fate.new] += fate.count
            _check(fate, before[fate.old], after[fate.new], {(pair.old, pair.new) for pair in changes.pairs})
        else:
            assert (fate.kind == "uncut") == before[fate.old].held
    assert spent == {mark: piece.count for mark, piece in before.items()}
    assert made == {mark: piece.count for mark, piece in after.items()}


def _check(fate: Fate, old: Piece, new: Piece, own: set[tuple[str, str]]) -> None:
    assert not old.held and not new.held
    if fate.way is None:
        assert fate.kind == "right" and old.shape == new.shape
        return
    way, one, other = fate.way, cut(old.shape), cut(new.shape)
    lay, offset = (way.axes, way.signs), (*way.offset, 0)
    plugged = sum(task.count for task in way.tasks if task.kind == "plug")
    if plugged:
        assert fate.kind == "reworked" and own.issuperset(zip(fate.boards, fate.becomes))
        assert plugs(one, other, lay, offset) == plugged
    else:
        assert good(one, other, lay, offset)
    off = Counter()
    for trim in way.trims:
        off[trim.along] += trim.by
    size = [full - off[along] for full, along in zip(one.size, ("length", "width", "thick"))]
    assert all(size[axis] == other.size[k] for k, axis in enumerate(way.axes))
    there = [shifted(work, offset) for work in laid(one, lay).works]
    bores = [work for work in other.works if work.word in ("hole", "pocket")]
    missing = sum(not any(_is(work, wanted) for work in there) for wanted in bores)
    assert missing == sum(task.count for task in way.tasks if task.kind in ("hole", "pocket", "widened"))


def _is(work: Work, wanted: Work) -> bool:
    along = wanted.faces[0][0]
    same = (work.word, work.faces, work.numbers) == (wanted.word, wanted.faces, wanted.numbers)
    return same and all(a == b for k, (a, b) in enumerate(zip(work.at, wanted.at)) if k != along or work.faces[0][1])


def saved(changes: Changes, old: Plan, new: Plan):
    """The wood of the new boards that old ones serve as, in cubic inches."""
    after = {piece.mark: piece for piece in new.pieces.pieces}
    return sum(cut(after[fate.new].shape).volume * fate.count for fate in changes.reuse.fates if fate.new)
