"""Specs resolved in memory."""

from __future__ import annotations

from collections.abc import Mapping

from setout.diagnostics import Checked
from setout.read import read
from setout.resolve import Project, resolve
from setout.source import Source

PLY = 'stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96 }\n'
LATH = 'stock lath "1x2" { stick 1-1/2 x 3/4 long 72, 96 }\n'
BOX = "size wide 30, high 30, deep 12\n"
SIDES = "part left_side of ply { upright at left }\npart right_side mirrors left_side\n"


def resolved(
    text: str, files: Mapping[str, str] | None = None, settings: Mapping[str, str] | None = None, name: str = "spec.rod"
) -> Checked[Project]:
    tree = read(Source(name, text))
    assert tree.value is not None and not tree.diagnostics, tree.diagnostics
    given = {name: text, **(files or {})}
    return resolve(tree.value, lambda path: Source(path, given[path]) if path in given else None, settings or {})


def codes(checked: Checked[Project]) -> list[str]:
    return [d.code for d in checked.diagnostics]


def project(text: str, **kw) -> Project:
    checked = resolved(text, **kw)
    assert checked.value is not None and not checked.diagnostics, checked.diagnostics
    return checked.value


def marked(checked: Checked[Project], text: str) -> list[str]:
    """What the diagnostics point at."""
    labels = [d.label for d in checked.diagnostics]
    return [text[label.span.start : label.span.end] for label in labels if label is not None]
