"""`setout check`: what there is to say about a spec, and nothing written."""

from __future__ import annotations

import sys
from argparse import Namespace

from setout.cli.codes import CLEAN, ERRORS, USAGE
from setout.cli.job import compiled
from setout.cli.report import tell
from setout.cli.terminal import Progress


def run(given: Namespace) -> int:
    with Progress() as progress:
        job = compiled(given.spec, given.set, progress)
    tell(sys.stdout, job.result.diagnostics, job.sources, given.format)
    if job.failed:
        return USAGE if job.misused else ERRORS
    return CLEAN
