"""The stage as a whole: one scene for every set of values that is looked at, and what was found."""

from __future__ import annotations

from dataclasses import replace

from setout.diagnostics import Checked, Severity
from setout.place.cases import cases, gathered, idle_measures, open_measures, unsettled_grain
from setout.place.held import freed
from setout.place.model import Placed, Scene
from setout.place.problems import too_many_measures
from setout.place.scene import scene_of
from setout.place.unplaced import left_unplaced
from setout.resolve.model import Project

MOST_STEPS = 250_000
"""Sizes, places and counts worked out in all scenes together."""

MOST_MEASURES = 40


def place(project: Project) -> Checked[Placed]:
    """Every board at its place.

    With errors the value lacks what was wrong and what hangs on it, its project the order of work. There is no value
    when the scenes then hold different boards.
    """
    unknown = open_measures(project)
    if len(unknown) > MOST_MEASURES:
        first = project.measures[unknown[MOST_MEASURES]]
        return Checked(None, (too_many_measures(MOST_MEASURES, first.span),))
    scenes, sites, steps = [], [], MOST_STEPS
    for taken in cases(project):
        scene, site = scene_of(project, taken, unknown, steps)
        steps = max(site.engine.steps, 0)
        scenes.append(scene)
        sites.append(site)
        if site.has("rod268"):
            break
    found = gathered(sites, unknown)
    if project.whole and not any(d.severity is Severity.ERROR for d in found):
        found = (*found, *left_unplaced(project, scenes), *idle_measures(project, scenes))
    checked = Checked(Placed(replace(project, order=(), whole=False), tuple(scenes), unknown), found)
    if checked.failed:
        alike = all(_paths(scene) == _paths(scenes[0]) for scene in scenes)
        return checked if alike and not sites[-1].has("rod268") else Checked(None, found)
    assert not project.whole or not any(site.engine.poisoned for site in sites), "something failed and wasn't reported"
    unsettled = unsettled_grain(scenes)
    if unsettled:
        return Checked(None, (*found, *unsettled))
    return Checked(Placed(project, freed(scenes, unknown), unknown), found)


def _paths(scene: Scene) -> set[str]:
    return {*scene.boards, *(board.path for board in scene.loose)}
