"""Boards lost to a grain that the spec never spoke of: along the longer side, which is now another one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from setout.compare.model import Fate
from setout.compare.reuse.body import Body
from setout.compare.reuse.fitting import fit
from setout.compare.reuse.lots import Lot
from setout.geometry import Axis
from setout.place.model import Board
from setout.plan.model import Plan

_ACROSS = (1, 0, 2), (1, -1, 1)


def hinted(fate: Fate, old: Plan, new: Plan, lots: tuple[Mapping[str, Lot], Mapping[str, Lot]], to_new) -> Fate:
    """The fate with the axis along which the new spec might say that the grain runs, so that the board is of use again.
    `lots`: by board. `to_new`: boards' paths."""
    if fate.why != "grain":
        return fate
    pairs = [(path, to_new[path]) for path in fate.boards]
    words = {_word(old, path) for path in fate.boards}
    unsaid = all(_is_unsaid(new, path) and _would_do(lots[0][a].body, lots[1][path].body) for a, path in pairs)
    return replace(fate, hint=words.pop()) if unsaid and len(words) == 1 else fate


def _word(plan: Plan, path: str) -> str:
    """The axis that the grain runs along, in the words of the board's assembly."""
    scene = plan.pieces.joined.drawn.scene
    board = scene.boards.get(path)
    if board is None or not isinstance(board.grain, Axis):
        return ""
    return scene.instances[board.owner].motion.inverse.axis(board.grain).word


def _is_unsaid(plan: Plan, path: str) -> bool:
    board = plan.pieces.joined.drawn.scene.boards.get(path)
    return board is not None and all(grain is None for grain in _said(plan, board))


def _said(plan: Plan, board: Board) -> Iterable[object]:
    """What its part says of the grain, and the parts that this one mirrors."""
    project = plan.pieces.joined.placed.project
    holder, _, name = board.definition.rpartition(".")
    body = project.assemblies[holder].body if holder in project.assemblies else project.job
    parts = {part.name: part for part in body.parts}
    seen: set[str] = set()
    while name in parts and name not in seen:
        seen.add(name)
        yield parts[name].grain
        mirrored = parts[name].mirror
        name = mirrored[0] if mirrored else ""
    if not seen:
        yield board.grain


def _would_do(old: Body | None, new: Body | None) -> bool:
    """Whether the board could be made of the old one if its grain ran the other way."""
    return old is not None and new is not None and fit(old, new.laid(_ACROSS)) is not None
