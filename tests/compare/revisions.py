"""Revisions of the sewing wall as a builder would make them: a few words of the spec each."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Edit:
    """Words of the spec, which stand there so many times, and what stands there instead."""

    old: str
    new: str
    times: int = 1


HARDBOARD = """stock hardboard "1/4 hardboard" {
  sheet 96 x 48 x 7/32
  panel "hardboard"
  price 18
}
hardware grommet"""
BANK = """  drawers in drawer_bay {
    heights 4, 4, 4, 6, 6, 9
    slides slide16, slide20
    box of five_eighths
    bottom of thin in groove
    fronts of ply inset reveal 1/16
    corners pockets
    load 30
  }
"""
TALL_JOINT = "joint bottom_panel, low_shelf, high_shelf to left_side, right_side"
HIGH_ROW = """place cubbies (w = right_upper.left - left_upper.right) as high_row {
  wide from left_upper.right
  at back
  top at left_upper.top
}"""
TWO_ROWS = """place cubbies (w = knee / 2, dividers = 2) as high_left_row {
  wide from left_upper.right
  at back
  top at left_upper.top
}
place cubbies (w = knee / 2, dividers = 2) as high_right_row {
  wide from high_left_row.right
  at back
  top at left_upper.top
}"""
TWO_ROWS_JOINED = """joint high_left_row, low_row to left_upper { screws; only face }
joint high_right_row, low_row to right_upper { screws; only face }
joint high_left_row to high_right_row { screws; only face }"""

REVISIONS: Mapping[str, Sequence[Edit]] = {
    "wall_shortened": [Edit("let knee = 34 ", "let knee = 30 ")],
    "drawer_left_out": [
        Edit(" + 4 + 4 + 4 + 6 + 6 + 9 + 7/16", " + 4 + 4 + 6 + 6 + 9 + 3/8"),
        Edit("heights 4, 4, 4, 6, 6, 9", "heights 4, 4, 6, 6, 9"),
    ],
    "bank_of_drawers_left_out": [Edit(BANK, "")],
    "ply_thicker_by_caliper": [Edit("sheet 96 x 48 x 23/32 ", "sheet 96 x 48 x 3/4 ")],
    "other_slides_in_the_chests": [Edit("slides slide16, slide20  # the longest that fits", "slides heavy16")],
    "cubby_row_split_in_two": [
        Edit(HIGH_ROW, TWO_ROWS),
        Edit("under high_row", "under high_left_row"),
        Edit("right_upper, high_row, low_row to room", "right_upper, high_left_row, high_right_row, low_row to room"),
        Edit("joint high_row, low_row to left_upper, right_upper { screws; only face }", TWO_ROWS_JOINED),
        Edit("low_row rests on high_row", "low_row rests on high_left_row\nlow_row rests on high_right_row"),
        Edit("right_upper, high_row { brads; glue }", "right_upper, high_left_row, high_right_row { brads; glue }"),
    ],
    "mirrored_left_to_right": [
        Edit("fabric_case { wide from right_base.right + 6; at", "fabric_case { left at left + 1/2; at"),
        Edit("chest as left_base { at left,", "chest (w = 36) as left_base { left at fabric_case.right + 6; at"),
        Edit("place chest (w = 36) as right_base", "place chest as right_base"),
        Edit("wide 20 from left + 31,", "wide 20 to right - 31,"),
        Edit("place upper (w = 36) as right_upper", "place upper as right_upper"),
        Edit("upper as left_upper { at left,", "upper (w = 36) as left_upper { left at left_base.left; at"),
    ],
    "grain_turned": [
        Edit("top_panel\n    grain high\n    show front", "top_panel\n    grain wide\n    show front"),
        Edit("    high 3 to top_panel.bottom\n    grain wide", "    high 3 to top_panel.bottom\n    grain high"),
    ],
    "dadoes_for_pockets": [Edit(f"{TALL_JOINT} {{ pockets on bottom;", f"{TALL_JOINT} {{ dado depth 1/4;")],
    "worktop_deeper": [Edit("deep 23 to back\n  grain wide", "deep 24 to back\n  grain wide")],
    "uppers_raised": [Edit("let hang = 48 ", "let hang = 50 ")],
    "backs_of_hardboard": [
        Edit("hardware grommet", HARDBOARD),
        Edit("part back_panel of thin {", "part back_panel of hardboard {", 3),
        Edit("top_panel\n    grain high\n    show front", "top_panel\n    show front"),
    ],
}


def revised(text: str, edits: Sequence[Edit]) -> str:
    for edit in edits:
        assert text.count(edit.old) == edit.times, f"{text.count(edit.old)} times in the spec: {edit.old}"
        text = text.replace(edit.old, edit.new)
    return text
