"""The catalogue of codes, and the nearest names."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setout.diagnostics import Severity
from setout.diagnostics.catalogue import CODES, codes, page
from setout.diagnostics.suggest import did_you_mean, nearest


def test_every_page_is_listed_by_number_with_its_title():
    entries = codes()
    assert [e.code for e in entries] == sorted(CODES) and len(set(CODES)) == len(CODES)
    entry = next(e for e in entries if e.code == "rod110")
    assert (entry.severity, entry.title) == (Severity.ERROR, "Something else was expected here")
    assert page("rod110").startswith(f"# rod110 error: {entry.title}\n")


@pytest.mark.parametrize("code", ["rod000", "rod1", "", "../pages/rod110", "ROD110", "rod110.md"])
def test_there_is_no_page_for_anything_else(code):
    assert page(code) is None


@pytest.mark.parametrize(
    ("word", "known", "near"),
    [
        ("uprigt", ["level", "upright", "facing"], "upright"),
        ("left_sid", ["left_side", "right_side", "lift"], "left_side"),
        ("PLY", ["ply", "thin"], "ply"),
        ("tpo", ["top", "left"], "top"),
    ],
)
def test_the_nearest_name_comes_first(word, known, near):
    assert nearest(word, known)[0] == near
    assert f"`{near}`" in did_you_mean(word, known)


def test_nothing_is_suggested_when_nothing_is_near():
    assert nearest("worktop", ["ply", "thin"]) == () and did_you_mean("worktop", ["ply"]) == ""
    assert nearest("a" * 10_000, ["a" * 10_000]) == ()


@given(st.text(), st.lists(st.text()), st.randoms())
def test_suggestions_are_known_names_in_a_settled_order(word, known, rng):
    near = nearest(word, known)
    assert set(near) <= set(known) and len(near) <= 3
    shuffled = known.copy()
    rng.shuffle(shuffled)
    assert nearest(word, shuffled) == near
