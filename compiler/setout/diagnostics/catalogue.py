"""All diagnostics there are. The catalogue is the folder `pages`: one Markdown page a code.

A page begins `# rod301 error: Parts overlap`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable

from setout.diagnostics.model import Severity

_HEADING = re.compile(r"# (?P<code>rod\d{3}) (?P<severity>error|warning|note): (?P<title>.+)")


@dataclass(frozen=True)
class Entry:
    code: str
    severity: Severity
    title: str


@cache
def codes() -> tuple[Entry, ...]:
    """Every code with its severity and title, by number. ValueError for a page with no proper heading (our bug)."""
    names = sorted(f.name for f in _folder().iterdir() if f.name.endswith(".md"))
    return tuple(_entry(name) for name in names)


def page(code: str) -> str | None:
    """The page of that code, None when there is no such code."""
    file = _folder() / f"{code}.md"
    return file.read_text("utf-8") if re.fullmatch(r"rod\d{3}", code) and file.is_file() else None


def _entry(name: str) -> Entry:
    first = (_folder() / name).read_text("utf-8").split("\n", 1)[0]
    heading = _HEADING.fullmatch(first)
    if heading is None or f"{heading['code']}.md" != name:
        raise ValueError(f"{name} must begin `# rodNNN error: Title`, not {first!r}")
    return Entry(heading["code"], Severity(heading["severity"]), heading["title"])


def _folder() -> Traversable:
    return files("setout") / "diagnostics" / "pages"


CODES: tuple[str, ...] = tuple(entry.code for entry in codes())
