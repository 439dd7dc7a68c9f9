"""Measures that are still to be taken: the values looked at, and what hangs on them."""

from __future__ import annotations

from fractions import Fraction as F

from setout.geometry import Axis

JOB = """
size wide 60, high 40, deep 12
measure bed "the machine's bed" expect 2 to 5
measure gap "the gap beside it" expect 10 to 12
"""
DECK = "part deck of ply { level; top at top - bed; wide 30 from left }\n"
PANEL = "part panel of ply { facing at back; high from bottom to deck.bottom; wide gap from left; grain high }\n"


def test_a_spec_without_measures_has_one_scene(checked):
    made = checked("size wide 30, high 40, deep 12\npart shelf of ply { level at bottom }").value
    assert (len(made.scenes), made.open_measures) == (1, ())


def test_all_low_then_each_high_then_all_high(checked):
    made = checked(JOB + DECK + PANEL).value
    taken = [(scene.taken["bed"], scene.taken["gap"]) for scene in made.scenes]
    assert taken == [(2, 10), (5, 10), (2, 12), (5, 12)]
    assert made.open_measures == ("bed", "gap")
    assert {tuple(scene.boards) for scene in made.scenes} == {("deck", "panel")}
    assert made.drawn.boards["panel"].box.size(Axis.HIGH) == 40 - 5 - F(3, 4)


def test_a_measure_that_was_taken_has_its_value_everywhere(checked):
    made = checked(JOB + DECK, bed="3-7/16").value
    assert made.open_measures == ("gap",)
    assert {scene.boards["deck"].box.hi[1] for scene in made.scenes} == {40 - F(55, 16)}
    assert not any(any(board.held) for scene in made.scenes for board in scene.boards.values())


def test_a_board_is_held_by_the_measures_its_size_hangs_on(checked):
    boards = checked(JOB + DECK + PANEL).value.drawn.boards
    assert boards["panel"].held == (frozenset({"gap"}), frozenset({"bed"}), frozenset())
    assert not any(boards["deck"].held)  # it stands higher or lower, but is the same board


def test_what_moves_at_both_ends_alike_is_not_held(checked):
    more = "part shelf of ply { level; top at deck.bottom - 8; wide 30 from left }\n"
    more += "part divider of ply { upright at left; high between deck and shelf; grain high }\n"
    assert not any(checked(JOB + DECK + more).value.drawn.boards["divider"].held)


def test_what_bends_is_held_even_where_both_ends_agree(checked):
    text = (
        JOB + 'measure lip "lip" expect 1 to 3\npart a of ply { level at top; wide 20 + max(lip, 4 - lip) from left }'
    )
    assert checked(text).value.drawn.boards["a"].held[Axis.WIDE] == {"lip"}


def test_a_finding_for_some_values_names_them(checked):
    (found,) = checked(
        JOB + "part tall of ply { facing at back; high 36 + bed from bottom; wide 20 from left; grain high }"
    ).diagnostics
    assert (found.code, "when `bed` is 5 in" in found.message) == ("rod263", True)
    low = "part low of ply { facing at back; high from bottom + 3 to bottom + bed; wide 20 from left; grain wide }"
    (found,) = checked(JOB + low).diagnostics
    assert (found.code, "when `bed` is 2 in" in found.message) == ("rod258", True)


def test_a_finding_for_all_values_is_told_once_and_plainly(checked):
    (found,) = checked(
        JOB + "part tall of ply { facing at back; high 50 + bed from bottom; wide 20 from left; grain high }"
    ).diagnostics
    assert found.code == "rod263" and "when" not in found.message


def test_a_loose_board_that_some_values_leave_nothing_of(checked):
    """The scenes then hold different boards, and nothing is handed on."""
    made = checked('measure niche "wide" expect 0 to 30\npart shelf of ply { size niche x 11; count 1 }')
    assert [d.code for d in made.diagnostics] == ["rod259"] and made.value is None


def test_members_may_not_be_counted_by_a_measure(checked):
    text = JOB + "part shelf of ply { level; repeat floor(bed / 1in) every 6 from bottom }"
    assert len(checked(text).diagnostics) == 1
    assert len(checked(JOB + "when bed > 3 { part shelf of ply { level at bottom } }").diagnostics) == 1


def test_grain_that_a_measure_decides_has_to_be_said(codes):
    text = JOB + DECK + "part a of ply { facing at back; high 11 from bottom; wide gap from left"
    assert codes(text + " }") == ["rod276"]
    assert codes(text + "; grain wide }") == []


def test_a_measure_that_nothing_hangs_on_is_told_of(codes):
    assert codes(JOB + DECK + PANEL) == []
    assert codes(JOB + DECK) == ["rod307"]
    assert codes(JOB + DECK + "let half = gap / 2\n") == ["rod307"]
    assert codes(JOB) == []
