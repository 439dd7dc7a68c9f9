"""`setout why`: how a part's sizes and place came about, back to the lines of the spec."""

from __future__ import annotations

import sys
from argparse import Namespace
from collections.abc import Iterator
from fractions import Fraction

from setout.cli.chain import Amount, Where, chain
from setout.cli.codes import USAGE
from setout.cli.job import Job, compiled
from setout.cli.report import tell
from setout.cli.terminal import Progress, shown
from setout.diagnostics.suggest import did_you_mean
from setout.geometry import AXIS_WORDS, Axis, Face
from setout.join.model import Joined, JoinedBoard
from setout.place.model import LooseBoard, Scene
from setout.plan.model import Plan
from setout.source import Span
from setout.units import Style, exact, said, say

Lines = Iterator[str]


def run(given: Namespace) -> int:
    with Progress() as progress:
        job = compiled(given.spec, given.set, progress)
    if job.failed:
        tell(sys.stderr, job.result.diagnostics, job.sources)
    plan = job.result.value
    if plan is None:
        return job.code
    asked, axes = _asked(given.part)
    paths = _meant(plan, asked)
    if len(paths) != 1:
        print(f"setout why: {_unclear(plan, asked, paths)}", file=sys.stderr)
        return USAGE
    print("\n".join(map(shown, _told_of(job, plan, paths[0], axes))))
    return job.code


# --- which part is meant ---------------------------------------------------------------------------------


def _asked(text: str) -> tuple[str, tuple[Axis, ...]]:
    """The part's path, and the axes asked about."""
    path, _, last = text.rpartition(".")
    if path and last in AXIS_WORDS:
        return path, (Axis(AXIS_WORDS.index(last)),)
    return text, tuple(Axis)


def _meant(plan: Plan, asked: str) -> list[str]:
    """The paths of the parts that go by that path, that mark, or that end of a path."""
    known = _known(plan)
    if asked in known or not asked:
        return [asked] if asked else []
    by_mark = [piece.boards[0] for piece in plan.pieces.pieces if piece.mark == asked.upper()]
    return by_mark or [path for path in known if path.endswith(f".{asked}") or path.rpartition(".")[0] == asked]


def _known(plan: Plan) -> list[str]:
    joined = plan.pieces.joined
    return [*joined.drawn.boards, *(board.path for board in joined.placed.drawn.loose)]


def _unclear(plan: Plan, asked: str, paths: list[str]) -> str:
    if paths:
        return f"{asked} may be {', '.join(paths[:12])}{' …' if len(paths) > 12 else ''}"
    hint = did_you_mean(asked, _known(plan))
    return f"there is no part {shown(asked)}; {hint or 'the cut list has their names'}"


# --- what there is to say about it -----------------------------------------------------------------------


def _told_of(job: Job, plan: Plan, path: str, axes: tuple[Axis, ...]) -> Lines:
    joined = plan.pieces.joined
    project = joined.placed.project
    style = Style(project.metric, project.mark)

    def where(span: Span) -> str:
        source = job.sources.get(span.file)
        return f"{span.file}:{source.position(span.start)[0]}" if source else span.file

    amount = _amounts(project.metric)
    board = joined.drawn.boards.get(path)
    if board is None:
        loose = next(b for b in joined.placed.drawn.loose if b.path == path)
        yield from _loose(loose, amount, where, style)
        return
    for axis in axes:
        yield from _size(joined.drawn.scene, board, axis, amount, where)
        yield from _printed(joined, board, axis, style)
    for axis in axes:
        yield from _position(joined, board, axis, amount, where, style)


def _size(scene: Scene, joined: JoinedBoard, own: Axis, amount: Amount, where: Where) -> Lines:
    """The size on an axis of the part's own assembly, in whose directions the spec speaks."""
    board = joined.board
    to = scene.instances[board.owner].motion
    axis = to.axis(own)
    yield from chain(f"{board.path} {own.word}", board.why[axis], amount, where)
    total = joined.box.size(axis)
    faces = [face for face in (Face(own, -1), Face(own, 1)) if joined.grown.get(to.face(face))]
    bands = [band for band in board.bands if band.face.axis == axis and not band.added]
    if faces or bands:
        tongues = "".join(f" + {amount(joined.grown[to.face(face)], 1)} let in at {face.word}" for face in faces)
        tongues += "".join(f" - {amount(band.thick, 1)} edge banding" for band in bands)
        yield f"{board.path} {own.word}, cut {amount(total, 1)} = {amount(board.box.size(axis), 1)}{tongues}"


def _printed(joined: Joined, board: JoinedBoard, own: Axis, style: Style) -> Lines:
    """The size as the packet has it: rounded, or between two when it waits for a measure."""
    axis = joined.drawn.scene.instances[board.board.owner].motion.axis(own)
    held = board.board.held[axis]
    sizes = [scene.boards[board.board.path].box.size(axis) for scene in joined.scenes]
    if held:
        low, high = said(min(sizes), style), said(max(sizes), style)
        yield f"  waits for {', '.join(sorted(held))}: from {low} to {high}"
    else:
        yield f"  printed {said(sizes[-1], style)}"


def _position(joined: Joined, drawn: JoinedBoard, own: Axis, amount: Amount, where: Where, style: Style) -> Lines:
    """How far its left, bottom or front face is from its assembly's; between which two when it waits for a measure."""
    board = drawn.board
    face = Face(own, -1)
    lines = chain(f"{board.path}.{face.word}", board.where[own], amount, where)
    yield lines[0]
    yield f"  from the {face.word} of {board.owner or 'the job'}"
    yield from lines[1:]
    places = [scene.boards[board.path].board.where[own].amount for scene in joined.scenes]
    if min(places) < max(places):
        names = joined.placed.open_measures  # scene i + 1 has measure i at its high end, all others low
        waits = [name for i, name in enumerate(names) if places[i + 1] != places[0]] or names
        yield f"  waits for {', '.join(sorted(waits))}: from {said(min(places), style)} to {said(max(places), style)}"


def _loose(board: LooseBoard, amount: Amount, where: Where, style: Style) -> Lines:
    for word, size, trace in zip(("long", "wide"), (board.length, board.width), board.why):
        yield from chain(f"{board.path} {word}", trace, amount, where)
        yield f"  printed {said(size, style)}"


def _amounts(metric: bool) -> Amount:
    def amount(value: Fraction, dim: int) -> str:
        if metric and dim == 1 and value:
            return say(value, Style(True, abs(value)))  # a mark as long as the length itself: nothing is rounded
        return exact(value)

    return amount
