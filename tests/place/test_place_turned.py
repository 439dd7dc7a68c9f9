"""Assemblies turned, mirrored, nested: the same boards in another position. Checked against plain geometry."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setout.geometry import Axis, Box, Face
from setout.place import Board, Hole, Mitre, Notch

W, H, D = 24, 30, 18
FACES = ("left", "right", "bottom", "top", "front", "back")


@st.composite
def bodies(draw) -> str:
    """Parts of an assembly with no symmetry, as text."""
    number = st.fractions(F(1, 8), 4, max_denominator=8)
    a, b, c = draw(number), draw(number), draw(number)
    return f"""
  size wide {W}, high {H}, deep {D}
  part side of ply {{ upright at left + {a}; deep from front to back - {b}; show left
    notch deep {c} from front, high {a} from bottom
    hole 1/4 at deep back - 1, high top - {c} depth 1/2 into right }}
  part twin mirrors side
  part rail of lath {{ across facing; top at top - {c}; at front; wide between side and twin; proud front
    mitre left 30 long back }}
  part shelf of thin {{ level; deep {c} to back; wide 3 from side.right; grain any
    repeat 2 between rail and low_panel }}
  part low_panel of ply {{ level at bottom; wide over side and twin }}
  opening bay {{ wide between side and twin; high from low_panel.top to rail.bottom }}
