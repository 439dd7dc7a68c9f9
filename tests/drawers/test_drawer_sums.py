"""Fronts, reveals and gaps add up to the opening, to the exact fraction."""

from __future__ import annotations

from fractions import Fraction as F

from drawer_specs import case, drawers, the_bank
from hypothesis import given, settings
from hypothesis import strategies as st

SIXTY_FOURTHS = st.integers(1, 16).map(lambda n: F(n, 64))
HEIGHTS = st.lists(st.integers(4 * 32, 9 * 32).map(lambda n: F(n, 32)), min_size=1, max_size=5)
THICK = st.sampled_from(["23/32", "3/4", "1/2", "18mm", "19/32"])


@settings(max_examples=25, deadline=None)
@given(
    HEIGHTS,
    SIXTY_FOURTHS,
    THICK,
    st.integers(0, 8).map(lambda n: F(n, 64)),
    st.sampled_from(["inset", "overlay"]),
    st.data(),
)
def test_fronts_and_gaps_make_the_opening(heights, reveal, thick, overlay, style, data):
    n = len(heights) + 1
    at = data.draw(st.integers(0, len(heights)))
    said = [str(h) for h in heights]
    said.insert(at, "rest")
    gaps = (n + 1) * reveal if style == "inset" else (n - 1) * reveal - 2 * overlay
    high = sum(heights) + gaps + F(21, 4)
    more = f"fronts of ply {style}{'' if style == 'inset' else f' {overlay}'} reveal {reveal}"
    text = case(drawers(f"heights {', '.join(said)}", more), wide=F(73, 4), high=high, deep=24, ply=thick)
    bank = the_bank(text)
    fronts = [d.front[1] for d in bank.drawers]
    assert bank.opening == (F(73, 4), high, F(24))
    assert fronts[at] == F(21, 4)
    assert sum(fronts) + gaps == high
    for upper, lower in zip(bank.drawers, bank.drawers[1:]):
        assert upper.front_low - (lower.front_low + lower.front[1]) == reveal
    edge = reveal if style == "inset" else -overlay
    assert bank.drawers[-1].front_low == edge and bank.drawers[0].front_low + fronts[0] == high - edge
    assert {d.box[0] + 2 * F(1, 2) for d in bank.drawers} == {bank.opening[0]}
