"""Assemblies that no `place` leads to, and jobs that come to nothing because of them."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic
from setout.place import problems
from setout.place.model import Scene
from setout.resolve.model import AssemblyDef, Project


def left_unplaced(project: Project, scenes: Sequence[Scene]) -> tuple[Diagnostic, ...]:
    """An error where the job has no boards; else a note for each assembly of the spec's own file that is not used.

    What is included may hold more than this job needs, and isn't looked at. A file of stocks and practice alone, to be
    included elsewhere, is no job.
    """
    unplaced = [definition for definition in _roots(project) if definition.head.file == next(iter(project.sources), "")]
    if not (project.assemblies or project.job.parts):
        return ()
    if not any(scene.boards or scene.loose for scene in scenes):
        names = [definition.name for definition in unplaced]
        return (problems.no_boards(names, unplaced[0].head if unplaced else None),)
    return tuple(problems.never_placed(definition) for definition in unplaced)


def _roots(project: Project) -> list[AssemblyDef]:
    """Those that the job doesn't come to through its places, less what another of them places."""
    met: set[str] = set()
    waiting = [place.assembly for place in project.job.places]
    while waiting:
        name = waiting.pop()
        if name not in met and name in project.assemblies:
            met.add(name)
            waiting += [place.assembly for place in project.assemblies[name].body.places]
    others = [definition for name, definition in project.assemblies.items() if name not in met]
    inner = {place.assembly for definition in others for place in definition.body.places}
    return [definition for definition in others if definition.name not in inner]
