"""What is counted, before and after."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from fractions import Fraction

from setout.compare.model import Delta
from setout.plan.model import Plan

Counted = dict[tuple[str, str, tuple[Fraction, ...]], Fraction]


def numbers(old: Plan, new: Plan) -> tuple[Delta, ...]:
    """Those that changed: boards, pieces, holes, screws, what is bought, weight, money, steps."""
    found: list[Delta] = []
    uncut = old.cutting is None and new.cutting is None
    for count in _COUNTS:
        before, after = count(old), count(new)
        for key in sorted({*before, *after}, key=_in_order):
            pair = before.get(key, Fraction(0)), after.get(key, Fraction(0))
            if pair[0] != pair[1]:
                found.append(Delta(key[0], key[1], *pair, key[2], uncut and key[0] in ("sheet", "stick")))
    return tuple(found)


def _in_order(key: tuple) -> tuple:
    return _KINDS.index(key[0]), key[1], key[2]


_KINDS = (
    "boards", "pieces", "hole", "pocket", "screws", "pockets", "brads", "dowels",
    "sheet", "stick", "hardware", "glue", "edging", "weight", "unweighed", "money", "unpriced", "steps",
)  # fmt: skip


def _boards(plan: Plan) -> Counted:
    pieces = plan.pieces.pieces
    boards = Fraction(sum(piece.count for piece in pieces))
    return {("boards", "", ()): boards, ("pieces", "", ()): Fraction(len(pieces))}


def _holes(plan: Plan) -> Counted:
    """At the most, where scenes differ."""
    most: Counter = Counter()
    for scene in plan.pieces.joined.scenes:
        bores = (b for board in scene.boards.values() for b in board.bores)
        most |= Counter(("pocket" if b.kind == "pocket" else "hole", "", (b.diameter,)) for b in bores)
    return {key: Fraction(n) for key, n in most.items()}


def _screws(plan: Plan) -> Counted:
    most: Counter = Counter()
    for scene in plan.pieces.joined.scenes:
        count: Counter = Counter()
        for f in scene.fastenings:
            if f.kind != "glue":
                sizes = tuple(value for value in (f.diameter if f.kind == "dowels" else None, f.length) if value)
                count[(f.kind, f"#{f.gauge}" if f.gauge else "", sizes)] += f.count
        most |= count
    return {key: Fraction(n) for key, n in most.items()}


def _bought(plan: Plan) -> Counted:
    """Sheets, sticks and hardware by the piece; of what joints use up glue alone, as the rest is counted above."""
    lines = () if plan.buying is None else plan.buying.lines
    count: Counter = Counter()
    for line in lines:
        if line.kind in ("sheet", "stick", "hardware", "glue", "edging"):
            sizes = line.sizes if line.kind == "stick" else ()
            count[(line.kind, line.title or line.name, sizes)] += line.need
    return dict(count)


def _weight(plan: Plan) -> Counted:
    if plan.inspected is None:
        return {}
    scene = plan.pieces.joined.drawn.scene
    paths = [*scene.boards, *(loose.path for loose in scene.loose)]
    weights = [plan.inspected.weights.get(path) for path in paths]
    known = sum((Fraction(w) for w in weights if w is not None), Fraction(0))
    return {("weight", "", ()): known, ("unweighed", "", ()): Fraction(sum(w is None for w in weights))}


def _money(plan: Plan) -> Counted:
    if plan.buying is None:
        return {}
    return {("money", "", ()): plan.buying.total, ("unpriced", "", ()): Fraction(len(plan.buying.unpriced))}


def _steps(plan: Plan) -> Counted:
    return {("steps", "", ()): Fraction(len(plan.order.steps))}


_COUNTS: Iterable[Callable[[Plan], Counted]] = (
    _boards, _holes, _screws, _bought, _weight, _money, _steps
)  # fmt: skip
