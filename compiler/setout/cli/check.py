"""`setout check`: what there is to say about a spec, and nothing written."""

from __future__ import annotations

import sys
from argparse import Namespace

from setout.cli.codes import CLEAN, ERRORS, USAGE
from setout.cli.job import Job, compiled
from setout.cli.report import tell
from setout.cli.terminal import Progress


def run(given: Namespace) -> int:
    """One spec after the other; what is said of them is one text, or one JSON document."""
    with Progress() as progress:
        jobs = [compiled(spec, given.set, progress) for spec in dict.fromkeys(given.specs)]
    found = [found for job in jobs for found in job.result.diagnostics]
    tell(sys.stdout, found, {name: source for job in jobs for name, source in job.sources.items()}, given.format)
    return max(_code(job) for job in jobs)


def _code(job: Job) -> int:
    if job.failed:
        return USAGE if job.misused else ERRORS
    return CLEAN
