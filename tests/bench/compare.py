"""How long a comparison of two revisions of some 300 boards takes, each run in a new process, without cutting plans.

python tests/bench/compare.py
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from speed import RUNS, timed

TARGET = 1.5  # seconds, process start and two compiles included
CASES = 38
HEAD = """project "Run of cases" { units inch }
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96; price 68 }
stock thin "1/4 plywood" { sheet 96 x 48 x 7/32; grain along 96; price 31 }
size wide 2400, high 96, deep 40
let back_off = 0
assembly case "Case" (w = 20, h = 30, d = 14) {
  size wide w, high h, deep d
  default deep from front to back_panel.front
  part left_side of ply { upright at left; grain high; show left; notch deep 3 from front, high 3 from bottom }
  part right_side mirrors left_side
  part bottom_panel of ply { level at bottom + 3; wide between left_side and right_side }
  part top_panel of ply { level at top; wide between left_side and right_side }
  part shelf of ply { level; wide between left_side and right_side; repeat 2 between bottom_panel and top_panel }
  part kick of ply {
    facing; back at front + 3; wide over left_side and right_side; high from bottom to bottom_panel.bottom
  }
  part back_panel of thin {
    facing at back; wide over left_side and right_side; high from bottom_panel.bottom to top - back_off
  }
  joint bottom_panel, top_panel to left_side, right_side { pockets on bottom; glue }
  joint shelf to left_side, right_side { dado depth 1/4; glue }
  joint kick to left_side, right_side, bottom_panel { brads; glue }
  joint back_panel to left_side, right_side, bottom_panel, top_panel, shelf { brads every 6 }
}
"""
REVISIONS = (
    ("nothing", "Run of cases", "Run of cases"),
    ("the backs", "let back_off = 0", "let back_off = 1/2"),
    ("every depth", "d = 14)", "d = 13)"),
    ("the plywood by caliper", "x 23/32;", "x 3/4;"),
)


def spec() -> str:
    return HEAD + "\n".join(_placed()) + "\n"


def _placed() -> Iterator[str]:
    """Each a little wider and higher than the last, so that few of their boards are alike."""
    for n in range(CASES):
        where = "at left, bottom, back" if not n else f"wide from case{n - 1}.right + 1; at bottom, back"
        yield f"place case (w = 20 + {n}/8, h = 30 + {n}/4) as case{n} {{ {where} }}"


def main() -> int:
    late = 0
    with tempfile.TemporaryDirectory() as folder:
        old = Path(folder, "old.rod")
        old.write_text(spec())
        check = _seconds(("check", "old.rod"), folder)
        print(f"one check {check[0]:.2f} s, cpu {check[1]:.2f}; the quickest of {RUNS} runs each")
        for name, before, after in REVISIONS:
            assert before in spec()
            Path(folder, "new.rod").write_text(spec().replace(before, after))
            wall, cpu = _seconds(("diff", "old.rod", "new.rod"), folder, (0, 4))
            late += wall > TARGET
            print(f"diff, {name:<24}{wall:6.2f} s   cpu {cpu:5.2f}   {cpu / check[1]:4.1f} checks   target {TARGET}")
    return 1 if late else 0


def _seconds(words: tuple[str, ...], folder: str, codes: tuple[int, ...] = (0,)) -> tuple[float, float]:
    """The least wall-clock and processor time of some runs."""
    return tuple(map(min, zip(*(timed(words, folder, codes) for _ in range(RUNS)))))  # type: ignore[return-value]


if __name__ == "__main__":
    sys.exit(main())
