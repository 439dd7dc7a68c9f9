"""The other hand of a part, across the middle of its assembly (30 × 40 × 12)."""

from __future__ import annotations

import pytest

from setout.geometry import Axis, Face

JOB = "size wide 30, high 40, deep 12\n"
SIDE = "part side of ply { upright at left + 2; deep 8 from front + 1; show left; proud front }\n"


@pytest.mark.parametrize(
    ("mirror", "expected"),
    [
        ("part twin mirrors side", "109/4..28 0..40 1..9"),
        ("part twin mirrors side across deep", "2..11/4 0..40 3..11"),
        ("part twin mirrors side { deep 5 from front }", "109/4..28 0..40 0..5"),
        ("part twin mirrors side { at right }", "117/4..30 0..40 1..9"),
        ("part twin mirrors side { at back }", "109/4..28 0..40 4..12"),
        ("part twin mirrors side { high from bottom + 3 to top }", "109/4..28 3..40 1..9"),
    ],
)
def test_a_mirror_is_reflected_but_where_it_says_otherwise(spans, mirror, expected):
    assert spans(JOB + SIDE + mirror)["twin"] == expected


def test_good_face_and_proud_faces_are_reflected(scene):
    twin = scene(JOB + SIDE + "part twin mirrors side").boards["twin"]
    assert (twin.show, twin.proud) == (Face(Axis.WIDE, 1), {Face(Axis.DEEP, -1)})
    across = scene(JOB + SIDE + "part twin mirrors side across deep").boards["twin"]
    assert (across.show, across.proud) == (Face(Axis.WIDE, -1), {Face(Axis.DEEP, 1)})


def test_a_mirror_of_a_repeat_is_a_repeat_numbered_from_the_left(spans):
    made = spans(JOB + "part slat of ply { upright; repeat 2 every 3 from left + 1 }\npart twin mirrors slat")
    assert [made[f"slat.{n}"].split()[0] for n in (1, 2)] == ["1..7/4", "4..19/4"]
    assert [made[f"twin.{n}"].split()[0] for n in (1, 2)] == ["101/4..26", "113/4..29"]


def test_a_mirror_of_shelves_keeps_their_order(spans):
    made = spans(
        JOB + "part shelf of ply { level; wide 8 from left; repeat 2 every 9 from bottom + 1 }\npart twin mirrors shelf"
    )
    assert [made[f"twin.{n}"] for n in (1, 2)] == ["22..30 1..7/4 0..12", "22..30 10..43/4 0..12"]


def test_a_mirror_has_the_size_of_the_other_and_says_so(scene):
    twin = scene(JOB + SIDE + "part twin mirrors side").boards["twin"]
    assert twin.why[Axis.DEEP].text == "side mirrored"
    assert twin.why[Axis.WIDE].text == "thickness of ply"
