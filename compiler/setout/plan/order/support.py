"""Which unit stands on which: told by the spec's `rests on`, and seen where an underside lies on a top."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from setout.geometry import Axis, Box
from setout.place.model import Scene
from setout.plan.order.things import Things
from setout.source import Span


class Support(NamedTuple):
    lower: str
    upper: str
    span: Span | None


def supports(scene: Scene, things: Things) -> tuple[Support, ...]:
    """Pairs of units. The lower one begins lower down, so that they never go round in a loop."""
    unit = {path: things.unit_of[things.of_board[path]] for path in scene.boards}
    low: dict[str, Fraction] = {}
    for path, board in scene.boards.items():
        at = board.box.lo[Axis.HIGH]
        low[unit[path]] = min(low.get(unit[path], at), at)
    found: dict[tuple[str, str], Support] = {}
    for lower, upper, span in (*_told(scene), *_seen(scene, unit)):
        a, b = unit[lower], unit[upper]
        if a != b and low[a] < low[b]:
            found.setdefault((a, b), Support(a, b, span))
    return tuple(found.values())


def _told(scene: Scene) -> Iterator[tuple[str, str, Span]]:
    for rest in scene.rests:
        for upper in rest.upper:
            for lower in rest.lower:
                if upper in scene.boards and lower in scene.boards:
                    yield lower, upper, rest.span


def _seen(scene: Scene, unit: dict[str, str]) -> Iterator[tuple[str, str, Span | None]]:
    tops: dict[Fraction, list[tuple[Box, str]]] = {}
    for path, board in scene.boards.items():
        tops.setdefault(board.box.hi[Axis.HIGH], []).append((board.box, path))
    for level in tops.values():
        level.sort(key=lambda entry: entry[0].lo[Axis.WIDE])
    seen: set[tuple[str, str]] = set()
    for path, board in scene.boards.items():
        for box, lower in tops.get(board.box.lo[Axis.HIGH], ()):
            if box.lo[Axis.WIDE] >= board.box.hi[Axis.WIDE]:
                break
            pair = (unit[lower], unit[path])
            if pair[0] != pair[1] and pair not in seen and _over(board.box, box):
                seen.add(pair)
                yield lower, path, board.head


def _over(a: Box, b: Box) -> bool:
    return all(a.lo[x] < b.hi[x] and b.lo[x] < a.hi[x] for x in (Axis.WIDE, Axis.DEEP))
