"""What holds boards up. Common practice, no source."""

from __future__ import annotations

import pytest
from compiling import compiled

STOCKS = 'stock ply "ply" { sheet 96 x 48 x 3/4; grain along 96 }\nstock pine "1x3" { stick 2-1/2 x 3/4 long 96 }\n'
CASE = """size wide 40, high 40, deep 12
part left_side of ply { upright at left; grain high }
part right_side mirrors left_side
part floor of ply { level at bottom; wide between left_side and right_side }
joint floor to left_side, right_side { pockets on bottom }
"""
ROOM = 'room "R" { size wide 60, high 96, deep 40; studs every 16 from left + 8 }\n'


def told(text: str, code: str) -> list[str]:
    return [f"{d.message}: {d.label.text}" for d in compiled(STOCKS + text).diagnostics if d.code == code]


def test_a_shelf_that_reaches_nothing_hangs_in_the_air():
    (said,) = told(CASE + "part shelf of ply { level at bottom + 20; wide 30 centred }\n", "rod397")
    assert "`shelf`" in said and "`left_side`, 4-1/4 in away on wide" in said


def test_boards_joined_to_each_other_alone_are_told_of_together():
    frame = """part a of ply { upright; left at left + 5; high 5 from bottom + 20 }
part b of ply { level at bottom + 20; wide 5 from a.right }
joint b to a { pockets on bottom }
"""
    (said,) = told(CASE + frame, "rod397")
    assert "2 boards" in said


@pytest.mark.parametrize(
    "held",
    [
        ROOM + "part shelf of ply { level at bottom + 20; wide 30 centred; deep 6 to back }",
        ROOM + "part shelf of ply { level at bottom; wide 30 centred; deep 6 from front + 3 }",
        'hardware foot "foot" { raises 1 }\n'
        + ROOM
        + "part shelf of ply { level at bottom + 1; wide 30 centred; deep 6 from front + 3 }\n"
        + "fit 4 foot { at corners; inset 1; under shelf }",
        "size wide 40, high 40, deep 12\npart shelf of ply { level at bottom + 20; wide 30 centred }",
    ],
    ids=["at a wall", "on the floor", "on feet", "no room, nothing on its floor"],
)
def test_what_is_held(held):
    assert not told(held + "\n", "rod397")


@pytest.mark.parametrize(("wide", "warned"), [(14, True), (24, False)])
def test_one_screw_in_one_stud_is_a_pivot(wide, warned):
    cleat = f"part cleat of pine {{ across facing at back; wide {wide} from left + 4; bottom at 40 }}\n"
    cleat += "joint cleat to room.back { screws into studs }\n"
    assert bool(told(ROOM + cleat, "rod398")) == warned


def test_a_joint_between_assemblies_is_told_with_its_paths():
    text = """assembly box "Box" { size wide 20, high 20, deep 10; part side of ply { upright at left; grain high } }
size wide 40, high 40, deep 20
place box as one { at left, bottom, back }
place box as other { wide from one.side.right; at bottom, back }
"""
    (found,) = [d for d in compiled(STOCKS + text).diagnostics if d.code == "rod354"]
    assert "`joint other.side to one.side { … }`" in found.help


@pytest.mark.parametrize("lower_first", [True, False])
def test_what_lies_on_another_is_said_to_rest_on_it(lower_first):
    parts = ["part box of ply { level at bottom }\n", "part lid of ply { level on box }\n"]
    text = "size wide 20, high 20, deep 10\n" + "".join(parts if lower_first else reversed(parts))
    (found,) = [d for d in compiled(STOCKS + text).diagnostics if d.code == "rod354"]
    assert "`lid rests on box`" in found.help
