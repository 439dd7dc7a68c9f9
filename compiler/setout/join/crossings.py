"""Holes and screws that hit each other, or a housing, inside one board."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator

from setout.diagnostics import Diagnostic
from setout.geometry import Vec
from setout.join import problems
from setout.join.ground import Ground
from setout.join.housings import Housed
from setout.join.methods import Way
from setout.join.sweep import close_pairs
from setout.place.model import Joint, Notch


def crossings(ground: Ground, housed: Housed, ways: Iterable[Way]) -> list[Diagnostic]:
    """One warning for each two things that hit each other."""
    by_board: dict[str, list[Way]] = defaultdict(list)
    for way in ways:
        by_board[way.board].append(way)
    joints = {joint.id: joint for joint in ground.scene.joints}
    found = []
    for path, inside in by_board.items():
        hits = _hits(inside, list(_gaps(ground, housed, joints, path)))
        found += [problems.holes_cross(ground.board(path), first, second) for first, second in hits]
    return found


def _hits(inside: list[Way], gaps: list[Way]) -> list[tuple[Way, Way]]:
    """What hits what in one board, each two things once. Gaps may well run into each other."""
    everything = [*inside, *gaps]
    hits: dict[tuple[str, Vec, str, Vec], tuple[Way, Way]] = {}
    for i, j in sorted(close_pairs([way.box for way in everything])):
        first, second = everything[i], everything[j]
        if i < len(inside) and first.source != second.source and first.hits(second):
            hits.setdefault((first.source, first.at, second.source, second.at), (first, second))
    return list(hits.values())


def _gaps(ground: Ground, housed: Housed, joints: dict[str, Joint], path: str) -> Iterator[Way]:
    for cut in housed.cuts.get(path, ()):
        span = next(m.span for m in joints[cut.joint].methods if m.kind == cut.kind)
        yield Way(path, cut.box.lo, cut.box, f"the {cut.kind} for {ground.board(cut.for_board).name}", cut.joint, span)
    for notch in ground.board(path).features:
        if isinstance(notch, Notch):
            what = "a notch" if notch.kind == "notch" else "a cut-out"
            yield Way(path, notch.box.lo, notch.box, what, "notch", notch.span)
