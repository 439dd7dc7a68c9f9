"""What can be the matter when parts are sized and set: one function per problem, facts in, Diagnostic out."""

from setout.place.problems.alike import (
    pitch_too_small,
    repeat_does_not_fit,
    repeated_without_size,
    too_large,
    too_many_measures,
    too_many_members,
)
from setout.place.problems.cases import in_case
from setout.place.problems.features import (
    cutout_at_edge,
    feature_off_board,
    hole_off_board,
    hole_too_deep,
    no_such_mitre,
    notch_inside,
    notch_right_across,
)
from setout.place.problems.hanging import left_out, loop, no_such_member
from setout.place.problems.hardware import inset_missing, inset_too_large, layout_unlike_count
from setout.place.problems.holding import (
    assembly_without_size,
    nested_too_deep,
    no_size,
    not_a_quarter,
    outside,
    place_unlike_gap,
)
from setout.place.problems.standing import (
    middle_without_size,
    no_gap,
    no_position,
    not_above_zero,
    nothing_left,
    said_twice,
    same_thing,
    size_is_settled,
    size_without_position,
)
from setout.place.problems.stock import (
    grain_unsettled,
    laid_unlike_stock,
    larger_than_sheet,
    longer_than_sticks,
    rip_too_wide,
)

__all__ = [
    "assembly_without_size",
    "cutout_at_edge",
    "feature_off_board",
    "grain_unsettled",
    "hole_off_board",
    "hole_too_deep",
    "in_case",
    "inset_missing",
    "inset_too_large",
    "laid_unlike_stock",
    "larger_than_sheet",
    "layout_unlike_count",
    "left_out",
    "longer_than_sticks",
    "loop",
    "middle_without_size",
    "nested_too_deep",
    "no_gap",
    "no_position",
    "no_size",
    "no_such_member",
    "no_such_mitre",
    "not_a_quarter",
    "not_above_zero",
    "notch_inside",
    "notch_right_across",
    "nothing_left",
    "outside",
    "pitch_too_small",
    "place_unlike_gap",
    "repeat_does_not_fit",
    "repeated_without_size",
    "rip_too_wide",
    "said_twice",
    "same_thing",
    "size_is_settled",
    "size_without_position",
    "too_large",
    "too_many_measures",
    "too_many_members",
]
