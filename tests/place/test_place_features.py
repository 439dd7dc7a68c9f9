"""Notches, cut-outs, holes and mitres from the part's own faces; hardware set out. By hand, on a side 3/4 × 38 × 10."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from setout.geometry import Axis, Face

JOB = "size wide 30, high 40, deep 12\n"


def feature(scene, words: str):
    (made,) = (
        scene(f"{JOB}part side of ply {{ upright at left; high 38 to top; deep 10 to back; {words} }}")
        .boards["side"]
        .features
    )
    return made


@pytest.mark.parametrize(
    ("words", "high", "deep"),
    [
        ("notch deep 3 from front, high 3-1/2 from bottom", ("2", "11/2"), ("2", "5")),
        ("notch deep 3 from back, high 3-1/2 to top", ("73/2", "40"), ("9", "12")),
        ("notch deep 3 centred, high 1 from top", ("39", "40"), ("11/2", "17/2")),
        ("notch deep from front to front + 1, high from bottom + 2 to top - 2", ("4", "38"), ("2", "3")),
        ("cutout deep 3 from front + 1, high 3 centred on bottom + 9", ("19/2", "25/2"), ("3", "6")),
    ],
)
def test_what_is_taken_out_goes_through_the_thickness(scene, words, high, deep):
    made = feature(scene, words)
    assert made.kind == words.split()[0]
    assert [(str(made.box.lo[a]), str(made.box.hi[a])) for a in Axis] == [("0", "3/4"), high, deep]


def test_a_hole_has_its_face_its_middle_and_its_depth(scene):
    made = feature(scene, "hole 1/2 at deep back - 2, high bottom + 3 depth 1/4 into right")
    assert (made.face, made.diameter, made.depth) == (Face(Axis.WIDE, 1), F(1, 2), F(1, 4))
    assert made.at == (F(3, 4), 5, 10)


def test_a_hole_right_through_is_drilled_from_the_good_face(scene):
    assert feature(scene, "show right; hole 1/2 at deep back - 2, high bottom + 3").face == Face(Axis.WIDE, 1)
    assert feature(scene, "hole 1/2 at deep back - 2, high bottom + 3").face == Face(Axis.WIDE, -1)


def test_a_lap_may_take_half_of_a_stick(scene):
    made = scene(JOB + "part rail of lath { across facing; at top, back; notch wide 1-1/2 centred, high 3/4 from top }")
    (lap,) = made.boards["rail"].features
    assert lap.box.sizes == (F(3, 2), F(3, 4), F(3, 4))


@pytest.mark.parametrize(
    ("fit", "points"),
    [
        ("fit 4 foot { under deck; at corners; inset 2 }", [(2, 2), (2, 10), (28, 2), (28, 10)]),
        ("fit 3 pull { on deck.top; row along wide; inset 3 }", [(3, 6), (15, 6), (27, 6)]),
        ("fit 3 pull { on deck.top; row along wide }", [(5, 6), (15, 6), (25, 6)]),
        ("fit 1 pull { on deck.top; row along deep; inset 3 }", [(15, 6)]),
        ("fit 1 pull { on deck.top; centred }", [(15, 6)]),
        ("fit 7 pull { on deck.top }", []),
    ],
)
def test_hardware_is_set_out_on_its_face(scene, fit, points):
    made = scene(f"{JOB}part deck of ply {{ level at bottom + 5 }}\n{fit}")
    (fitting,) = made.fittings
    assert [(p[0], p[2]) for p in fitting.points] == points
    assert fitting.count == int(fit.split()[1])
    assert {p[1] for p in fitting.points} <= {made.boards["deck"].box.face(fitting.face)}


def test_a_joint_has_its_numbers_worked_out(scene):
    text = JOB + "let d = 1/2\npart side of ply { upright at left }\n"
    text += "part shelf of ply { level at bottom; wide from side.right to right }\n"
    made = scene(
        text + "joint shelf to side { dado depth d / 2 gap 1/32 stopped front d; screws through side every 4 }"
    )
    dado, screws = made.joints[0].methods
    assert (dado.depth, dado.gap, dado.stopped) == (F(1, 4), F(1, 32), ((Face(Axis.DEEP, -1), F(1, 2)),))
    assert (screws.through, screws.every) == ({"side"}, 4)
