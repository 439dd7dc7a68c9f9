"""A comparison of two plans on the screen, for a review, for other programs, and to clip into the packet."""

from __future__ import annotations

from collections.abc import Mapping

from setout.compare.model import Changes
from setout.plan.model import Plan
from setout.write.changes.build import Names, build
from setout.write.changes.text import as_markdown, as_text


def as_json(changes: Changes, names: Names) -> str:
    """The comparison for other programs, by `schema.json`."""
    from setout.write.changes.document import as_json

    return as_json(changes, names)


def files(changes: Changes, names: Names, old: Plan, new: Plan, formats: frozenset[str]) -> Mapping[str, bytes]:
    """The change sheet of two plans that were compared: changes.pdf and changes.html, whichever is asked for ("pdf",
    "html"). The same plans give the same bytes."""
    from setout.write.changes.paper import files

    return files(changes, names, old, new, formats)


__all__ = ["Names", "as_json", "as_markdown", "as_text", "build", "files"]
