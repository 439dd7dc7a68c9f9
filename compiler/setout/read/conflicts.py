"""The marks that Git leaves where two versions could not be merged."""

from __future__ import annotations

import re

from setout.diagnostics import Diagnostic
from setout.read import problems
from setout.source import Source, Span

# In the order of a conflict; that of the common ancestor is there only when Git was asked for it.
_MARK = re.compile(r"^(?:<{7}(?= |$)|\|{7}(?= |$)|={7}$|>{7}(?= |$)).*$", re.MULTILINE)


def conflicts(source: Source) -> list[Diagnostic]:
    """One for each conflict; also for a mark left over from one that was mended by halves."""
    groups: list[list[Span]] = []
    ended = True
    for mark in _MARK.finditer(source.text):
        if ended or mark[0][0] == "<":
            groups.append([])
        groups[-1].append(Span(source.name, mark.start(), mark.start() + len(mark[0].rstrip())))
        ended = mark[0][0] == ">"
    return [problems.merge_conflict(first, rest) for first, *rest in groups]
