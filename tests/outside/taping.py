"""What a person with a tape and a list would read off a plan: sizes, holes from the near ends, counts."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction

from setout.geometry import Axis
from setout.plan.model import Plan
from setout.write.assemblies import build, groups
from setout.write.facts import facts

MM = Fraction(5, 127)  # 1 in = 25.4 mm exactly (NIST SP 811, appendix B.8; row R)


def inch(text: str) -> Fraction:
    """`23-25/32`, `3/4`, `2`."""
    return sum(map(Fraction, text.split("-")), Fraction(0))


def mm(text: str | int) -> Fraction:
    return Fraction(text) * MM


def cut_list(plan: Plan) -> dict[str, tuple[int, Fraction, Fraction, Fraction]]:
    """Count, length, width and thickness, by the names of a piece's boards."""
    return {
        " ".join(map(_within, p.boards)): (p.count, p.length.amount, p.width.amount, p.thick)
        for p in plan.pieces.pieces
    }


def stands(plan: Plan, path: str, axis: str) -> tuple[Fraction, Fraction]:
    """Where the board begins and ends, tongues included, from the low face of its assembly."""
    joined = plan.pieces.joined.drawn
    board, a = joined.boards[path], Axis[axis.upper()]
    start = joined.scene.instances[board.board.owner].box.lo[a]
    return board.box.lo[a] - start, board.box.hi[a] - start


def holes(plan: Plan, path: str, kind: str) -> dict[tuple[str, str], list[tuple[Fraction, ...]]]:
    """Places of the holes of a kind by the face drilled and the edge that they come out of ("" for none), measured from
    the board's own left, bottom and front. The axis of the drilled face is left out."""
    board = plan.pieces.joined.drawn.boards[path]
    found: dict[tuple[str, str], list[tuple[Fraction, ...]]] = {}
    for bore in board.bores:
        if bore.kind == kind:
            place = tuple(bore.at[k] - board.box.lo[k] for k in range(3) if k != bore.face.axis)
            found.setdefault((bore.face.word, bore.toward.word if bore.toward else ""), []).append(place)
    return {key: sorted(places) for key, places in found.items()}


def cuts(plan: Plan, path: str) -> set[tuple]:
    """Housings: kind, face, depth, and where the width begins and ends, from the board's own low end."""
    board = plan.pieces.joined.drawn.boards[path]
    found = set()
    for cut in board.cuts:
        across = Axis(3 - cut.face.axis - cut.run)
        low = board.box.lo[across]
        found.add((cut.kind, cut.face.word, cut.depth, cut.box.lo[across] - low, cut.box.hi[across] - low))
    return found


def fasteners(plan: Plan) -> Counter:
    """How many of each: kind, gauge, length, diameter (dowels')."""
    count: Counter = Counter()
    for f in plan.pieces.joined.drawn.fastenings:
        if f.kind != "glue":
            count[f.kind, f.gauge, f.length, f.diameter if f.kind == "dowels" else None] += f.count
    return count


def held_by(plan: Plan, kind: str) -> dict[str, int]:
    """How many fasteners of a kind hold each pair of boards, "kick left_side"."""
    found: Counter = Counter()
    for f in plan.pieces.joined.drawn.fastenings:
        if f.kind == kind:
            found[" ".join(map(_within, f.contact.split("/")[1:3]))] += f.count
    return dict(found)


def diagonals(plan: Plan) -> Iterable[tuple[str, str, bool]]:
    """Assembly's title, its diagonal as printed, and whether that was rounded."""
    seen = facts(plan, "")
    sheets = build(seen, groups(seen), {}).sheets
    return [(s.title, s.square.diagonal.text, s.square.diagonal.rounded) for s in sheets if s.square]


def _within(path: str) -> str:
    """A board's name inside its assembly."""
    return path.partition(".")[2] or path
