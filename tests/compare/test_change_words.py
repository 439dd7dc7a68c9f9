"""What a change sheet says, in the builder's words."""

from __future__ import annotations

from functools import cache

from comparing import STOCKS, both, compared, shop
from compiling import SPECS
from test_changes import JOB

from setout.compare import compare
from setout.write import job
from setout.write.changes import Names, as_text, build, files


def sheet(old: str, new: str) -> str:
    """Without the breaks of its lines, and with single blanks."""
    return " ".join(as_text(build(compared(old, new), Names("a", "b"))).split())


@cache
def spec(name: str) -> str:
    return (SPECS / f"{name}.rod").read_text("utf-8")


def edited(name: str, *edits: tuple[str, str]) -> str:
    text = spec(name)
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    return sheet(spec(name), text)


# --- drawers ---------------------------------------------------------------------------------------------


def test_a_drawer_left_out_of_a_bank_renumbers_the_rest():
    says = edited("sewing_wall", ("heights 4, 4, 6, rest", "heights 4, 6, rest"))
    assert "left base bay drawer 2, right base bay left out: Drawer of Chest of drawers, 6 boards drawer 2" in says
    assert "was called left base bay drawer 4; 4-1/16 more high (8-1/2 → 12-9/16)" in says
    assert "was called left base bay drawer 3; moves 4-1/16 up" in says


def test_a_front_that_is_nailed_on_is_no_drawer():
    says = edited(
        "pantry_pullouts",
        ("heights 160, 200, rest", "heights 160, rest"),
        ("dummy 3", "dummy 2"),
        ("drawer.3.front_panel", "drawer.2.front_panel"),
    )
    assert "plain lower bay drawer 2 left out: Drawer of Plain pull-outs, 6 boards" in says
    assert "was called plain lower bay drawer 3; 203 more high (84 → 287)" in says


# --- sizes and places ------------------------------------------------------------------------------------


def test_what_grows_at_one_end_has_not_moved():
    for old, new in (("deep 12", "deep 12-3/4"), ("deep 12-3/4", "deep 12")):
        says = sheet(JOB.replace("deep 12", old), JOB.replace("deep 12", new))
        assert f"3/4 {'more' if old == 'deep 12' else 'less'} deep ({old[5:]} → {new[5:]})" in says
        assert "moves" not in says and "elsewhere" not in says


def test_a_thickness_is_printed_as_finely_as_it_was_measured():
    old = shop("part a of ply { size 8 x 5 }").replace("3/4 {", "23/32 {").replace("48 x 3/4", "48 x 23/32")
    says = sheet(old, old.replace("23/32", "45/64"))
    assert "3/4 plywood 1/64 thinner (23/32 → 45/64)" in says and "measured better" in says
    assert "measured better" not in sheet(old, old.replace("23/32", "1/2"))


def test_a_notch_that_is_made_larger_is_not_cut_anew():
    notch = "notch wide W from left, deep 2 from front"
    board = f"part a of ply {{ level at LOW; wide 8 from left; deep 5 from front; {notch} }}"
    says = sheet(*(shop(board.replace("wide W", wide)) for wide in ("wide 2", "wide 3")))
    assert "deepen or widen 1 housing or notch" in says


def test_grain_that_turned_though_nobody_said_it():
    hole = "hole 1 at wide left + 9, deep front + 10"
    board = f"part a of ply {{ level at LOW; wide W from left; deep 20 from front; {hole} }}"
    old, new = (shop(board.replace("wide W", wide)) for wide in ("wide 24", "wide 18"))
    says = sheet(old, new)
    assert "its grain would run the wrong way: say `grain wide` and it can be trimmed" in says
    assert "and it can be trimmed" not in sheet(old, new.replace("; deep", "; grain deep; deep"))


def test_the_one_turn_that_matters():
    hole = "hole 1 at wide left + {}, deep front + {}"
    board = "part a of ply {{ level at LOW; wide {} from left; deep {} from front; grain {}; {} }}"
    was = shop(board.format(9, 6, "wide", hole.format(2, 1)))
    assert "(the old right edge becomes the front)" in sheet(was, shop(board.format(6, 8, "deep", hole.format(1, 6))))


# --- what both are ---------------------------------------------------------------------------------------

PLAIN = shop("part a of ply { size 8 x 5; count 5 }")


def called(title: str, mark: str) -> str:
    return f'project "{title}" {{ units in; mark to {mark} }}\n{PLAIN}'


def test_another_title_and_another_mark_are_told():
    says = sheet(called("Old", "1/32"), called("New", "1/16"))
    assert "The job is called New now, no longer Old." in says
    assert "All sizes are printed to 1/16 in now, no longer to 1/32 in" in says
    assert compared(called("Old", "1/32"), called("Old", "1/16")).changed


def test_specs_that_have_little_to_do_with_each_other():
    other = shop("part b of half { level at LOW; wide 8 from left; deep 5 from front }")
    assert "These two share no board." in sheet(PLAIN, other)
    assert "compare a spec that includes it" in sheet(STOCKS, STOCKS.replace("3/4 plywood", "plywood"))


def test_copies_that_are_too_many_are_spare():
    says = sheet(PLAIN, PLAIN.replace("count 5", "count 4"))
    assert "spare: more than are wanted" in says and "lost: another" not in says


def test_no_difference_prints_as_nought():
    for name, *edits in (
        ("sewing_wall", ("heights 4, 4, 6, rest", "heights 4, 6, rest")),
        ("bookcase", ("bookcase", "case")),
    ):
        assert not any(f" {sign}0.0" in edited(name, *edits) for sign in "+−")


def test_the_sheet_carries_no_revision_that_no_packet_has():
    old, new = both(called("Old", "1/32"), called("New", "1/32"))
    assert old.value and new.value
    page = files(compare(old.value, new.value), Names("a", "b"), old.value, new.value, frozenset({"html"}))
    html = page["changes.html"].decode()
    assert "new spec" in html and "Change sheet" in html
    assert not any(job.build(plan).revision in html for plan in (old.value, new.value))
