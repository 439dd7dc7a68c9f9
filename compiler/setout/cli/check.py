"""`setout check`: what there is to say about a spec, and nothing written."""

from __future__ import annotations

import sys
from argparse import Namespace

from setout.cli.job import compiled, sources_of
from setout.cli.report import tell
from setout.cli.terminal import Progress


def run(given: Namespace) -> int:
    """One spec after the other; what is said of them is one text, or one JSON document."""
    with Progress() as progress:
        jobs = [compiled(spec, given.set, progress) for spec in dict.fromkeys(given.specs)]
    found = [found for job in jobs for found in job.result.diagnostics]
    tell(sys.stdout, found, sources_of(jobs), given.format)
    return max(job.code for job in jobs)
