"""Dressed softwood sizes: American Softwood Lumber Standard PS 20 (check-values.md section 3, row R).

A stick that a spec calls by a nominal or a metric label has the dressed size that goes with it.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from compiling import SPECS
from taping import inch, mm

from setout.read import read
from setout.resolve import resolve
from setout.source import Source

TESTS = Path(__file__).parents[1]
# nominal inches -> dressed dry, as thickness and as width
THICK = {1: "3/4", 2: "1-1/2", 3: "2-1/2", 4: "3-1/2"}
WIDE = {2: "1-1/2", 3: "2-1/2", 4: "3-1/2", 5: "4-1/2", 6: "5-1/2", 8: "7-1/4", 10: "9-1/4", 12: "11-1/4"}
METRIC = {19, 38, 64, 89, 140, 184, 235, 286}
LABEL = re.compile(r"(\d+) ?x ?(\d+)\b")


def sticks_of(path: Path):
    """Title, width and thickness of every stick of a spec."""
    text = path.read_text("utf-8")
    read_in = lambda name: Source(name, (path.parent / name).read_text("utf-8"))  # noqa: E731
    project = resolve(read(Source(path.name, text)).value, read_in, {}).value
    return [(s.title, s.short, s.thick) for s in project.stocks.values() if s.kind == "stick" and LABEL.search(s.title)]


FILES = [*SPECS.glob("*.rod"), *TESTS.glob("golden/*/spec.rod"), *TESTS.glob("outside/*.rod")]
STICKS = sorted({stick for path in sorted(FILES) for stick in sticks_of(path)})


@pytest.mark.parametrize(("title", "wide", "thick"), STICKS, ids=[title for title, *_ in STICKS])
def test_a_stick_has_the_size_of_its_label(title, wide, thick):
    first, second = map(int, LABEL.search(title).groups())
    if first in THICK:
        assert (thick, wide) == (inch(THICK[first]), inch(WIDE[second]))
    else:
        assert (thick, wide) == (mm(first), mm(second))


def test_the_labels_seen_are_those_meant():
    assert {LABEL.search(title).group() for title, *_ in STICKS} >= {"1x2", "1x4", "38 x 89", "19 x 89"}


@pytest.mark.parametrize("label", sorted(METRIC))
def test_a_metric_label_is_the_dressed_inch_size_to_the_millimetre(label):
    dressed = {inch(text) for text in (*THICK.values(), *WIDE.values())}
    assert [size for size in dressed if abs(size - mm(label)) <= mm(1) / 2]
