"""Tests of the plan compile small specs; `handmade` is the boards' builder of the tests beside."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

sys.path.append(str(Path(__file__).parents[1] / "piece"))

HEAD = """\
project "Job" { units inch; mark to 1/32 }
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96 }
stock lath "1x2" { stick 1-1/2 x 3/4 long 96 }
hardware foot "foot" { raises 1 }
hardware pull "pull" { price 2 }
room "Study" { size wide 200, high 96, deep 130; studs every 16 from left + 16 }
assembly box "Box" (w = 24, h = 20) {
  size wide w, high h, deep 16
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part floor_panel of ply { level at bottom; wide between left_side and right_side }
  joint floor_panel to left_side, right_side { pockets on bottom; glue }
}
"""


@pytest.fixture
def compiled():
    """Compiles the lines behind HEAD; gives the plan and the diagnostics of the plan's own codes."""
    from setout.pipeline import compile_spec
    from setout.source import Source

    def compile_lines(text: str, head: str = HEAD, settings=None):
        checked = compile_spec(Source("spec.rod", head + text), lambda name: None, settings or {}, Source("marks", ""))
        found = [d for d in checked.diagnostics if d.code[:4] in ("rod1", "rod2", "rod5")]
        return checked.value, found

    return compile_lines


@pytest.fixture
def built(compiled):
    """The steps as words, "cut box", in their order; nothing may be wrong with the lines."""
    from setout.plan.order.problems import label

    def build_lines(text: str, **more):
        plan, found = compiled(text, **more)
        assert not [d for d in found if d.severity.value == "error"], found
        return [label(step.id) for step in plan.order.steps]

    return build_lines
