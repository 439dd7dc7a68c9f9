"""The spec's own file and all it includes, merged in the order written."""

from __future__ import annotations

import posixpath
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from setout.diagnostics import Diagnostic
from setout.read import model as r
from setout.read import read
from setout.resolve import problems
from setout.source import Source

MOST_FILES = 50

Reader = Callable[[str], "Source | None"]
Say = Callable[[Diagnostic], None]


@dataclass(frozen=True)
class Loaded:
    """`statements`: of all files, the includes in their places. `projects`: each file's `project`s, by file."""

    statements: tuple[r.Statement, ...]
    projects: Mapping[str, tuple[r.ProjectStatement, ...]]
    sources: Mapping[str, Source]
    incomplete: bool


@dataclass
class _Loading:
    reader: Reader
    say: Say
    sources: dict[str, Source] = field(default_factory=dict)
    projects: dict[str, tuple[r.ProjectStatement, ...]] = field(default_factory=dict)
    full: bool = False
    incomplete: bool = False


def loaded(tree: r.Tree, reader: Reader, say: Say) -> Loaded:
    """The whole spec; `incomplete` when one of its files couldn't be read.

    `reader` is asked for paths from the folder that the spec's own name starts from. A file included by several is
    read once.
    """
    work = _Loading(reader, say)
    statements = tuple(_merged(tree, (), work))
    return Loaded(statements, work.projects, work.sources, work.incomplete)


def _merged(tree: r.Tree, above: tuple[str, ...], work: _Loading) -> list[r.Statement]:
    """`above`: the files that include this one, the outermost first."""
    name = tree.source.name
    work.sources[name] = tree.source
    work.projects[name] = tuple(s for s in tree.statements if isinstance(s, r.ProjectStatement))
    statements: list[r.Statement] = []
    for statement in tree.statements:
        if isinstance(statement, r.IncludeStatement):
            statements.extend(_included(statement, (*above, name), work))
        elif not isinstance(statement, r.ProjectStatement):
            statements.append(statement)
    return statements


def _included(include: r.IncludeStatement, above: tuple[str, ...], work: _Loading) -> list[r.Statement]:
    statements = _looked_for(include, above, work)
    work.incomplete = work.incomplete or statements is None
    return statements or []


def _looked_for(include: r.IncludeStatement, above: tuple[str, ...], work: _Loading) -> list[r.Statement] | None:
    """The file's statements; None once the reason why there are none has been reported."""
    written = include.path.value
    if not written.strip() or written.startswith(("/", "~")) or "\\" in written or ":" in written:
        work.say(problems.include_odd(include))
        return None
    if ".." in written.split("/"):
        work.say(problems.include_outside(include))
        return None
    path = posixpath.normpath(posixpath.join(posixpath.dirname(above[-1]), written))
    if path in above:
        work.say(problems.include_loop(include, (*above[above.index(path) :], path)))
        return None
    return [] if path in work.sources else _fetched(include, path, above, work)


def _fetched(
    include: r.IncludeStatement, path: str, above: tuple[str, ...], work: _Loading
) -> list[r.Statement] | None:
    if len(work.sources) >= MOST_FILES:
        if not work.full:
            work.say(problems.too_many_files(include, MOST_FILES))
        work.full = True
        return None
    source = work.reader(path)
    if source is None:
        work.say(problems.include_missing(include, path))
        return None
    checked = read(Source(path, source.text))
    for diagnostic in checked.diagnostics:
        work.say(diagnostic)
    return None if checked.value is None else _merged(checked.value, above, work)
