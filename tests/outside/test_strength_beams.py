"""Sag: published spans and limits, and a frame library that knows nothing of setout. Rows: check-values.md, 4."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setout.strength import (
    CAUTION,
    Layer,
    casework_limit,
    edged,
    figure,
    find_panel,
    find_species,
    flat,
    longest_span,
    longest_span_of,
    sag,
    shelf_test_limit,
    stiffness,
    stiffness_needed,
    thickness_needed,
)

# Architectural Woodwork Standards, 1st ed. 2009, 4.4.14.10,
# adjustable shelf (rows R): modulus, thickness, lb/ft2, longest span in inches
SPANS = [
    *((950_000, "3/4", 40, 40), (950_000, "3/4", 50, 37), (950_000, "1", 40, 53), (950_000, "1", 50, 49)),
    *((1_800_000, "3/4", 40, 49), (1_800_000, "3/4", 50, 46), (1_800_000, "1", 40, 66), (1_800_000, "1", 50, 61)),
    *((1_820_000, "3/4", 40, 49), (1_820_000, "3/4", 50, 46), (1_820_000, "1", 40, 66), (1_820_000, "1", 50, 61)),
]


@pytest.mark.parametrize(("modulus", "thick", "psf", "published"), SPANS)
def test_the_longest_shelf_as_published(modulus, thick, psf, published):
    """All twelve spans of the Architectural Woodwork Standards, 4.4.14.10, within an inch; never beyond the exact root
    of 5 w L^4 / 384 E I = L / 144, that is L^3 = 6.4 E t^3 / q with q in lb/ft2."""
    span = longest_span(modulus, F(thick), psf)
    cube = F(32, 5) * modulus * F(thick) ** 3 / psf
    assert abs(span - published) <= 1
    assert span**3 <= cube < (span + F(1, 16)) ** 3


def test_the_moduli_of_that_table_are_those_we_ship():
    """The same table: Douglas-fir veneer plywood plain and with hardwood faces, solid northern red oak."""
    assert [find_panel(name).modulus for name in ("plywood", "hardwood-faced plywood")] == [950_000, 1_800_000]
    assert find_species("red oak").modulus == 1_820_000


@pytest.mark.parametrize(("ends", "inches"), [("simple", "0.0886"), ("clamped", "0.0177")])
def test_the_reference_shelf(ends, inches):
    """Red oak, 36 x 11-1/4 x 3/4 in, 35 lb to the foot (row D, confirmed there with a frame library)."""
    found = sag(35 * 3, 36, flat(F("11.25"), F(3, 4), 1_820_000), ends)
    assert abs(found - F(inches)) < F("0.00005")


def test_clamped_ends_sag_a_fifth():
    """5 w L^4 / 384 E I against w L^4 / 384 E I (Wood Handbook eq. 9-2, Table 9-1, row R; the fifth, row D)."""
    assert sag(100, 40, 10**6, "simple") == 5 * sag(100, 40, 10**6, "clamped")


def test_the_metric_form_gives_the_same():
    """A European association of MDF makers: d = 5 W g L^3 / 32 E b t^3: 20 kg, 800 x 300 x 18 mm, 2500 N/mm2 ->
    3.59 mm (row R; the case, row D)."""
    pounds, mm, psi = 20 / 0.45359237, 1 / 25.4, 2500 / 0.006894757  # 1 lb, 1 in, 1 psi: section 8, row R
    found = sag(pounds, 800 * mm, flat(300 * mm, 18 * mm, psi)) / mm
    assert found == pytest.approx(3.59, abs=0.01)


@pytest.mark.parametrize(
    ("limit", "span", "allowed"),
    [
        (casework_limit, 36, "0.250"),  # L/144, Architectural Woodwork Standards 1.2.21.3
        (shelf_test_limit, 36, "0.1875"),  # 1/16 in per foot, ANSI/KCMA A161.1-2012
        (shelf_test_limit, 60, "1/4"),  # the same: at most 1/4 in
    ],
)
def test_limits_at_a_span(limit, span, allowed):
    assert limit().allowed(F(span)) == F(allowed)


def test_loads_as_published():
    """40 and 50 lb/ft2, at most 200 lb on a shelf (Architectural Woodwork Standards 1.2.21.2); 15 lb/ft2 (A161.1, which
    prints 718 Pa), on 36 x 11-1/4 in 42.2 lb (row D)."""
    assert [figure(name) for name in ("shelf_load", "book_load", "shelf_load_most")] == [40, 50, 200]
    assert round(float(figure("cabinet_load")) * 47.88) == 718
    assert round(float(figure("cabinet_load") * 36 * F("11.25") / 144), 1) == 42.2


def test_creep_as_published():
    """Wood Handbook ch. 5: the first sag may about double; MDF up to half as much again (row R)."""
    assert find_panel("plywood").creep == 2 and find_panel("mdf").creep == F(3, 2)


# --- against PyNiteFEA -----------------------------------------------------------------------------------------

HELD = {"simple": ("pin", "roll"), "clamped": ("fixed", "fixed"), "cantilever": ("fixed", "free")}
FIXED = dict.fromkeys(("support_DX", "support_DY", "support_DZ", "support_RX", "support_RY", "support_RZ"), True)
SUPPORTS = {
    "pin": {**FIXED, "support_RZ": False},
    "roll": {**FIXED, "support_RZ": False, "support_DX": False},
    "fixed": FIXED,
    "free": {},
}


def by_frame(load, span, width, thick, modulus, ends, at):
    """Deepest deflection by the finite-element library, from the board's sizes."""
    from Pynite import FEModel3D

    frame = FEModel3D()
    for name, x in (("left", 0.0), ("middle", span / 2), ("right", span)):
        frame.add_node(name, x, 0.0, 0.0)
    frame.add_material("wood", modulus, modulus / 16, 0.3, 1.0)
    frame.add_section("board", width * thick, thick * width**3 / 12, width * thick**3 / 12, 1.0)
    for name, a, b in (("first", "left", "middle"), ("second", "middle", "right")):
        frame.add_member(name, a, b, "wood", "board")
        if at == "spread":
            frame.add_member_dist_load(name, "Fy", -load / span, -load / span)
    for node, kind in zip(("left", "right"), HELD[ends], strict=True):
        frame.def_support(node, **SUPPORTS[kind])
    if at != "spread":
        frame.add_node_load("middle" if at == "middle" else "right", "FY", -load)
    frame.analyze(check_statics=False)
    return max(-frame.nodes[node].DY["Combo 1"] for node in ("middle", "right"))


