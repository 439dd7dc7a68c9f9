"""A spec as it is, or as it was at a revision, taken through the compiler."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from setout.cli import problems
from setout.cli.files import Refusal
from setout.cli.git import revision
from setout.cli.job import STANDARD_INPUT, Job, compiled
from setout.cli.terminal import shown
from setout.diagnostics import Checked, Diagnostic, Label
from setout.plan.model import Plan
from setout.source import Source


@dataclass(frozen=True)
class Named:
    """A spec as it was named on the command line: a file, and a revision of it where one is meant."""

    path: str
    revision: str | None

    @property
    def text(self) -> str:
        if self.path == "-":
            return STANDARD_INPUT
        return shown(self.path if self.revision is None else f"{self.path}@{self.revision}")


def named(text: str) -> Named:
    """What `text` names: a file of just that name if there is one, else FILE@REVISION. Both may have more of the sign:
    the file's name ends with the first `.rod`, or else at the first @."""
    at = text.find(".rod@") + 4
    at = text.find("@") if at < 4 else at
    if at < 1 or os.path.lexists(text):
        return Named(text, None)
    return Named(text[:at], text[at + 1 :])


def compiled_at(
    spec: Named, settings: Mapping[str, str], tell: Callable[[str], None], before: Plan | None = None
) -> Job:
    """Includes and marks are read at the same revision, and diagnostics name it behind the file's name. `before`: an
    earlier revision, whose marks are carried on."""
    if spec.revision is None:
        return compiled(spec.path, settings, tell, before=before)
    found = revision(spec.path, spec.revision)
    if isinstance(found, Diagnostic):
        return _refused(found)
    from setout.read import MAX_BYTES

    place = found.resolved(Path(spec.path))
    data = place if isinstance(place, Refusal) else found.read_bytes(place, MAX_BYTES + 1)
    if isinstance(data, Refusal):
        return _refused(problems.not_at_revision(spec.path, spec.revision, data.reason, data.detail))
    return called(compiled(spec.path, settings, tell, reading=found.reading, before=before), spec.revision)


def called(job: Job, at: str) -> Job:
    """The same with `@at` behind the names of its files."""

    def renamed(label: Label) -> Label:
        return replace(label, span=replace(label.span, file=f"{label.span.file}@{at}"))

    found = tuple(
        replace(d, label=d.label and renamed(d.label), others=tuple(map(renamed, d.others)))
        for d in job.result.diagnostics
    )
    sources = {f"{name}@{at}": Source(f"{name}@{at}", source.text) for name, source in job.sources.items()}
    return replace(job, result=Checked(job.result.value, found), sources=sources)


def _refused(why: Diagnostic) -> Job:
    return Job(Checked(None, (why,)), {}, None, None, (), misused=True)
