"""`setout diff`: what a change of the spec does to the boards."""

from __future__ import annotations

import os
import sys
from argparse import Namespace
from pathlib import Path

from setout.cli import problems
from setout.cli.arguments import PRINTED
from setout.cli.codes import CHANGED, CLEAN, FAILED, USAGE
from setout.cli.job import Job, sources_of
from setout.cli.output import Delivery, code_of
from setout.cli.report import tell
from setout.cli.revisions import Named, compiled_at, named
from setout.cli.terminal import Progress, say
from setout.compare import Changes, compare
from setout.diagnostics import Diagnostic
from setout.write.changes import Names, as_json, as_markdown, as_text, build, files

NOT_TWO = "setout diff: name two specs, or FILE@REVISION to compare a file with what it was"


def run(given: Namespace) -> int:
    if given.for_git is not None:
        from setout.cli.git_driver import run as drive

        return drive(given.for_git)
    old = named(given.old or "")
    new = Named(old.path, None) if given.new is None else named(given.new)
    if not old.path or old == new:
        print(NOT_TWO, file=sys.stderr)
        return USAGE
    with Progress() as progress:
        first = compiled_at(old, given.set, progress)
        jobs = (first, compiled_at(new, given.set, progress, first.result.value))
        if any(job.failed for job in jobs):
            return _failed(old, new, jobs)
        changes = compared(*jobs)
        written = _written(given, new, changes, Names(old.text, new.text), jobs, progress)
    if isinstance(written, Diagnostic):
        tell(sys.stderr, [written], {})
        return code_of(written)
    if written:
        say(", ".join(written))
    _print(given.format, changes, Names(old.text, new.text))
    return CHANGED if changes.changed else CLEAN


def compared(old: Job, new: Job) -> Changes:
    """Of two specs without errors."""
    assert old.result.value is not None and new.result.value is not None
    return compare(old.result.value, new.result.value, old.result.diagnostics, new.result.diagnostics)


def _print(formats: tuple[str, ...], changes: Changes, names: Names) -> None:
    asked = next((form for form in formats if form in PRINTED), None)
    if asked == "json":
        sys.stdout.write(as_json(changes, names))
    elif asked:
        sys.stdout.write((as_text if asked == "text" else as_markdown)(build(changes, names)))


def _written(
    given: Namespace, new: Named, changes: Changes, names: Names, jobs: tuple[Job, Job], progress: Progress
) -> tuple[str, ...] | Diagnostic:
    """Write the change sheet, where one is asked for: its files; or what kept it from that."""
    formats = frozenset(given.format) - set(PRINTED)
    if not formats:
        return ()
    folder = given.out or os.path.join("out", Path(new.path).stem)
    with Delivery(Path(folder), folder) as delivery:
        if trouble := delivery.refusal((), ()):
            return trouble
        progress("writing")
        old, now = (job.result.value for job in jobs)
        assert old is not None and now is not None
        try:
            sheets = files(changes, names, old, now, formats)
        except (ImportError, OSError) as missing:  # no file is touched in there: a library could not be loaded
            return problems.printing_unavailable(str(missing))
        own = [path for job in jobs for path in job.own_files]
        trouble = delivery.refusal(sheets, own) or delivery.lay_out(sheets) or delivery.put_in_place()
    return trouble or tuple(Path(folder, name).as_posix() for name in sheets)


def _failed(old: Named, new: Named, jobs: tuple[Job, Job]) -> int:
    """Tell what is wrong with either."""
    same = old.path == new.path and jobs[0].misused  # then no more is known of the other one
    wrong = [job for job in jobs[: 1 if same else 2] if job.failed]
    found = list(dict.fromkeys(d for job in wrong for d in job.result.diagnostics))
    tell(sys.stderr, found, sources_of(wrong))
    if any(d.code == "rod924" for d in found):
        return FAILED
    return max(job.code for job in wrong)
