"""Generated jobs: whatever is asked, the plan can be cut as it is printed, and adds up."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest
from checker import faults
from cutting_jobs import PLY, QUICK, loose, pieces_of, plan_of
from hypothesis import example, given, settings
from hypothesis import strategies as st

from setout.plan.cutting import Budget, cutting

EIGHTHS = st.integers(8, 8 * 40).map(lambda n: f"{n}/8")
BOARDS = st.lists(
    st.tuples(EIGHTHS, st.integers(8, 8 * 24).map(lambda n: f"{n}/8"), st.integers(1, 4)).flatmap(
        lambda t: st.sampled_from([t, (*t, "any")])
    ),
    min_size=1,
    max_size=6,
)
SHOPS = st.sampled_from(
    [
        "",
        "saw a { kerf 1/8; breaks down sheets }",
        "saw a { kerf 3/32; breaks down sheets; crosscuts up to 50 }\n"
        "saw b { kerf 1/8; rips up to 26; takes up to 60 x 30 }",
        "saw a { kerf 1/8; rips up to 60; crosscuts up to 60 }",
        "saw a { kerf 1/10; rips up to 12; crosscuts up to 12; takes up to 40 x 20 }",
        "saw a { kerf 0; breaks down sheets }\nsaw b { kerf 1/16; rips up to 24; crosscuts up to 24 }",
    ]
)
TRIMS = st.sampled_from(["", "practice { edge_trim 0 }", "practice { edge_trim 1/16 }", "practice { edge_trim 1/2 }"])
RACKS = st.lists(
    st.tuples(st.integers(6, 60), st.integers(4, 40), st.booleans()).map(
        lambda t: f"{t[0]} x {t[1]}" + (f" grain along {t[1]}" if t[2] else "")
    ),
    max_size=3,
).map(lambda found: f"rack {{ ply: {', '.join(found)} }}" if found else "")


@settings(max_examples=60, deadline=None)
@given(BOARDS, SHOPS, TRIMS, RACKS, st.sampled_from(["", "on hand 1", "at most 1", "on hand 1; at most 0"]))
def test_every_job_can_be_cut(boards, shop, trims, rack, limits):
    stock = PLY.replace("price 70", f"price 70; {limits}" if limits else "price 70")
    pieces = pieces_of("\n".join([stock, shop, trims, rack, loose(boards)]))
    made = cutting(pieces, Budget(work=1500)).value
    assert faults(made, pieces) == []


@settings(max_examples=30, deadline=None)
@given(st.lists(st.tuples(st.integers(8, 8 * 60), st.integers(1, 5)), min_size=1, max_size=6), st.booleans())
@example([(8, 1), (9, 1), (184, 2), (389, 1)], False)  # a plan once took the stick on hand twice
def test_every_job_of_sticks_can_be_cut(lengths, offcuts):
    stock = 'stock lath "1x2" { stick 1-1/2 x 3/4 long 72, 96; price 5 each 72; price 7 each 96; on hand 1 of 72 }'
    parts = loose([(f"{length}/8", "3/2" if length % 3 else "1", count) for length, count in lengths], "lath")
    rack = "rack { lath: 31, 2 of 40 }\n" if offcuts else ""
    pieces = pieces_of(f"{stock}\n{rack}{parts}")
    made = cutting(pieces, Budget(work=1500)).value
    assert faults(made, pieces) == []


# --- properties -------------------------------------------------------------------------------------------------


@settings(max_examples=15, deadline=None)
@given(BOARDS, st.randoms())
def test_the_order_of_the_lines_doesnt_matter(boards, rng):
    """The marks go with the lines; what is bought and what is left doesn't."""
    shuffled = list(boards)
    rng.shuffle(shuffled)
    one, other = (plan_of(f"{PLY}\n{loose(rows)}", QUICK) for rows in (boards, shuffled))
    assert [(s.bought, s.bound, s.cost) for s in one.stocks] == [(s.bought, s.bound, s.cost) for s in other.stocks]


@settings(max_examples=10, deadline=None)
@given(BOARDS, st.integers(10, 90), st.integers(5, 40))
def test_an_offcut_makes_no_plan_dearer(boards, length, width):
    bare = plan_of(f"{PLY}\n{loose(boards)}").stocks[0]
    more = plan_of(f"{PLY}\nrack {{ ply: {length} x {width} }}\n{loose(boards)}").stocks[0]
    assert more.bound <= bare.bound
    assert more.bought <= bare.bought


@settings(max_examples=10, deadline=None)
@given(BOARDS)
def test_a_wider_kerf_never_lowers_the_bound(boards):
    def bound(kerf: str) -> int:
        return plan_of(f"{PLY}\nsaw a {{ kerf {kerf}; breaks down sheets }}\n{loose(boards)}").stocks[0].bound

    bounds = [bound(kerf) for kerf in ("0", "1/16", "1/8", "1/4")]
    assert bounds == sorted(bounds)


@pytest.mark.parametrize("seed", range(6))
def test_a_job_fits_the_sheets_it_was_cut_from(seed):
    """A few straight cuts through whole sheets, kerf taken off: what comes out goes back in."""
    rng = random.Random(seed)
    sheets = 1 + seed % 2
    parts = [part for _ in range(sheets) for part in _cut_up(Fraction(96), Fraction(48), rng, 3)]
    text = f"{PLY}\npractice {{ edge_trim 0 }}\n" + loose([(a, b, 1, "any") for a, b in parts])
    made = plan_of(text, Budget(work=100_000), taste=None)
    assert made.stocks[0].bought == sheets


def _cut_up(a: Fraction, b: Fraction, rng, depth: int) -> list[tuple[Fraction, Fraction]]:
    kerf = Fraction(1, 8)
    if not depth or min(a, b) < 12:
        return [(a, b)]
    if rng.random() < a / (a + b):
        at = Fraction(rng.randint(4, int(a) - 5))
        return _cut_up(at, b, rng, depth - 1) + _cut_up(a - at - kerf, b, rng, depth - 1)
    at = Fraction(rng.randint(4, int(b) - 5))
    return _cut_up(a, at, rng, depth - 1) + _cut_up(a, b - at - kerf, rng, depth - 1)
