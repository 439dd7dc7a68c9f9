"""What bears on what: which things stand, which hang on the wall, and what else their screws have to carry."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from setout.geometry import Axis, Face
from setout.inspect.view import View, reached

_DOWN = Face(Axis.HIGH, -1)
Group = tuple[str, ...]


def hanging(view: View, screwed: Iterable[str]) -> dict[Group, tuple[str, ...]]:
    """The groups of units that hang by the screws of those `screwed` to a wall, in the order placed, each with what
    units it carries besides.

    A group is a unit with what a cleat of the job's own holds together. It carries what rests on it, even if that is
    screwed to the wall itself, for nobody knows how the two share; and what is fastened to it and held by nothing
    that stands or is screwed.
    """
    groups = _groups(view, set(screwed))
    standing = _standing(view)
    hung = [group for group in groups if standing.isdisjoint(group)]
    if not hung:
        return {}
    above = {unit: some - standing for unit, some in _above(view).items()}
    loose = set(view.units) - standing - {unit for group in groups for unit in group}
    beside = {unit: some & loose for unit, some in _beside(view).items()}
    group_of = {unit: group for group in groups for unit in group}
    return {group: _carried(view, group, above, beside, group_of) for group in hung}


def shares(view: View) -> dict[str, dict[str, Fraction]]:
    """By unit, what comes down on it from each of the others: the part of its weight. What lies on several, or on one
    and the floor, bears evenly on all of them; what lies on nothing, and isn't screwed to a wall, on what it is joined
    to and stands."""
    standing, screwed = _standing(view), _on_walls(view)
    beside, below = _beside(view), _below(view)
    bottom = {unit: view.outline(boards).lo[Axis.HIGH] for unit, boards in view.units.items()}
    found: dict[str, dict[str, Fraction]] = {unit: {} for unit in view.units}
    for unit in sorted(view.units, key=lambda one: -bottom[one]):
        on_floor = bottom[unit] <= view.floor
        under = below.get(unit, set()) - {unit}
        if not under and not on_floor and unit not in screwed:
            under = {one for one in beside.get(unit, ()) if one in standing and bottom[one] < bottom[unit]}
        for lower in sorted(under):
            for upper, part in ({unit: Fraction(1)} | found[unit]).items():
                if upper != lower:
                    here = part / (len(under) + on_floor)
                    found[lower][upper] = found[lower].get(upper, Fraction(0)) + here
    return found


def _carried(
    view: View,
    group: Group,
    above: Mapping[str, set[str]],
    beside: Mapping[str, set[str]],
    group_of: Mapping[str, Group],
) -> tuple[str, ...]:
    carried, waiting = set(group), list(group)
    while waiting:
        unit = waiting.pop()
        more = above.get(unit, set()) | beside.get(unit, set())
        new = {mate for one in more for mate in group_of.get(one, (one,))} - carried
        carried |= new
        waiting += sorted(new)
    return tuple(unit for unit in view.units if unit in carried and unit not in group)


def _groups(view: View, screwed: set[str]) -> list[Group]:
    """What is screwed to the wall, each with the units that one of its own boards (a cleat) holds."""
    joined: dict[str, set[str]] = {unit: {unit} for unit in view.units if unit in screwed}
    for contact in view.joined.contacts:
        if contact.b is None:
            continue
        a, b = view.unit_of[contact.a], view.unit_of[contact.b]
        for cleat, other in ((a, b), (b, a)):
            if cleat != other and cleat in joined and view.units[cleat] == (cleat,):
                joined[cleat].add(other)
    groups: list[set[str]] = []
    for some in joined.values():
        touching = [group for group in groups if group & some]
        groups = [group for group in groups if not group & some]
        groups.append(some.union(*touching))
    order = list(view.units)
    return sorted((tuple(sorted(g, key=order.index)) for g in groups), key=lambda g: order.index(g[0]))


def _standing(view: View) -> set[str]:
    """The units that stand on the floor, or by a joint or a `rests on` on something that does."""
    under = {
        unit: {t.other for board in boards for t in view.touching[board] if t.face == _DOWN}
        for unit, boards in view.units.items()
    }
    found = {
        unit
        for unit, below in under.items()
        if None in below or view.outline(view.units[unit]).lo[Axis.HIGH] <= view.floor
    }
    resting: dict[str, set[str]] = {}
    for unit, below in under.items():
        for other in below - {None}:
            resting.setdefault(view.unit_of[other], set()).add(unit)  # type: ignore[index]
    return reached(found, resting)


def _above(view: View) -> dict[str, set[str]]:
    """By unit, those with a board right on top of one of its own."""
    found: dict[str, set[str]] = {}
    for upper, under in _below(view).items():
        for lower in under:
            found.setdefault(lower, set()).add(upper)
    return found


def _below(view: View) -> dict[str, set[str]]:
    """By unit, those with a board right under one of its own; itself too."""
    found: dict[str, set[str]] = {}
    for upper, under in view.right_under.items():
        for touching in under:
            assert touching.other is not None
            found.setdefault(view.unit_of[upper], set()).add(view.unit_of[touching.other])
    return found


def _on_walls(view: View) -> set[str]:
    """The units that a joint holds to a wall."""
    return {view.unit_of[c.a] for c in view.joined.contacts if c.b is None and c.face_a.axis != Axis.HIGH}


def _beside(view: View) -> dict[str, set[str]]:
    """By unit, those that a joint holds to it, or that rest on it."""
    found: dict[str, set[str]] = {}
    for board, touching in view.touching.items():
        unit = view.unit_of[board]
        found.setdefault(unit, set()).update(view.unit_of[t.other] for t in touching if t.other is not None)
    return found
