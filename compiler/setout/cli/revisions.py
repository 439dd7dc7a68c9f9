"""A spec as it is, or as it was at a revision, taken through the compiler."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import partial

from setout.cli import problems
from setout.cli.files import STANDARD_INPUT
from setout.cli.job import Job, compiled
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
    from setout.cli.git import revision  # late: two files are compared without it

    # FILE@{yesterday} is one @ for both: what stands behind the file's name, and Git's own of where HEAD was
    found = revision(spec.path, "@" * spec.revision.startswith("{") + spec.revision)
    if isinstance(found, Diagnostic):
        why = problems.range_named(found, spec.path, spec.revision)
        return Job(Checked(None, (why,)), {}, None, None, (), misused=True)
    refused = partial(problems.not_at_revision, spec.path, spec.revision)
    job = compiled(spec.path, settings, tell, reading=found.reading, before=before, refused=refused)
    return called(job, f"@{spec.revision}")


def called(job: Job, behind: str) -> Job:
    """The same with that behind the names of its files."""

    def renamed(label: Label) -> Label:
        return replace(label, span=replace(label.span, file=label.span.file + behind))

    found = tuple(
        replace(d, label=d.label and renamed(d.label), others=tuple(map(renamed, d.others)))
        for d in job.result.diagnostics
    )
    sources = {name + behind: Source(name + behind, source.text) for name, source in job.sources.items()}
    return replace(job, result=Checked(job.result.value, found), sources=sources)
