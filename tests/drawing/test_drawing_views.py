"""The job seen squarely."""

from __future__ import annotations

from fractions import Fraction as F

import drawing_samples as s
import pytest
from drawing_reading import clashes, lines, sizes, words

from setout.drawing import together, view
from setout.drawing.solids.seen import Face2, Seen


@pytest.mark.parametrize("side", ["front", "side", "top"])
def test_fits_its_room_and_is_legible(side):
    for scene, marks in ((s.bookcase(), s.BOOK_MARKS), (s.bench(), s.bench_marks())):
        drawing = view(scene, marks, side, 400, 220, s.INCH)
        assert drawing.width <= 400 and drawing.height <= 224
        assert min(sizes(drawing)) >= 9
        assert not clashes(drawing)
        assert drawing == view(scene, marks, side, 400, 220, s.INCH)


def test_overall_sizes_are_of_the_true_outline():
    bench = s.bench()  # feet reach the floor one inch below the bases; the worktop overhangs one inch at the front
    assert {"78 wide", "29-3/4 high"} <= set(words(view(bench, {}, "front", 500, 240, s.INCH)))
    assert {"23 deep", "29-3/4 high"} <= set(words(view(bench, {}, "side", 500, 240, s.INCH)))
    assert "≈1981 wide" in words(view(bench, {}, "front", 500, 240, s.MM))


def test_names_assemblies_and_marks_the_jobs_own_boards():
    said = words(view(s.bench(), s.bench_marks(), "front", 500, 240, s.INCH))
    assert {"left base", "right base", s.bench_marks()["worktop"]} <= set(said)


def test_held_parts_are_dashed():
    assert lines(view(s.bench(), {}, "front", 500, 240, s.INCH), look="1.4 5 2.5")
    assert not lines(view(s.bookcase(), {}, "front", 500, 240, s.INCH), look="1.4 5 2.5")


def test_a_board_behind_another_is_not_drawn():
    front = s.joined(s.board("a.front", s.box(0, 20, 0, 20, 0, 1), s.D))
    behind = s.joined(s.board("a.behind", s.box(5, 15, 5, 15, 5, 6), s.D))
    notch = s.Notch("cutout", s.box(8, 12, 8, 12, 0, 1), s.HERE)
    open_front = s.joined(s.board("a.front", s.box(0, 20, 0, 20, 0, 1), s.D, features=[notch]))
    known = [s.instance("", None), s.instance("a", None)]
    assert len(_outlines(s.scene([front, behind], known))) == 4
    assert len(_outlines(s.scene([open_front, behind], known))) == 8  # seen through, not its edge


def _outlines(scene):
    floor = 2  # the floor line and one edge of the board share a pen
    drawn = lines(view(scene, {}, "front", 300, 300, s.INCH), "1.4") + lines(
        view(scene, {}, "front", 300, 300, s.INCH), "0.9"
    )
    return [d for d in drawn if abs(d[0] - d[2]) + abs(d[1] - d[3]) > floor][:-1]


def test_seen_agrees_with_looking_at_every_cell():
    faces = [Face2(x, y, x + w, y + h, z, n) for n, (x, y, w, h, z) in enumerate(
        ((0, 0, 6, 6, 3), (1, 1, 2, 9, 2), (4, 2, 5, 2, 1), (0, 5, 9, 1, 0), (2, 0, 1, 9, 5)))]  # fmt: skip
    seen = Seen(faces)
    for j in range(len(seen.ys) - 1):
        for i in range(len(seen.xs) - 1):
            x, y = (seen.xs[i] + seen.xs[i + 1]) / 2, (seen.ys[j] + seen.ys[j + 1]) / 2
            over = [f for f in faces if f.left < x < f.right and f.low < y < f.high]
            assert seen.owner(j, i) == (min(over, key=lambda f: f.near).owner if over else -1)


def test_very_many_boards_stay_quick_and_small():
    boards = [s.joined(s.board(f"b{n}", s.box(F(n, 7), F(n + 3, 7), F(n % 90), F(n % 90 + 2), n % 5, n % 5 + 1), s.D))
              for n in range(1500)]  # fmt: skip
    drawing = view(s.scene(boards, [s.instance("", None)]), {}, "front", 500, 300, s.INCH)
    assert len(drawing.svg) < 3_000_000


def test_nothing_placed_is_said():
    assert words(view(s.scene([], [s.instance("", None)]), {}, "front", 300, 200, s.INCH)) == ["Nothing is placed"]


def test_the_three_views_are_at_one_scale_and_in_line():
    """A rule carries across: the front's ends stand under those of the view from above, its floor beside the side's."""
    drawing = together(s.bench(), s.bench_marks(), 480, 400, s.INCH)
    assert drawing.width <= 480 and drawing.height <= 400 and not clashes(drawing) and min(sizes(drawing)) >= 9
    heavy = lines(drawing, "1.4")
    level = [(x, x2) for x, y, x2, y2 in heavy if y == y2]
    floors = [(x, y, x2) for x, y, x2, y2 in heavy if y == y2 and y == max(line[1] for line in heavy)]
    front, side = sorted(sorted(floors, key=lambda f: f[0] - f[2])[:2])  # the feet stand on it too
    assert front[1] == side[1]
    assert (front[2] - front[0] - 24) / (side[2] - side[0] - 24) == pytest.approx(78 / 23, abs=0.02)
    assert (pytest.approx(front[0] + 12, abs=0.1), pytest.approx(front[2] - 12, abs=0.1)) in level
    assert {"78 wide", "23 deep", "29-3/4 high"} <= set(words(drawing))
