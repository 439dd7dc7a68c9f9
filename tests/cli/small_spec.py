"""The small spec that the command line is tried with."""

from __future__ import annotations

SPEC = """\
project "Boards" { units inch; mark to 1/32; paper letter }
stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96 }
let long = 30
measure gap "between the walls" expect 20 to 30
assembly box "Box" {
  size wide long + 2, high 20, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part shelf of ply { level at bottom + 4; wide between left_side and right_side }
  joint shelf to left_side, right_side { dado depth 1/4; glue }
}
place box { left at gap; at bottom, back }
room "Study" { size wide 100, high 96, deep 90 }
part spare of ply { size long x 11-1/4; count 4 }
"""
LONGER = SPEC.replace("let long = 30", "let long = 34")
INCLUDING = SPEC.replace("let long = 30", 'include "parts/sizes.rod"')
