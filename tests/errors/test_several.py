"""One run tells of every mistake, and of no consequence of a mistake already told."""

from __future__ import annotations

import re

from setout.cli import main

FIVE = """\
project "Five" { units inch; mark to 1/32; paper letter }
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96 }
size wide 40, high 40, deep 12
let toe = 3-5/4
part left_side of ply { upright at left }
part right_side of plly { upright at right }
part shelf of ply { level at bottom + 3in * 2in; wide from left_side.right to right }
part top_panel of ply { level at top; wide 50 from left }
part spare of ply { size 30 x 12; count 2-1/2 }
part deck of ply { level at bottom; wide between left_side and right_side; high from shelf.top to top }
joint shelf to right_side { glue }
"""


def test_five_mistakes_are_five_errors(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "five.rod").write_text(FIVE)
    assert main(["check", "five.rod"]) == 1
    said = capsys.readouterr().out
    lines = [int(line) for line in re.findall(r"(?m)^five\.rod:(\d+):\d+: error ", said)]
    assert sorted(set(lines) & {4, 6, 7, 8, 9}) == [4, 6, 7, 8, 9]
    assert lines == sorted(lines), "by place in the file"
    assert 11 not in lines, "the joint is only a consequence"


ON_NOTHING = """\
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32 }
hardware grommet "cable grommet" { hole 2 }
size wide 40, high 40, deep 12
part top_panel of ply { level at top; wide 50 from left }
part bottom_panel of ply { level at bottom }
fit 2 grommet { on top_panel.top; row along wide; inset 8 }
"""


def test_hardware_on_a_board_that_could_not_be_placed_goes_unmentioned(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "spec.rod").write_text(ON_NOTHING)
    assert main(["check", "spec.rod"]) == 1
    assert re.findall(r"(?m)^spec\.rod:(\d+):\d+: error ", capsys.readouterr().out) == ["4"]
