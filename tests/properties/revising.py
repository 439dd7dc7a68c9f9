"""Pairs of generated specs: a job and what became of it."""

from __future__ import annotations

import re

from cabinetry import LENGTHS
from hypothesis import strategies as st
from speccing import Job, jobs

NUMBER = re.compile(r"(?<![\w/.-])\d+(?:-\d+/\d+)?(?:in|mm)")
STOCKS = (("x 23/32in", "x 3/4in"), ("x 7/32in", "x 1/4in"), ("of ply", "of mdf"))


@st.composite
def revisions(draw) -> tuple[str, str]:
    """A length is another one, a statement is gone, the two jobs have nothing to do with each other."""
    job = draw(jobs(order=True))
    old = job.text()
    how = draw(st.sampled_from(("length", "length", "length", "gone", "stock", "other")))
    if how == "length":
        return old, _relengthened(draw, old)
    if how == "gone":
        fewer = list(job.body)
        del fewer[draw(st.integers(0, len(fewer) - 1))]
        return old, Job(job.unit, job.lets, job.definitions, tuple(fewer)).text()
    if how == "stock":
        return old, old.replace(*draw(st.sampled_from(STOCKS)))
    return old, draw(jobs(order=True)).text()


def _relengthened(draw, text: str) -> str:
    start = text.index("assembly tray")
    found = [match for match in NUMBER.finditer(text) if match.start() > start]
    match = found[draw(st.integers(0, len(found) - 1))]
    by = draw(st.sampled_from([length for some in LENGTHS.values() for length in some if length != "w0"]))
    return text[: match.start()] + by + text[match.end() :]


def renamed(text: str) -> str:
    """Every parameter and value under another name."""
    for name in ("toe", "w0", "w", "body"):
        text = re.sub(rf"(?<![\w.]){name}(?![\w.])", f"{name}_too", text)
    return text
