"""The values that open measures may take, and what is found for some of them only."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from setout.diagnostics import Diagnostic
from setout.geometry import Axis
from setout.place import problems
from setout.place.model import Scene
from setout.place.site import Site
from setout.resolve.model import Project
from setout.source import Span

Case = Mapping[str, Fraction]


def open_measures(project: Project) -> tuple[str, ...]:
    return tuple(name for name, measure in project.measures.items() if measure.taken is None)


def cases(project: Project) -> list[Case]:
    """The values of all measures in each scene, in the order that Placed promises."""
    unknown = open_measures(project)
    low = {n: m.low if m.taken is None else m.taken for n, m in project.measures.items()}
    high = {n: project.measures[n].high for n in unknown}
    made: list[Case] = [low, *({**low, name: high[name]} for name in unknown)]
    return [*made, {**low, **high}] if len(unknown) > 1 else made


def gathered(sites: Sequence[Site], unknown: tuple[str, ...]) -> tuple[Diagnostic, ...]:
    """What was found in all scenes once, and what was found in some with the values that make the difference."""
    keys = dict.fromkeys(key for site in sites for key in site.found)
    out = []
    for key in keys:
        where = [i for i, site in enumerate(sites) if key in site.found]
        found = sites[where[0]].found[key]
        if len(where) < len(sites) and found.code != "rod268":
            deciding = _deciding(where, unknown)
            taken = [(name, sites[where[0]].taken[name]) for name in deciding]
            found = problems.in_case(found, taken, sites[0].style)
        out.append(found)
    return tuple(out)


def unsettled_grain(scenes: Sequence[Scene]) -> list[Diagnostic]:
    """Boards whose longer side, and with it the grain, hangs on a measure."""
    first, rest = scenes[0], scenes[1:]
    found: dict[Span, Diagnostic] = {}
    for path, board in first.boards.items():
        others = [scene.boards[path] for scene in rest if path in scene.boards]
        if any(other.grain != board.grain for other in others):
            held = sorted(frozenset().union(*(board.held[axis] for axis in Axis)))
            found.setdefault(board.head, problems.grain_unsettled(path, board.thick, held, board.head))
    return list(found.values())


def idle_measures(project: Project, scenes: Sequence[Scene]) -> list[Diagnostic]:
    """Open measures of the spec's own file that make no scene differ from the first. A file without boards is there to
    be included."""
    own = next(iter(project.sources), "")
    first = replace(scenes[0], taken={})
    if not (first.boards or first.loose):
        return []
    return [
        problems.nothing_hangs_on(project.measures[name])
        for name, scene in zip(open_measures(project), scenes[1:])
        if project.measures[name].span.file == own and replace(scene, taken={}) == first
    ]


def _deciding(where: Sequence[int], unknown: tuple[str, ...]) -> tuple[str, ...]:
    """The measures whose value makes a finding come about. Scene 0 has all low, scene i measure i - 1 high."""
    single = range(1, len(unknown) + 1)
    if 0 in where:
        helps = tuple(unknown[i - 1] for i in single if i not in where)
    else:
        helps = tuple(unknown[i - 1] for i in single if i == where[0])
    return helps or unknown
