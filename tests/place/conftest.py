"""Specs as text, placed."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from setout.diagnostics import Checked
from setout.geometry import Box
from setout.place import Placed, place
from setout.read import read
from setout.resolve import resolve
from setout.source import Source

STOCKS = """
stock ply "3/4 plywood" { sheet 96 x 48 x 3/4; grain along 96 }
stock thin "1/4 plywood" { sheet 96 x 48 x 1/4 }
stock lath "1x2 pine" { stick 1-1/2 x 3/4 long 72, 96 }
hardware foot "levelling foot" { raises 1 }
hardware pull "pull" { price 2 }
"""


def placed(text: str, **settings: str) -> Checked[Placed]:
    """The spec placed, with the stocks above; what read and resolve find is an error of the test."""
    tree = read(Source("t.rod", STOCKS + text))
    assert tree.value is not None and not tree.diagnostics, tree.diagnostics
    project = resolve(tree.value, lambda _: None, settings)
    assert project.value is not None and not project.failed, project.diagnostics
    return place(project.value)


@pytest.fixture(scope="session")
def scene() -> Callable:
    """The drawn scene of a spec that must place without a finding."""

    def make(text: str, **settings: str):
        checked = placed(text, **settings)
        assert checked.value is not None and not checked.diagnostics, checked.diagnostics
        return checked.value.drawn

    return make


@pytest.fixture(scope="session")
def spans(scene) -> Callable:
    """Of each board `(low, high)` on each axis, as text: `{"shelf": "0..30 1..1-3/4 0..12"}` with plain fractions."""

    def make(text: str, **settings: str) -> dict[str, str]:
        return {path: said(board.box) for path, board in scene(text, **settings).boards.items()}

    return make


@pytest.fixture(scope="session")
def codes() -> Callable:
    def make(text: str, **settings: str) -> list[str]:
        return [found.code for found in placed(text, **settings).diagnostics]

    return make


@pytest.fixture(scope="session")
def checked() -> Callable:
    return placed


def said(box: Box) -> str:
    return " ".join(f"{box.lo[axis]}..{box.hi[axis]}" for axis in range(3))
