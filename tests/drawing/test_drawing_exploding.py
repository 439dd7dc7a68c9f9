"""Assemblies pulled apart."""

from __future__ import annotations

from collections import Counter

import drawing_samples as s
from drawing_reading import clashes, sizes, words
from hypothesis import given, settings
from hypothesis import strategies as st

from setout.drawing import exploded
from setout.drawing.solids.oblique import TOWARD, bounds, visible
from setout.drawing.solids.solid import Block, edges, split
from setout.drawing.solids.spreading import ranks, touching


def test_every_board_carries_its_mark():
    drawing = exploded(s.bookcase(), "bookcase", s.BOOK_MARKS, 520, 340, s.INCH)
    assert Counter(words(drawing)) == Counter(s.BOOK_MARKS.values())
    assert not clashes(drawing) and min(sizes(drawing)) >= 9
    assert drawing.width <= 520 and drawing.height <= 340


def test_the_job_shows_its_boards_and_names_its_assemblies():
    marks = s.bench_marks()
    said = words(exploded(s.bench(), "", marks, 520, 340, s.INCH))
    assert sorted(said) == sorted(["left base", "right base", marks["worktop"], marks["cleat"], marks["machine_deck"]])


def test_an_assembly_within_is_named_in_words_however_long():
    path = "case.upper_drawer_bay_of_the_sewing_wall.drawer.1"
    boards = [s.joined(s.board(f"{path}.front", s.box(1, 19, 1, 9, 0, 1), s.D)),
              s.joined(s.board("case.side", s.box(0, 1, 0, 10, 0, 9), s.W))]  # fmt: skip
    known = [s.instance("", None), s.instance("case", s.box(0, 20, 0, 10, 0, 9)), s.instance(path, None, parent="case")]
    said = " ".join(words(exploded(s.scene(boards, known), "case", {}, 400, 300, s.INCH)))
    assert "upper drawer bay of the sewing wall drawer 1" in said


def test_parts_come_off_along_the_axis_they_meet_on():
    sides = [s.box(0, 1, 0, 40, 0, 10), s.box(31, 32, 0, 40, 0, 10)]
    levels = [s.box(1, 31, 3, 4, 0, 9), s.box(1, 31, 39, 40, 0, 9)]
    case = [*sides, *levels, s.box(1, 31, 3, 40, 9, 10), s.box(1, 31, 0, 3, 2, 3)]
    left, right, bottom, top, back, kick = ranks(case, touching(case))
    assert left[0] < top[0] == bottom[0] < right[0]
    assert left[1:] == right[1:] == top[1:] == bottom[1:] == (0, 0)
    assert back[2] > 0 and back[:2] == (0, 0)
    assert kick[1] < 0 and kick[0] == 0


def test_edges_of_a_notched_box():
    whole, hole = Block((0, 0, 0), (4, 4, 1)), Block((0, 0, 0), (2, 2, 1))
    kinds = Counter(len(e.empty) for e in edges(whole, [hole]))
    assert kinds == {3: 17, 1: 1}  # eighteen edges, the one in the notch's corner goes in
    assert sum((b.hi[0] - b.lo[0]) * (b.hi[1] - b.lo[1]) for b in split(whole, [hole])) == 12


cells = st.tuples(*[st.integers(0, 6)] * 3)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(cells, st.tuples(*[st.integers(1, 4)] * 3)), min_size=1, max_size=5), cells, cells)
def test_what_is_hidden_agrees_with_walking_to_the_eye(boxes, a, b):
    """Against a check that steps along each sight line and asks whether it is inside a block."""
    blocks = [Block(lo, tuple(x + w for x, w in zip(lo, wide))) for lo, wide in boxes]
    a, b = tuple(x + 0.013 for x in a), tuple(x + 0.017 for x in b)  # off the faces, where either answer is right
    seen = visible(a, b, blocks, [bounds(k) for k in blocks])
    for n in range(1, 20):
        t = n / 20 + 0.0031
        p = tuple(x + (y - x) * t for x, y in zip(a, b))
        hits = [depth for k in blocks for depth in (_through(p, k),) if depth is not None]
        if any(0 < d < 0.05 for d in hits):
            continue  # only grazes a corner
        assert any(s0 <= t <= s1 for s0, s1 in seen) != bool(hits)


def _through(p, block):
    """How much of the sight line from `p` runs inside the block; None when none of it does."""
    low, high = 0.0, 1e9
    for x, v, lo, hi in zip(p, TOWARD, block.lo, block.hi):
        near, far = sorted(((lo - x) / v, (hi - x) / v))
        low, high = max(low, near), min(high, far)
    return high - low if high > low else None


def test_an_assembly_without_boards_says_so():
    assert words(exploded(s.scene([], [s.instance("", None)]), "", {}, 300, 200, s.INCH)) == ["No boards of its own"]
