"""Whether a housing lies where its name says, and leaves enough wood."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from itertools import combinations

from setout.diagnostics import Diagnostic
from setout.geometry import Box
from setout.join import problems
from setout.join.ground import Ground
from setout.join.model import Cavity, Contact
from setout.join.touching import Pair
from setout.place.model import Method


def misplaced(ground: Ground, contact: Contact, method: Method, cut: Cavity, receiver: Box) -> list[Diagnostic]:
    """A rabbet lies on an edge of the receiver; dados and grooves lie off its edges."""
    a, b = ground.board(contact.a), ground.board(contact.b)  # type: ignore[arg-type]
    width = a.thick
    edges = [cut.box.lo[width] == receiver.lo[width], cut.box.hi[width] == receiver.hi[width]]
    if all(edges):
        return [problems.takes_the_whole_edge(ground, a, b, method, cut)]
    if method.kind == "rabbet" and not any(edges):
        return [problems.rabbet_off_the_edge(ground, a, b, method, cut, receiver)]
    if method.kind != "rabbet" and any(edges):
        return [problems.dado_on_the_edge(a, b, method, cut, edges[1])]
    return []


def too_deep(
    ground: Ground, contact: Contact, method: Method, cut: Cavity, receiver: Box, limit: Fraction
) -> list[Diagnostic]:
    """Through the board is an error; past the usual share of its thickness a warning."""
    a, b = ground.board(contact.a), ground.board(contact.b)  # type: ignore[arg-type]
    thick = receiver.size(cut.face.axis)
    if cut.depth >= thick:
        return [problems.housing_through(ground, a, b, method, cut, thick)]
    if cut.face.axis == b.thick and cut.depth > thick * limit:
        return [problems.housing_deep(ground, a, b, method, cut, thick, limit)]
    return []


def two_sided(
    ground: Ground, cuts: Mapping[str, tuple[Cavity, ...]], boxes: Mapping[str, Box]
) -> tuple[list[Diagnostic], frozenset[Pair]]:
    """Housings cut from both sides of one board, opposite each other; and the pairs of boards that meet through it."""
    found, excused = [], set()
    for path, cavities in cuts.items():
        for first, second in combinations(cavities, 2):
            left = _between(first, second, boxes[path])
            if left is None or left >= ground.practice.value("housing_web"):
                continue
            if left <= 0:
                excused |= {(first.for_board, second.for_board), (second.for_board, first.for_board)}
            told = problems.housings_meet if left <= 0 else problems.thin_web
            found.append(told(ground, ground.board(path), first, second, left))
    return found, frozenset(excused)


def _between(first: Cavity, second: Cavity, receiver: Box) -> Fraction | None:
    """The wood left between two cavities cut from opposite faces; None where they don't lie opposite each other."""
    if first.face != second.face.opposite:
        return None
    across = [k for k in range(3) if k != first.face.axis]
    if all(first.box.lo[k] < second.box.hi[k] and second.box.lo[k] < first.box.hi[k] for k in across):
        return receiver.size(first.face.axis) - first.depth - second.depth
    return None
