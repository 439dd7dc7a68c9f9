"""What is written for somebody is written in the canonical layout."""

from __future__ import annotations

from setout.fmt import fmt
from setout.source import Source


def laid_out(text: str) -> str:
    """The text of a spec that we made ourselves: that it can't be read is a fault of ours."""
    laid = fmt(Source("new.rod", text))
    if laid.value is None:
        raise RuntimeError(f"the spec made can't be read: {laid.diagnostics}")
    return laid.value