"""


def job(body: str, *inner: str) -> str:
    """The body placed in a chain of boxes of its own size, each placed as told, the outermost in the job."""
    chain = f"assembly a0 {{{body}}}\n"
    for i, words in enumerate(inner[:-1]):
        wide, deep = (D, W) if _turns(inner[: i + 1]) % 2 else (W, D)
        chain += f"assembly a{i + 1} {{ size wide {wide}, high {H}, deep {deep}\n"
        chain += f"place a{i} {words} as p{i} {{ at left, bottom, front }} }}\n"
    return (
        chain
        + f"place a{len(inner) - 1} {inner[-1]} as p {{ at left, bottom, front }}\nsize wide 60, high {H}, deep 60"
    )


def _turns(words: tuple[str, ...]) -> int:
    return sum(int(word.split("turned ")[1].split()[0]) // 90 for word in words if "turned" in word)


def shapes(scene) -> dict[str, tuple]:
    """What each board is and where, by its own name, openings too."""
    boards = {_own(path): told(board) for path, board in scene.boards.items()}
    return boards | {_own(path): opening.box for path, opening in scene.openings.items()}


def _own(path: str) -> str:
    return re.sub(r"^(p\d*\.)+", "", path)


def told(board: Board) -> tuple:
    features = tuple(replace(feature, span=None) for feature in board.features)
    return board.box, board.thick, board.run, board.grain, board.show, board.proud, features


@given(bodies())
@settings(max_examples=15, deadline=None)
def test_four_quarter_turns_change_nothing(scene, body):
    plain = shapes(scene(job(body, "")))
    assert shapes(scene(job(body, *["turned 90"] * 4))) == plain
    assert shapes(scene(job(body, "turned 180", "turned 180"))) == plain
    assert shapes(scene(job(body, "turned 270", "turned 90"))) == plain


@given(bodies())
@settings(max_examples=15, deadline=None)
def test_mirrored_twice_is_itself(scene, body):
    plain = shapes(scene(job(body, "")))
    assert shapes(scene(job(body, "mirrored", "mirrored"))) == plain
    assert shapes(scene(job(body, "turned 90 mirrored", "turned 90 mirrored"))) == plain


@given(bodies())
@settings(max_examples=15, deadline=None)
def test_mirrored_reflects_every_board_across_the_middle(scene, body):
    plain, mirrored = shapes(scene(job(body, ""))), shapes(scene(job(body, "mirrored")))
    assert mirrored == {name: reflected(shape) for name, shape in plain.items()}


@given(bodies())
@settings(max_examples=15, deadline=None)
def test_swapping_left_and_right_in_the_words_reflects_the_job(scene, body):
    """A part that `mirrors` another is where the reflection of it is, whichever of the two is the first."""
    plain, swapped = shapes(scene(job(body, ""))), shapes(scene(job(swap(body), "")))
    assert swapped == {name: reflected(shape) for name, shape in plain.items()}


def test_turned_ninety_goes_clockwise_seen_from_above(scene):
    body = f"size wide {W}, high {H}, deep {D}\n" + "\n".join(
        f"part {face}_board of ply {{ {lie} at {face}; show {face} }}"
        for face, lie in zip(FACES, ("upright", "upright", "level", "level", "facing", "facing"))
    )
    boards = scene(job(body, "turned 90")).boards
    where = {name.split(".")[1].removesuffix("_board"): board.show.word for name, board in boards.items()}
    assert where == dict(zip(FACES, ("back", "front", "bottom", "top", "left", "right")))
    assert all(board.box.face(board.show) in (0, D, H, W) for board in boards.values())


def test_faces_are_named_in_the_assembly_where_they_are_written(scene):
    """`b.side.front` from outside is whatever end of the turned side looks to the front of the job."""
    inner = f"assembly base {{ size wide {W}, high {H}, deep {D}\n"
    inner += "part side of ply { upright at left; deep 5 from front } }\n"
    outer = "size wide 60, high 40, deep 60\nplace base turned 90 as b { at left, bottom, front }\n"
    slab = "part slab of ply { level on b; wide from b.side.left to b.side.right; deep 2 to b.side.front }"
    made = scene(inner + outer + slab)
    side, low = made.boards["b.side"].box, made.boards["slab"].box
    assert (side.lo[0], side.hi[0], side.lo[2], side.hi[2]) == (0, 5, W - F(3, 4), W)
    assert (low.lo[0], low.hi[0], low.hi[2]) == (0, 5, W - F(3, 4))


def test_a_joint_in_a_turned_assembly_has_its_faces_turned(scene):
    parts = (
        "part side of ply { upright at left }\npart shelf of ply { level at bottom; wide from side.right to right }\n"
    )
    joint = "joint shelf to side { dado depth 1/4 stopped front 1/2 }\njoint shelf to room.back { screws }\n"
    inner = f"assembly base {{ size wide {W}, high {H}, deep {D}\n{parts}{joint}}}\n"
    made = scene(inner + "place base turned 90 as b { at left, bottom, back }\nroom { size wide 60, high 60, deep 60 }")
    assert made.joints[0].methods[0].stopped == ((Face(Axis.WIDE, -1), F(1, 2)),)
    assert made.joints[1].receiving[0].wall == Face(Axis.WIDE, 1)


def test_repeated_places_are_instances_of_their_own(scene):
    text = "assembly box { size wide 6, high 6, deep 6; part lid of ply { level at top } }\n"
    text += "part a of ply { upright at left }\npart b of ply { upright at right }\n"
    text += "place box as cubby { at bottom, back; repeat 3 wide between a and b }\nsize wide 60, high 6, deep 6\n"
    made = scene(text + "joint cubby to a, b { screws }\njoint cubby.2.lid to b { screws }")
    assert list(made.instances) == ["", "cubby.1", "cubby.2", "cubby.3"]
    lows = [made.instances[f"cubby.{n}"].box.lo[0] for n in (1, 2, 3)]
    assert lows[1] - lows[0] == lows[2] - lows[1] == 6 + (F(117, 2) - 18) / 4
    assert made.joints[0].entering[0].boards == ("cubby.1.lid", "cubby.2.lid", "cubby.3.lid")
    assert not made.joints[0].entering[0].single and made.joints[1].entering[0].single


@pytest.mark.parametrize(("span", "low"), [("at bottom", 1), ("on shelf", F(7, 4)), ("top at top - 1", 9)])
def test_feet_raise_the_assembly_that_stands_on_them(scene, span, low):
    text = "assembly base { size wide 20, high 30, deep 20; part deck of ply { level at bottom + 3 }\n"
    text += "fit 4 foot { under deck; at corners; inset 2 } }\npart shelf of ply { level at bottom }\n"
    made = scene(text + f"place base as b {{ at left, back; {span} }}\nsize wide 40, high 40, deep 40")
    assert made.instances["b"].box.lo[1] == low
    points = made.fittings[0].points
    assert {p[1] for p in points} == {low + 3} and {(p[0], p[2]) for p in points} == {
        (2, 22),
        (2, 38),
        (18, 22),
        (18, 38),
    }


# --- plain geometry, independent of what is tested -----------------------------------------------------------


def reflected(shape):
    if isinstance(shape, Box):
        return Box((W - shape.hi[0], *shape.lo[1:]), (W - shape.lo[0], *shape.hi[1:]))
    box, thick, run, grain, show, proud, features = shape
    flipped = tuple(_feature(feature) for feature in features)
    return reflected(box), thick, run, grain, show and _face(show), frozenset(map(_face, proud)), flipped


def _face(face: Face) -> Face:
    return face.opposite if face.axis == Axis.WIDE else face


def _feature(feature):
    if isinstance(feature, Notch):
        return replace(feature, box=reflected(feature.box))
    if isinstance(feature, Hole):
        return replace(feature, face=_face(feature.face), at=(W - feature.at[0], *feature.at[1:]))
    assert isinstance(feature, Mitre)
    return replace(feature, end=_face(feature.end), long=_face(feature.long))


def swap(text: str) -> str:
    """Left for right, and what is added from the left taken off from the right."""
    other = {"left +": "right -", "left": "right", "right": "left", "from side.right": "to side.left"}
    return re.sub(r"left \+|from side\.right|\bleft\b|\bright\b", lambda match: other[match.group()], text)
