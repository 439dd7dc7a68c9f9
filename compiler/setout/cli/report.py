"""Diagnostics as text for people or as JSON for programs."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from typing import TextIO

from setout.diagnostics import Diagnostic, Severity
from setout.source import Source

MOST = 100


def tell(stream: TextIO, found: Sequence[Diagnostic], sources: Mapping[str, Source], form: str = "text") -> None:
    """Print them; on a terminal with colour, which says nothing that the words don't."""
    from setout.diagnostics.render import render_json, render_text

    if form == "json":
        stream.write(render_json(found, sources))
    else:
        colour = stream.isatty() and not os.environ.get("NO_COLOR")
        stream.write(render_text(_first(found), sources, colour))
        if len(found) > MOST:
            stream.write(f"and {len(found) - MOST:,} more that are not shown\n")
    stream.flush()


def _first(found: Sequence[Diagnostic]) -> list[Diagnostic]:
    """No more of them than anybody reads: errors, then warnings, then notes, each in the order given."""
    weight = {severity: i for i, severity in enumerate(Severity)}
    return sorted(found, key=lambda d: weight[d.severity])[:MOST]
