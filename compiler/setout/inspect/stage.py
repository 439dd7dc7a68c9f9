"""All the checks, on every scene; the findings are those of the scene drawn."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator
from typing import TypeVar

from setout.diagnostics import Checked, Diagnostic
from setout.inspect import problems
from setout.inspect.floating import floating, wall_at
from setout.inspect.lifting import lifts
from setout.inspect.model import Inspected
from setout.inspect.rooms import carried, room_checks
from setout.inspect.sagging import sags
from setout.inspect.standing import moves, on_feet, standing
from setout.inspect.view import View
from setout.inspect.walls import hung
from setout.piece.model import Pieces
from setout.resolve.model import Project
from setout.source import Span
from setout.units import Style

T = TypeVar("T")


def inspect(pieces: Pieces) -> Checked[Inspected]:
    """A foreman's look at the job before the first cut. What depends on a measure is looked at over its whole range."""
    project = pieces.joined.placed.project
    style = Style(project.metric, project.mark)
    found: dict[tuple, Diagnostic] = {}
    made = None
    for scene in pieces.joined.scenes:
        view = View(scene, project.practice, style)
        made = _inspected(view, project)
        for told in _told(view, made, project):
            found.setdefault((told.code, told.label.span if told.label else None), told)
    return Checked(made, tuple(found.values()))


def _inspected(view: View, project: Project) -> Inspected:
    used = {joined.board.stock.name for joined in view.joined.boards.values()}
    used |= {loose.stock.name for loose in view.scene.loose}
    return Inspected(
        view.weights,
        lifts(view, [stock for name, stock in project.stocks.items() if name in used]),
        sags(view),
        hung(view),
        standing(view),
        moves(view),
        carried(view, project.room),
        on_feet(view),
    )


def _told(view: View, made: Inspected, project: Project) -> Iterator[Diagnostic]:
    yield from _heavy(view, made)
    yield from _sagging(view, made)
    for one in made.hung:
        if one.thin:
            yield problems.hangs_by_thin(view, one, view.joined.boards[one.boards[0]].board)
        used = one.estimate.used if one.estimate is not None else 0
        if used is None or used > 1:
            yield problems.wall_screws(view, one, view.joined.boards[one.boards[0]].board.head)
    for units in floating(view):
        yield problems.held_by_nothing(view, units, wall_at(view, units[0]), _head(view, units[0]))
    loose = [piece for piece in made.standing if piece.scope]
    for piece, also in _kinds(loose, lambda piece: _definition(view, piece.path)):
        yield problems.could_tip(view, piece, also, view.scene.instances[piece.path].span)
    for feet in made.on_feet:
        if feet.weight > feet.each * feet.count:
            yield problems.feet_overloaded(view, feet, view.scene.instances[feet.unit].span)
    least = project.practice.value("movement_least")
    for wood in made.moves:
        if wood.held and max(wood.grows, wood.shrinks) >= least:
            yield problems.held_across(view, wood, view.joined.boards[wood.board].board)
    yield from room_checks(view, project.room, made.carried)


def _heavy(view: View, made: Inspected) -> Iterator[Diagnostic]:
    """What nobody lifts alone, however it is held; one for each definition, not for each copy. Sheets, and what is only
    too heavy for so deep or so high a lift, are for the page."""
    heavy = [lift for lift in made.lifts if lift.weight and lift.weight > lift.limit and lift.kind != "sheet"]
    for lift, also in _kinds(heavy, lambda one: _definition(view, one.path)):
        yield problems.too_heavy(view, lift, also, _head(view, lift.path))


def _head(view: View, path: str) -> Span:
    instance = view.scene.instances.get(path)
    return instance.span if instance is not None else view.joined.boards[path].board.head


def _definition(view: View, path: str) -> str:
    instance = view.scene.instances.get(path)
    return instance.definition if instance is not None else view.joined.boards[path].board.definition


def _sagging(view: View, made: Inspected) -> Iterator[Diagnostic]:
    """One for each part as written, the worst of its boards."""
    told = (one for one in made.sags if one.too_much and (one.said or one.found))
    worst = sorted(told, key=lambda one: -(one.lasting or 0) / one.allowed)
    for one, also in _kinds(worst, lambda sag: view.joined.boards[sag.board].board.definition):
        yield problems.sags_too_much(view, one, also, view.joined.boards[one.board].board)


def _kinds(things: list[T], kind: Callable[[T], Hashable]) -> list[tuple[T, int]]:
    """The first of each kind, and how many more there are."""
    groups: dict[Hashable, list[T]] = {}
    for thing in things:
        groups.setdefault(kind(thing), []).append(thing)
    return [(some[0], len(some) - 1) for some in groups.values()]
