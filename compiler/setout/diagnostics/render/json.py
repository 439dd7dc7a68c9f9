"""Diagnostics for programs.

One object, described by `diagnostics.schema.json` beside this file:

    {"format": "setout diagnostics", "version": 1,
     "summary": {"errors": 1, "warnings": 0, "notes": 0},
     "diagnostics": [{"code": "rod110", "severity": "error", "message": "…", "help": "…",
                      "place": PLACE or null, "related": [PLACE, …]}]}

A PLACE has `file` and `text` (what is the matter there), and, when the file could be read, `line`, `column`,
`end_line`, `end_column` (counted from 1, in characters, the end just behind the last one). `version` goes up when
something is taken away or changes its meaning; a reader must not mind what is added.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

from setout.diagnostics.model import Diagnostic, Label, Severity
from setout.source import Source

VERSION = 1


def render_json(found: Iterable[Diagnostic], sources: Mapping[str, Source]) -> str:
    """Plain ASCII, the same bytes for the same findings."""
    found = tuple(found)
    severities = [d.severity for d in found]
    data = {
        "format": "setout diagnostics",
        "version": VERSION,
        "summary": {f"{s.value}s": severities.count(s) for s in Severity},
        "diagnostics": [_diagnostic(d, sources) for d in found],
    }
    return json.dumps(data, indent=2) + "\n"


def _diagnostic(d: Diagnostic, sources: Mapping[str, Source]) -> dict[str, Any]:
    return {
        "code": d.code,
        "severity": d.severity.value,
        "message": d.message,
        "help": d.help,
        "place": _place(d.label, sources) if d.label else None,
        "related": [_place(label, sources) for label in d.others],
    }


def _place(label: Label, sources: Mapping[str, Source]) -> dict[str, Any]:
    place: dict[str, Any] = {"file": label.span.file, "text": label.text}
    source = sources.get(label.span.file)
    if source:
        line, column = source.position(label.span.start)
        end_line, end_column = source.position(label.span.end)
        place |= {"line": line, "column": column, "end_line": end_line, "end_column": end_column}
    return place
