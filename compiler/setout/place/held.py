"""Which sizes really hang on a measure. Where two ends move with it alike, the length between them doesn't."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from setout.geometry import Axis
from setout.place.amounts import AND_SO_ON
from setout.place.model import Board, Scene
from setout.values import Trace

Held = tuple[frozenset[str], frozenset[str], frozenset[str]]


def freed(scenes: Sequence[Scene], unknown: tuple[str, ...]) -> tuple[Scene, ...]:
    """The scenes with every board held by those measures only that change its size.

    `scenes` are in the order of Placed: the first has all measures low, the one after measure i has it alone high.
    """
    held = {path: _held(path, board, scenes, unknown) for path, board in scenes[0].boards.items() if any(board.held)}
    if not held:
        return tuple(scenes)
    return tuple(_with(scene, held) for scene in scenes)


def _with(scene: Scene, held: dict[str, Held]) -> Scene:
    boards = {p: replace(b, held=held[p]) if p in held else b for p, b in scene.boards.items()}
    return replace(scene, boards=boards)


def _held(path: str, board: Board, scenes: Sequence[Scene], unknown: tuple[str, ...]) -> Held:
    def along(axis: Axis) -> frozenset[str]:
        names = board.held[axis]
        if not names or not _straight(board.why[axis], names):
            return names
        size = board.box.size(axis)
        return frozenset(n for n in names if scenes[unknown.index(n) + 1].boards[path].box.size(axis) != size)

    return along(Axis.WIDE), along(Axis.HIGH), along(Axis.DEEP)


def _straight(trace: Trace, names: frozenset[str]) -> bool:
    """Whether the amount is a sum of multiples of the measures: the same at both ends, it is the same between them."""
    return _degree(trace, names) <= 1


def _degree(trace: Trace, names: frozenset[str]) -> int:
    """0: hangs on none of the measures, 1: in a straight line, 2: in any other way, or it can't be told."""
    if trace.kind == "name" and trace.text in names and not trace.parts:
        return 1
    parts = [_degree(part, names) for part in trace.parts]
    most = max(parts, default=0)
    if trace.text == AND_SO_ON:
        return 2
    if trace.kind == "operation" and most and not _keeps_straight(trace.text, parts):
        return 2
    if trace.kind == "rule" and most and trace.text.startswith("over "):
        return 2  # whichever of two things reaches farther
    return most


def _keeps_straight(op: str, parts: list[int]) -> bool:
    if op == "*":
        return 0 in parts
    return parts[1] == 0 if op == "/" else op in ("+", "-", "neg")
