"""Whatever is placed and joined: no exception, no hole outside the wood, the same again the second time."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from joinscenes import board, fitting, hole, joined, joint, method, notch, rest

from setout.geometry import ALL_FACES, Box

_span = st.tuples(st.integers(0, 8), st.sampled_from([Fraction(1, 4), Fraction(3, 4), 1, 2, 5])).map(
    lambda p: (p[0], p[0] + p[1])
)
_faces = st.sampled_from([face.word for face in ALL_FACES])
_amount = st.sampled_from([None, Fraction(0), Fraction(1, 4), Fraction(3, 4), 2])
_methods = st.builds(
    lambda kind, on, through, every, depth, gap, stop: method(
        kind, on=on, through=through, every=every, depth=depth, gap=gap, stopped=stop
    ),
    st.sampled_from(["pockets", "screws", "brads", "dowels", "glue", "dado", "groove", "rabbet"]),
    st.none() | _faces,
    st.sampled_from([(), ("a",), ("b",)]),
    st.sampled_from([None, Fraction(1, 8), 1, 3]),
    _amount,
    _amount,
    st.lists(st.tuples(_faces, st.sampled_from([Fraction(1, 2), 3])), max_size=1),
)
_notches = st.lists(st.builds(notch, _span, _span, _span), max_size=2)
_sides = st.sampled_from(["a", "b", "c", ("a", "c"), ("b", "c", "a"), "room.back", "room.bottom"])
ROOM = Box((Fraction(0),) * 3, (Fraction(9),) * 3)


@settings(max_examples=150, deadline=None)
@given(
    st.lists(st.tuples(_span, _span, _span, _notches), min_size=3, max_size=3),
    st.lists(st.tuples(st.sampled_from(["a", "b", ("a", "c")]), _sides, st.lists(_methods, max_size=3)), max_size=3),
)
def test_any_boards_and_joints_are_worked_out(drawn, joints):
    boards = [board(name, w, h, d, *notches) for name, (w, h, d, notches) in zip("abc", drawn)]
    drilled = board("d", (0, 9), (20, 21), (0, 9), hole("top", (1, 21, 1), "1/2", "1/2"))
    made = [joint(one, other, *methods) for one, other, methods in joints]
    extra = {"rests": [rest("a", "d")], "fittings": [fitting("d", "bottom", [(4, 20, 4)], "1/4")], "room": ROOM}
    scene, told = joined([*boards, drilled], *made, **extra)
    assert (scene, told) == joined([*boards, drilled], *made, **extra)
    assert set(scene.boards) == {"a", "b", "c", "d"}
    for b in scene.boards.values():
        for bore in b.bores:
            assert all(b.box.lo[k] <= bore.at[k] <= b.box.hi[k] for k in range(3))
            assert not any(_inside(f.box, bore.at) for f in b.features)


def _inside(box: Box, point) -> bool:
    return all(box.lo[k] < point[k] < box.hi[k] for k in range(3))
