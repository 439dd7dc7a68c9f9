"""`setout build`: the packet of a spec, written only when all of it stands."""

from __future__ import annotations

import os
import sys
from argparse import Namespace
from pathlib import Path

from setout.cli import problems
from setout.cli.codes import CLEAN, USAGE
from setout.cli.cutting import planner
from setout.cli.files import STANDARD_INPUT
from setout.cli.job import Job, compiled
from setout.cli.marks import alone_in, append, changed_since
from setout.cli.output import KEPT_SUFFIXES, Delivery, code_of
from setout.cli.report import tell
from setout.cli.terminal import Progress, say, shown
from setout.diagnostics import Diagnostic
from setout.units import counted

ATTEMPTS = 3  # when another build added marks meanwhile, this one starts again with them


def run(given: Namespace) -> int:
    if refused := _misnamed(given.spec):
        print(f"setout build: {refused}", file=sys.stderr)
        return USAGE
    folder = given.out or os.path.join("out", Path(given.spec).stem)
    with Progress() as progress:
        for _ in range(ATTEMPTS):
            job = compiled(given.spec, given.set, progress, planner(given.plan_seconds, progress))
            written = None if job.failed else _delivered(job, folder, given.format, progress)
            if job.failed or written is not None:
                break
    return _ended(job, folder, written)


def _misnamed(spec: str) -> str:
    if spec == "-":
        return f"{STANDARD_INPUT} has no place for the marks; build a file (check and why read -)"
    if Path(spec).suffix in KEPT_SUFFIXES[1:]:
        return f"{shown(spec)} is not a spec but what is kept beside one; name the .rod file"
    return ""


def _delivered(
    job: Job, folder: str, formats: tuple[str, ...], progress: Progress
) -> tuple[str, ...] | Diagnostic | None:
    """The names of the documents written; or what kept them from it; or None when the marks changed meanwhile."""
    from setout.write import write

    assert job.result.value is not None and job.marks is not None
    with Delivery(Path(folder), folder) as delivery:
        if trouble := delivery.refusal((), ()):
            return trouble
        progress("writing")
        try:
            documents = write(job.result.value, frozenset(formats))
        except (ImportError, OSError) as missing:  # no file is touched in there: a library could not be loaded
            return problems.printing_unavailable(str(missing))
        if trouble := delivery.refusal(documents, job.own_files) or delivery.lay_out(documents):
            return trouble
        with alone_in(job.marks.path.parent):
            if changed_since(job.marks):
                return None
            if trouble := _marked(job):
                return trouble
        return delivery.put_in_place() or tuple(documents)


def _marked(job: Job) -> Diagnostic | None:
    from setout.piece import register_text

    assert job.result.value is not None and job.marks is not None
    new = job.result.value.pieces.new_entries
    return append(job.marks, register_text(new, fresh=not job.marks.data)) if new else None


def _ended(job: Job, folder: str, written: tuple[str, ...] | Diagnostic | None) -> int:
    found = list(job.result.diagnostics)
    if not job.failed and written is None:
        assert job.marks is not None
        written = problems.register_restless(job.marks.source.name)
    if isinstance(written, Diagnostic):
        found.append(written)
    tell(sys.stderr, found, job.sources)
    if job.failed:
        return job.code
    if isinstance(written, Diagnostic):
        return code_of(written)
    say(_summary(job, folder, written or ()))
    return CLEAN


def _summary(job: Job, folder: str, written: tuple[str, ...]) -> str:
    """`out/hall/packet.pdf: 22 boards, 3 sheets; 25 more files beside it`."""
    assert job.result.value is not None
    plan = job.result.value
    counts = [counted(sum(piece.count for piece in plan.pieces.pieces), "board")]
    for kind in ("sheet", "stick"):
        stocks = () if plan.cutting is None else plan.cutting.stocks
        used = sum(stock.bought for stock in stocks if stock.stock.kind == kind)
        counts += [counted(used, kind)] if used else []
    first, others = written[0], len(written) - 1
    beside = f"; {counted(others, 'more file')} beside it" if others else ""
    return f"{Path(folder, first).as_posix()}: {', '.join(counts)}{beside}"
