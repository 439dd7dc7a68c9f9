"""The whole job for one set of values of its measures: every assembly walked, what stands in it set down."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from setout.geometry import Axis, Box, Motion
from setout.place import boards, checks, ends, express, features, fits, gaps, joints, problems, rows, scopes
from setout.place.engine import Engine, Exhausted, Work
from setout.place.filling import fill
from setout.place.found import end_key
from setout.place.model import Board, Instance, LooseBoard, Opening, Scene
from setout.place.shapes import repeated, shape_of
from setout.place.site import Scope, Site
from setout.resolve.model import OpeningDef, PartDef, Project
from setout.resolve.problems import unworkable
from setout.source import Span
from setout.values import Trace, Value

MOST_BOARDS = 5000
"""Boards in a job, and placed assemblies too."""

MOST_FEATURES = 10_000
"""Notches, holes and the like, over all boards."""

RULES: dict[str, Callable[..., Work]] = {
    "amount": express.length,
    "holds": express.condition,
    "plain": express.number,
    "board": boards.board,
    "box": boards.box,
    "count": rows.count,
    "end": ends.end,
    "feature": features.feature,
    "fitted": fits.fitted,
    "fitting": fits.fitting,
    "gap": gaps.gap,
    "joint": joints.joint,
    "let": express.let,
    "loose": boards.loose,
    "method": joints.method,
    "motion": scopes.motion,
    "parameter": express.parameter,
    "named": joints.named,
    "raised": ends.raised,
    "reach": gaps.reach,
    "rest": joints.rest,
    "row": rows.row,
    "scope": scopes.scope,
    "size": ends.size,
    "there": ends.there,
    "width": ends.width,
}
"""What answers each kind of question."""


class Overfull(Exception):
    """More boards or assemblies than any workshop's job: told where the last of them is written. Caught here."""

    def __init__(self, span: Span) -> None:
        super().__init__()
        self.span = span


@dataclass
class Draft:
    """A scene being put together."""

    boards: dict[str, Board] = field(default_factory=dict)
    loose: list[LooseBoard] = field(default_factory=list)
    instances: dict[str, Instance] = field(default_factory=dict)
    openings: dict[str, Opening] = field(default_factory=dict)
    pieces: int = 0
    features: int = 0


def scene_of(
    project: Project, taken: Mapping[str, Fraction], unknown: tuple[str, ...], steps: int
) -> tuple[Scene, Site]:
    """As much of the scene as could be worked out in that many steps, and the Site with what was found."""
    site = Site(project, taken, frozenset(unknown))
    site.engine = Engine(
        lambda key: RULES[key[0]](site, *key[1:]),
        lambda links: site.report(problems.loop(links)),
        lambda stuck: site.report(unworkable(stuck.mismatch, site.style)),
        steps,
    )
    draft, scopes_met = Draft(), []
    joined: dict[str, list[Any]] = {"joint": [], "rest": [], "fitting": []}
    try:
        scopes_met = _walk(site, draft)
        for kind, kept in joined.items():
            for scope in scopes_met:
                kept += _written(site, scope, kind)
    except Overfull as over:
        site.report(problems.too_large(MOST_BOARDS, over.span))
    except Exhausted:
        site.report(problems.too_large(MOST_BOARDS, None))
    scene = fill(site, _scene(site, draft, joined), scopes_met)
    if not site.has("rod268"):
        checks.too_large_for_stock(site, scene)
        checks.too_narrow_banding(site, scene)
    return scene, site


# --- walking --------------------------------------------------------------------------------------------------


def _walk(site: Site, draft: Draft) -> list[Scope]:
    """Sets down every assembly with its parts, then those placed in it; returns the assemblies that have their place.

    One that has no place, or a wrong one, is gone through all the same, for what else is the matter in it.
    """
    waiting, met = [site.job], []
    while waiting:
        scope = waiting.pop()
        scope.sound = _set_down(site, draft, scope)
        if scope.sound:
            met.append(scope)
        for part in scope.body.parts:
            _parts(site, draft, scope, part.name)
        for opening in scope.body.openings:
            _opening(site, draft, scope, opening)
        inner = [child for place in scope.body.places for child in _children(site, scope, place.name)]
        waiting += reversed(inner)
        if len(draft.instances) + len(waiting) > MOST_BOARDS:
            raise Overfull(scope.span)
    return met


def _set_down(site: Site, draft: Draft, scope: Scope) -> bool:
    """Notes the Instance of an assembly. False where its place can't be worked out, or is a wrong one."""
    motion: Motion | None = site.engine.answer(("motion", scope))
    if scope.parent is None or scope.place is None:
        box = _job_box(site)
    else:
        own = _checked_box(site, scope.parent, scope.place.name, scope.member)
        outer: Motion | None = site.engine.answer(("motion", scope.parent))
        if own is None or outer is None or not scope.parent.sound:
            return False
        box = outer.box(own)
    if motion is None:
        return False
    parent = scope.parent.path if scope.parent else None
    draft.instances[scope.path] = Instance(
        scope.path, scope.definition, scope.title, parent, box, motion, scope.span, _lows(site, scope)
    )
    return True


