"""The drawers' page says what the saw and the drill have to do: its numbers are those of cut list and holes."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from compiling import SPECS, compiled
from drawer_specs import case, drawers

from setout.geometry import Axis
from setout.write.drawers import build
from setout.write.facts import Facts, facts
from setout.write.facts.sizes import length

HINGE = """
hardware hinge "cup hinge" { cup 35mm depth 12mm from 4mm; plate 1-1/2 apart 32mm }
"""
DOOR = "door in bay of ply { MOUNTED; reveal 1/16; hinges hinge on left; pair }"


def about(text: str) -> Facts:
    checked = compiled(text)
    assert checked.value is not None and not checked.failed, [(d.code, d.message) for d in checked.diagnostics]
    return facts(checked.value, "00000000")


def drilled_back(found: Facts, side: str, axis: Axis) -> set[F]:
    """From the front edge of a board of the case, its low end on that axis, to its hinge plates' holes."""
    board = found.joined.boards[f"box.{side}"]
    return {bore.at[axis] - board.box.lo[axis] for bore in board.bores if bore.source.endswith("!plates")}


@pytest.mark.parametrize(("turned", "axis"), [("", Axis.DEEP), (" turned 90", Axis.WIDE), (" mirrored", Axis.DEEP)])
@pytest.mark.parametrize(("mounted", "printed"), [("inset", "2-1/4"), ("overlay 1/2", "1-1/2")])
def test_hinge_plates_are_told_where_they_are_drilled(mounted, printed, turned, axis):
    """A plate's line counts from the door's inside: an inset door, here 3/4 thick, stands before it."""
    text = HINGE + case(DOOR.replace("MOUNTED", mounted)).replace("place box", f"place box{turned}")
    found = about(text)
    (door,) = build(found, {}).doors
    assert [leaf.plate.text for leaf in door.leaves] == [printed] * 2 and len(door.backs) == 1
    for side in ("left_side", "right_side"):
        assert {length(back, found.style).text for back in drilled_back(found, side, axis)} == {printed}


def test_plates_on_a_side_that_stands_back_count_from_its_own_edge():
    back = case(DOOR.replace("MOUNTED", "inset")).replace(
        "part right_side mirrors left_side", "part right_side of ply { upright at right; grain high; deep 21 to back }"
    )
    (door,) = build(about(HINGE + back), {}).doors
    assert [leaf.plate.text for leaf in door.leaves] == ["2-1/4", "1-1/4"]


@pytest.mark.parametrize("spec", sorted(path.name for path in SPECS.glob("*.rod")))
def test_every_bottom_is_as_large_on_the_table_as_on_the_cut_list(spec):
    found = about((SPECS / spec).read_text("utf-8"))
    made = build(found, {})
    rows = [row for bank in made.banks for row in bank.rows if row.box] if made else []
    assert len(rows) > 2 or not found.scene.banks
    cut = {piece.mark: {piece.length.amount, piece.width.amount} for piece in found.plan.pieces.pieces}
    for row in rows:
        bottoms = [mark for mark, _ in row.boards if "bottom panel" in str(found.where(found.piece_by_mark[mark]))]
        assert [{length(side, found.style).text for side in cut[mark]} for mark in bottoms] == [
            {size.text for size in row.bottom}
        ]


def test_a_bottom_in_its_groove_runs_from_front_to_back_as_cut():
    """Box 17 wide, 20 long, sides 5/8: 15-3/4 x 18-3/4 between them, 7/16 more for grooves 1/4 deep and their gaps."""
    (bank,) = build(about(case(drawers("heights 4, 7, rest"))), {}).banks
    assert {tuple(size.text for size in row.bottom) for row in bank.rows} == {("16-3/16", "19-3/16")}
