"""Strength, weight, moisture, lifting, carrying: published formulas and tables, and nothing of specs.

Inches, pounds, psi; floats allowed, for nothing here decides a size. Every figure stands in a table with its source.
"""

from setout.strength.beams import (
    Layer,
    Limit,
    casework_limit,
    edged,
    flat,
    longest_span,
    longest_span_of,
    sag,
    shelf_test_limit,
    stiffness,
    stiffness_needed,
    thickness_needed,
)
from setout.strength.carrying import (
    CarriedIn,
    Way,
    carried_in,
    fits_slanting,
    rise_squared,
    smallest_section,
    stands_up,
    ways_through,
)
from setout.strength.fasteners import (
    CAUTION,
    Cleat,
    CleatEstimate,
    lag_withdrawal,
    lead_hole,
    least_penetration,
    screw_lateral,
    screw_withdrawal,
    screw_withdrawal_ultimate,
    thread_held,
    wall_cleat,
)
from setout.strength.lifting import Lift, lifting_index, one_person_limit, recommended_weight
from setout.strength.moisture import Movement, change, change_coefficient, gap_to_leave, moisture_content, movement
from setout.strength.panels import (
    Panel,
    all_panels,
    diagonals_differ,
    find_panel,
    size_range,
    thickness_range,
    weight,
)
from setout.strength.species import Species, all_species, find_species
from setout.strength.tables import Figure, figure, figures
from setout.strength.tipping import in_tip_over_scope, tipping_load, tips