@pytest.mark.parametrize(
    ("ends", "at"),
    [
        *(("simple", "spread"), ("clamped", "spread"), ("simple", "middle"), ("clamped", "middle")),
        *(("cantilever", "spread"), ("cantilever", "end")),
    ],
)
@pytest.mark.parametrize("board", [(105.0, 36.0, 11.25, 0.75, 1.82e6), (60.0, 31.5, 11.8, 0.709, 3.6e5)])
def test_sag_against_a_frame_library(board, ends, at):
    load, span, width, thick, modulus = board
    ours = sag(load, span, flat(width, thick, modulus), ends, at)
    assert float(ours) == pytest.approx(by_frame(*board, ends, at), rel=1e-6)


# --- edge strips -----------------------------------------------------------------------------------------------


def test_a_strip_of_the_same_wood_at_full_depth_is_a_wider_board():
    assert edged(11, F(3, 4), 10**6, F(3, 4), F(3, 4), 10**6) == flat(F(47, 4), F(3, 4), 10**6)


def test_layers_glued_up_are_one_thick_board():
    """Two equal boards face to face: eight times as stiff as one."""
    halves = [Layer(10, F(3, 4), low, 10**6) for low in (0, F(3, 4))]
    assert stiffness(halves) == flat(10, F(3, 2), 10**6) == 8 * flat(10, F(3, 4), 10**6)


def test_an_edge_strip_against_slices():
    """The stiffness of a shelf with a strip below its front, added up over thin slices instead."""
    width, thick, soft, strip, deep, hard = 11.25, 0.75, 9.5e5, 0.75, 1.5, 1.82e6
    slices, step = [], 0.0005
    for n in range(int(deep / step)):
        y = thick - deep + (n + 0.5) * step
        slices.append((y, step * (strip * hard + (width * soft if y > 0 else 0))))
    middle = sum(y * ea for y, ea in slices) / sum(ea for _, ea in slices)
    added = sum(ea * (y - middle) ** 2 for y, ea in slices)
    assert float(edged(width, thick, soft, strip, deep, hard)) == pytest.approx(added, rel=1e-4)


# --- what would mend it ----------------------------------------------------------------------------------------


@settings(max_examples=60, deadline=None)
@given(
    span=st.integers(12, 96),
    psf=st.integers(5, 120),
    modulus=st.integers(250_000, 2_200_000),
    limit=st.sampled_from([casework_limit(), shelf_test_limit()]),
    creep=st.sampled_from([F(1), F(3, 2), F(2)]),
)
def test_the_thickness_needed_is_just_enough(span, psf, modulus, limit, creep):
    thick = thickness_needed(span, psf, modulus, limit, creep=creep)
    assert longest_span(modulus, thick * 1.0001, psf, limit, creep=creep) >= span
    assert longest_span(modulus, thick * 0.999, psf, limit, creep=creep) < span


@settings(max_examples=60, deadline=None)
@given(span=st.integers(12, 96), per_inch=st.integers(1, 20), ends=st.sampled_from(["simple", "clamped", "cantilever"]))
def test_the_stiffness_needed_sags_to_the_limit(span, per_inch, ends):
    needed = stiffness_needed(F(span), F(per_inch), ends=ends)
    assert sag(per_inch * span, F(span), needed, ends) == casework_limit().allowed(F(span))
    assert longest_span_of(needed, per_inch, ends=ends) == span


def test_nothing_on_it_spans_as_far_as_is_looked():
    assert longest_span_of(1, 0) == 1200


def test_the_caution_names_who_decides():
    assert "Local codes and licensed practice govern" in CAUTION
