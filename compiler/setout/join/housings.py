"""Dados, grooves and rabbets: parts touch at the shoulder, then grow together into what is milled for them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.geometry import Box, Face
from setout.join import problems
from setout.join.cavities import cavity, stop_notches, stops_wrong
from setout.join.ground import Ground
from setout.join.housing_checks import misplaced, too_deep, two_sided
from setout.join.model import Cavity, Contact
from setout.join.solid import Solid
from setout.join.touching import Pair, Touches, overlaps
from setout.place.model import Joint, Method, Notch

HOUSINGS = ("dado", "groove", "rabbet")
_DEPTHS = {"dado": "dado_depth", "groove": "dado_depth", "rabbet": "rabbet_depth"}
_LIMITS = {"dado": "dado_limit", "groove": "dado_limit", "rabbet": "rabbet_limit"}


@dataclass(frozen=True)
class Housed:
    """`grown` by board, then face; `solids` with tongues, cavities and `notches` (cut in tongues where a housing is
    stopped); `cavities` by contact; `spoiled`: contacts whose housing is wrong."""

    grown: Mapping[str, Mapping[Face, Fraction]]
    solids: Mapping[str, Solid]
    cuts: Mapping[str, tuple[Cavity, ...]]
    cavities: Mapping[str, Cavity]
    notches: Mapping[str, tuple[Notch, ...]]
    spoiled: frozenset[str]
    diagnostics: tuple[Diagnostic, ...]


@dataclass(frozen=True)
class _Made:
    contact: Contact
    method: Method
    depth: Fraction
    growth: Fraction


def house(ground: Ground, contacts: Iterable[Contact], before: Touches) -> Housed:
    """Let every housed part into its receiver. `before`: what touched when parts still ended at their shoulders."""
    made, found = _made(ground, contacts)
    grown, clashes = _growth(ground, made)
    found += clashes
    boxes = {path: _stretched(solid.box, grown.get(path, {})) for path, solid in ground.solids.items()}
    cavities = {m.contact.id: cavity(ground, boxes, m.contact, m.method, m.depth) for m in made}
    notches = _notches(ground, boxes, made)
    cuts = _by_receiver(made, cavities)
    found += _checked(ground, boxes, made, cavities)
    doubles, excused = two_sided(ground, cuts, boxes)
    solids = {
        path: _cut(solid, boxes[path], cuts.get(path, ()), notches.get(path, ()))
        for path, solid in ground.solids.items()
    }
    runs = _runs_into(ground, solids, grown, before, excused)
    return Housed(
        grown,
        solids,
        cuts,
        cavities,
        notches,
        frozenset(ident for ident, _ in found),
        (*(d for _, d in found), *doubles, *runs),
    )


def drawn_in(joints: Iterable[Joint]) -> dict[Pair, tuple[Joint, Method]]:
    """For each pair of boards (both orders) that a joint houses: the joint, and its housing. The first joint counts."""
    pairs: dict[Pair, tuple[Joint, Method]] = {}
    for joint in joints:
        method = housing_of(joint)
        if method is None:
            continue
        for a in (path for side in joint.entering for path in side.boards):
            for b in (path for side in joint.receiving for path in side.boards):
                pairs.setdefault((a, b), (joint, method))
                pairs.setdefault((b, a), (joint, method))
    return pairs


def housing_of(joint: Joint) -> Method | None:
    return next((m for m in joint.methods if m.kind in HOUSINGS), None)


Found = list[tuple[str, Diagnostic]]


def _made(ground: Ground, contacts: Iterable[Contact]) -> tuple[list[_Made], Found]:
    """The housings that can be made, and what is wrong with the others (by contact)."""
    made, found = [], []
    joints = {joint.id: joint for joint in ground.scene.joints}
    for contact in contacts:
        joint = joints[contact.joint]
        method = housing_of(joint)
        if method is None:
            continue
        wrong = _unfit(ground, joint, contact, method)
        if wrong is not None:
            found.append((contact.id, wrong))
            continue
        depth = _depth(ground, contact, method)
        made.append(_Made(contact, method, depth, depth - (method.gap or 0)))
    return made, found


def _unfit(ground: Ground, joint: Joint, contact: Contact, method: Method) -> Diagnostic | None:
    a = ground.board(contact.a)
    if contact.b is None:
        return problems.not_on_a_wall(a, method)
    outer = contact.area.lo[contact.face_a.axis] == a.box.face(contact.face_a)
    if contact.face_a.axis == a.thick or not outer:
        return problems.no_edge_enters(joint, a, ground.board(contact.b), contact, method)
    depth = _depth(ground, contact, method)
    if depth <= 0 or not 0 <= (method.gap or 0) < depth:
        return problems.depth_and_gap(ground, method, depth)
    return stops_wrong(ground, contact, method)


def _depth(ground: Ground, contact: Contact, method: Method) -> Fraction:
    """As said, else as usual but never deeper than is good for the receiver."""
    if method.depth is not None:
        return method.depth
    usual = ground.practice.value(_DEPTHS[method.kind])
    thick = ground.board(contact.b).box.size(contact.face_b.axis)  # type: ignore[arg-type]
    return min(usual, thick * ground.practice.value(_LIMITS[method.kind]))


def _growth(ground: Ground, made: Iterable[_Made]) -> tuple[dict[str, dict[Face, Fraction]], Found]:
    grown: dict[str, dict[Face, Fraction]] = defaultdict(dict)
    first: dict[tuple[str, Face], _Made] = {}
    found: Found = []
    for m in made:
        key = (m.contact.a, m.contact.face_a)
        other = first.setdefault(key, m)
        grown[m.contact.a].setdefault(m.contact.face_a, m.growth)
        if other.growth != m.growth:
            found.append((m.contact.id, _two_depths(ground, m, other)))
    return dict(grown), found


def _two_depths(ground: Ground, m: _Made, other: _Made) -> Diagnostic:
    a = ground.board(m.contact.a)
    return problems.two_depths(ground, m.method, a, m.contact.face_a, m.growth, other.method, other.growth)


def _stretched(box: Box, grown: Mapping[Face, Fraction]) -> Box:
    for face, by in grown.items():
        box = box.stretched(face, by)
    return box


def _notches(ground: Ground, boxes: Mapping[str, Box], made: Iterable[_Made]) -> dict[str, tuple[Notch, ...]]:
    notches: dict[str, list[Notch]] = defaultdict(list)
    for m in made:
        for notch in stop_notches(ground, boxes, m.contact, m.method, m.growth):
            if notch not in notches[m.contact.a]:
                notches[m.contact.a].append(notch)
    return {path: tuple(n) for path, n in notches.items() if n}


def _by_receiver(made: Iterable[_Made], cavities: Mapping[str, Cavity]) -> dict[str, tuple[Cavity, ...]]:
    """The cavities each board gets. A contact in two rectangles makes one cavity."""
    cuts: dict[str, dict[tuple[Box, Face], Cavity]] = defaultdict(dict)
    for m in made:
        assert m.contact.b is not None
        cut = cavities[m.contact.id]
        cuts[m.contact.b].setdefault((cut.box, cut.face), cut)
    return {path: tuple(c.values()) for path, c in cuts.items()}


def _checked(ground: Ground, boxes: Mapping[str, Box], made: Iterable[_Made], cavities: Mapping[str, Cavity]) -> Found:
    found: Found = []
    for m in made:
        assert m.contact.b is not None
        cut, receiver = cavities[m.contact.id], boxes[m.contact.b]
        limit = ground.practice.value(_LIMITS[m.method.kind])
        wrong = misplaced(ground, m.contact, m.method, cut, receiver)
        wrong += too_deep(ground, m.contact, m.method, cut, receiver, limit)
        found += [(m.contact.id, d) for d in wrong]
    return found


def _cut(solid: Solid, box: Box, cuts: Iterable[Cavity], notches: Iterable[Notch]) -> Solid:
    return Solid(box, (*solid.gone, *(c.box for c in cuts), *(n.box for n in notches)))


def _runs_into(
    ground: Ground,
    solids: Mapping[str, Solid],
    grown: Mapping[str, Mapping[Face, Fraction]],
    before: Touches,
    excused: frozenset[Pair],
) -> list[Diagnostic]:
    """Tongues that grew into something which houses them not."""
    return [
        problems.tongue_runs_into(ground, a if a in grown else b, b if a in grown else a, shared)
        for (a, b), shared in overlaps(solids, among=grown).items()
        if before.between(a, b).shared is None and (a, b) not in excused
    ]