def _lows(site: Site, scope: Scope) -> tuple[Trace, ...]:
    """How the places of its low faces came about."""
    if scope.parent is None or scope.place is None:
        return ()
    keys = [end_key(scope.parent, scope.place.name, scope.member, axis, -1) for axis in Axis]
    values: list[Value | None] = [site.engine.answer(key) for key in keys]
    return tuple(value.trace for value in values if value is not None)


def _parts(site: Site, draft: Draft, scope: Scope, name: str) -> None:
    if not site.engine.answer(("there", scope, name)):
        return
    shape = shape_of(site, scope, name)
    if shape is None:
        return
    if shape.thick is None:
        loose: LooseBoard | None = site.engine.answer(("loose", scope, name))
        if loose is not None and scope.sound:
            draft.loose.append(loose)
        _count(draft, loose.count if loose is not None else 1, shape.part)
        return
    for member in _members(site, scope, name):
        own = _checked_box(site, scope, name, member)
        board: Board | None = site.engine.answer(("board", scope, name, member))
        if own is not None and board is not None and scope.sound:
            draft.boards[board.path] = board
            site.homes[board.path] = scope
        _count(draft, 1, shape.part, len(shape.features))


def _opening(site: Site, draft: Draft, scope: Scope, opening: OpeningDef) -> None:
    if not site.engine.answer(("there", scope, opening.name)):
        return
    own: Box | None = site.engine.answer(("box", scope, opening.name, 0))
    motion: Motion | None = site.engine.answer(("motion", scope))
    if own is not None and motion is not None and scope.sound:
        path = scope.path_of(opening.name)
        draft.openings[path] = Opening(path, scope.path, motion.box(own), opening.span)


def _children(site: Site, scope: Scope, name: str) -> list[Scope]:
    if not site.engine.answer(("there", scope, name)):
        return []
    children = [site.engine.answer(("scope", scope, name, member)) for member in _members(site, scope, name)]
    return [child for child in children if child is not None]


def _members(site: Site, scope: Scope, name: str) -> range:
    """The numbers of a thing's members; 0 alone for what is not repeated."""
    if not repeated(scope, name):
        return range(1)
    return range(1, (site.engine.answer(("count", scope, name)) or 0) + 1)


def _count(draft: Draft, more: int, part: PartDef, features: int = 0) -> None:
    draft.pieces += more
    draft.features += features
    if draft.pieces > MOST_BOARDS or draft.features > MOST_FEATURES:
        raise Overfull(part.head)


def _checked_box(site: Site, scope: Scope, name: str, member: int) -> Box | None:
    """The thing's box in its own assembly; None when it has none, or one that it can't have there."""
    own: Box | None = site.engine.answer(("box", scope, name, member))
    if own is None:
        return None
    sizes = [_size(site, scope, axis) for axis in Axis]
    stays = checks.stays_within(site, scope, name, member, own, tuple(sizes))
    return own if stays and checks.fills_its_gap(site, scope, name, member, own) else None


def _size(site: Site, scope: Scope, axis: Axis) -> Fraction | None:
    if scope.parent is None and axis not in site.job_sizes:
        return None
    value: Value | None = site.engine.answer(("size", scope, axis))
    return value.amount if value is not None else None


# --- what joins them, and the whole ---------------------------------------------------------------------------------


def _written(site: Site, scope: Scope, kind: str) -> list[Any]:
    """The joints, rests or fittings of one assembly, in the order written."""
    many = {"joint": scope.body.joints, "rest": scope.body.rests, "fitting": scope.body.fits}[kind]
    made: list[Any] = []
    for i in range(len(many)):
        got = site.engine.answer((kind, scope, i))
        if isinstance(got, tuple):
            made += got
        elif got is not None:
            made.append(got)
    return made


def _job_box(site: Site) -> Box | None:
    sizes = [_size(site, site.job, axis) for axis in Axis]
    return _box(sizes)


def _room(project: Project) -> Box | None:
    return _box([project.room.sizes.get(axis) for axis in Axis]) if project.room else None


def _box(sizes: list[Fraction | None]) -> Box | None:
    wide, high, deep = sizes
    if wide is None or high is None or deep is None:
        return None
    return Box((Fraction(0), Fraction(0), Fraction(0)), (wide, high, deep))


def _scene(site: Site, draft: Draft, joined: dict[str, list[Any]]) -> Scene:
    return Scene(
        taken=site.taken,
        boards=draft.boards,
        loose=tuple(draft.loose),
        instances=draft.instances,
        openings=draft.openings,
        joints=tuple(joined["joint"]),
        rests=tuple(joined["rest"]),
        fittings=tuple(joined["fitting"]),
        room=_room(site.project),
    )
