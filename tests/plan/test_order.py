"""The build order as a builder reads it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from setout.plan.cutting.wanted import demands, wants

TWO = """
place box as first { at left, bottom, back }
place box as second { at bottom, back; wide from first.right + 30 }
"""


def before(steps: list[str], a: str, b: str) -> bool:
    return steps.index(a) < steps.index(b)


def test_one_box_from_saw_to_place(built):
    assert built("place box { at left, bottom, back }") == [
        "cut box", "machine box", "assemble box", "cure box", "set box",
    ]  # fmt: skip


def test_two_of_a_kind_are_sawn_together_and_put_together_one_by_one(built):
    assert built(TWO) == [
        "cut box", "machine box", "assemble first", "cure first", "assemble second", "cure second",
        "set first", "set second",
    ]  # fmt: skip


def test_one_box_is_done_before_the_next_is_begun(built):
    steps = built("place box as low { at left, bottom, back }" + TALL)
    assert before(steps, "cure second_kind", "set low") and before(steps, "cure low", "cut second_kind")


TALL = """
assembly tall "Tall" {
  size wide 12, high 60, deep 16
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part top_panel of ply { level at top; wide between left_side and right_side }
  joint top_panel to left_side, right_side { pockets on bottom; glue }
}
place tall as second_kind { wide from low.right + 20; at bottom, back }
"""


def test_glue_cures_for_the_hours_of_practice(compiled):
    plan, _ = compiled("place box { at left, bottom, back }\npractice { glue_cure_hours 12 }")
    waits = {f"{s.id.verb} {s.id.target}": s.wait for s in plan.order.steps}
    assert waits["cure box"] == 12 and waits["assemble box"] == 0


def test_what_carries_stands_before_what_it_carries(built):
    steps = built(TWO.replace("first", "upper").replace("at left, bottom, back", "at left, back; bottom at lower.top")
                  .replace("second", "lower").replace("wide from upper.right + 30", "at left"))  # fmt: skip
    assert before(steps, "set lower", "set upper")


def test_a_worktop_goes_over_its_boxes_and_is_fastened_last(built):
    steps = built(TWO + """
part worktop of ply { level; bottom at first.top; wide over first and second; deep from first.front to first.back }
joint worktop to first, second { screws through worktop }
""")  # fmt: skip
    assert steps[-4:] == ["set first", "set second", "set worktop", "fasten worktop"]


def test_what_only_the_wall_carries_is_hung(built):
    steps = built("""
place box as low { at left, bottom, back }
assembly rack "Rack" {
  size wide 34, high 12, deep 10
  part back_panel of ply { facing at back }
  part shelf of ply { level at bottom; deep from front to back_panel.front }
  joint shelf to back_panel { pockets on bottom }
}
place rack { at left, back; bottom at bottom + 50 }
joint rack to room.back { screws through rack.back_panel into studs }
joint low to room.back { screws }
""")  # fmt: skip
    assert "hang rack" in steps and "set low" in steps
    assert "fasten low" in steps and "fasten rack" not in steps


def test_hardware_goes_on_before_setting_in_place(built):
    lines = "place box { at left, back; bottom at bottom + 1 }\n"
    lines += "fit 4 foot { at corners, inset 2, under box.floor_panel }"
    steps = built(lines)
    assert before(steps, "cure box", "fit box.foot") and before(steps, "fit box.foot", "set box")
    assert before(built(lines + "\norder { set box before fit foot }"), "set box", "fit box.foot")


HELD = """
measure bed "height of the bed" expect 2 to 5
place box { at left, bottom, back }
part riser of ply { upright at left + 40; high from bottom to bottom + 20 - bed; deep 16 to back; grain high }
part shelf of ply { level; bottom at riser.top; wide 10 from riser.left; deep 16 to back }
"""


def test_held_boards_are_cut_after_the_measuring_the_others_before(compiled, built):
    plan, _ = compiled(HELD)
    steps = {f"{s.id.verb} {s.id.target}": s for s in plan.order.steps}
    assert plan.order.steps[0].id.verb == "measure"
    assert [n.verb for n in steps["cut riser"].needs] == ["measure"]
    assert steps["cut shelf"].needs == ()
    # the shelf's size is known, not where it goes
    assert "measure-place" in [r.kind for r in steps["set shelf"].reasons]
    assert before(built(HELD + "order { set box before measure bed }"), "set box", "measure bed")


HOLES_HELD = """
measure skirt "skirting" expect 1 to 2
place box { at left, bottom; back at back - skirt }
part seat of ply { level; on box; wide 26 from left; deep 20 to back }
part rail of ply { facing at back; wide 26 from left; bottom at 60; high 4 }
joint seat to box { screws }
part flap of ply { level; top at box.top - 4; wide between box.left_side and box.right_side; deep 10 from box.front }
joint flap to box { pockets on bottom }
"""


def test_where_only_holes_hang_on_a_measure_the_board_is_cut_with_the_rest(compiled):
    plan, _ = compiled(HOLES_HELD)
    seat = next(piece for piece in plan.pieces.pieces if piece.boards == ("seat",))
    assert (seat.measures, seat.sized_by, seat.worked_by) == (("skirt",), (), ("skirt",))
    wanted = (want for demand in demands(plan.pieces) for want in wants(demand, Fraction(1, 8)))
    assert not [member for want in wanted for member in want.members if member.reserved]
    reasons = {f"{s.id.verb} {s.id.target}": [(r.after.verb, r.kind) for r in s.reasons] for s in plan.order.steps}
    cut = next(step for step in plan.order.steps if step.id.verb == "cut" and (seat.mark, 1) in step.marks)
    machined = next(step for step in plan.order.steps if step.id.verb == "machine" and (seat.mark, 1) in step.marks)
    assert len(cut.marks) > 1 and not cut.reasons
    assert [mark for mark, _ in machined.marks] == [seat.mark]
    assert {(r.after.verb, r.kind) for r in machined.reasons} == {("cut", "cut-first"), ("measure", "measure-holes")}
    assert ("measure", "measure-place") in reasons["set box"]


def test_a_drawer_s_place_is_in_its_case(compiled):
    """The case moves with the measure, and the drawers with it: only the case waits for that."""
    plan, _ = compiled("""
hardware slide "slides, 10 in" { slides side; length 10; clearance 1/2; height 1-3/4; screws at 1, 9 }
measure skirt "skirting" expect 1 to 2
assembly chest "Chest" {
  size wide 24, high 20, deep 16
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part floor_panel of ply { level at bottom; wide between left_side and right_side }
  joint floor_panel to left_side, right_side { pockets on bottom; glue }
  opening bay { wide between left_side and right_side; high from floor_panel.top to top; deep from front to back }
  drawers in bay {
    heights 5, rest; slides slide; box of ply; bottom of ply in groove
    fronts of ply inset reveal 1/16; corners pockets
  }
}
place chest { at left, bottom; back at back - skirt }
""")
    waiting = [step.id.target for step in plan.order.steps if any(r.after.verb == "measure" for r in step.reasons)]
    assert waiting == ["chest"]
    assert len([step for step in plan.order.steps if step.id.verb == "set"]) == 3


def test_a_measure_once_taken_is_no_step_and_its_order_lines_rest(compiled):
    plan, found = compiled(HELD + "order { set box before measure bed }", settings={"bed": "3"})
    assert not found and "measure" not in {s.id.verb for s in plan.order.steps}


def test_an_inner_assembly_is_made_before_the_one_it_is_joined_into(built):
    steps = built("""
assembly wing "Wing" {
  size wide 60, high 30, deep 16
  place box as left_box { at left, bottom, back }
  place box as right_box { at right, bottom, back }
  part link of ply { level; bottom at left_box.top; wide over left_box and right_box }
  joint link to left_box, right_box { screws through link }
}
place wing { at left, bottom, back }
""")  # fmt: skip
    assert steps[-1] == "set wing" and before(steps, "cure wing.left_box", "assemble wing")
    assert "set wing.left_box" not in steps


def test_a_job_that_is_one_assembly(built):
    assert built("""
size wide 24, high 20, deep 16
part left_cheek of ply { upright at left; grain high }
part right_cheek mirrors left_cheek
part bed of ply { level at bottom; wide between left_cheek and right_cheek }
joint bed to left_cheek, right_cheek { pockets on bottom }
""") == ["cut project", "machine project", "assemble project", "set project"]  # fmt: skip


def test_loose_boards_are_only_cut(built):
    assert built("part shelf of ply { size 30 x 11; count 4 }") == ["cut shelf"]
    assert built("part a of ply { size 30 x 11; count 4 }\npart b of ply { size 9 x 9; count 1 }") == ["cut project"]


@pytest.mark.parametrize("back", ["brads", "rabbet depth 3/8; brads", "rabbet depth 3/8; brads; glue"])
def test_housed_parts_go_in_first_and_backs_last(compiled, back):
    plan, _ = compiled("""
assembly case "Case" {
  size wide 24, high 30, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part back_panel of ply { facing at back; wide between left_side and right_side; grain high }
  part shelf of ply { level at bottom + 10; wide between left_side and right_side; deep from front to back_panel.front }
  part kick of ply { facing at front; wide between left_side and right_side; high 3 from bottom }
  joint back_panel to left_side, right_side { BACK }
  joint kick to left_side, right_side { glue }
  joint shelf to left_side, right_side { dado depth 1/4; glue }
}
place case { at left, bottom, back }
""".replace("BACK", back))  # fmt: skip
    scene = plan.pieces.joined.drawn.scene
    kinds = {j.id: j.methods[0].kind for j in scene.joints}
    assert kinds[scene.joints[0].id] == back.split()[0]
    made = next(s for s in plan.order.steps if s.id.verb == "assemble")
    assert [kinds[j] for j in made.joints] == ["dado", "glue", back.split()[0]]


def test_what_is_nailed_on_with_glue_comes_on_when_what_it_is_nailed_to_stands(compiled):
    plan, _ = compiled("""
assembly base "Base" {
  size wide 24, high 30, deep 12
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part floor of ply { level at bottom + 3; wide between left_side and right_side }
  part kick of ply { facing at front + 2; wide between left_side and right_side; high from bottom to floor.bottom }
  joint kick to left_side, right_side { pockets on back }
  joint kick to floor { brads; glue }
  joint floor to left_side, right_side { pockets on bottom; glue }
}
place base { at left, bottom, back }
""")  # fmt: skip
    scene = plan.pieces.joined.drawn.scene
    entering = {j.id: (j.entering[0].text, j.methods[0].kind) for j in scene.joints}
    made = next(s for s in plan.order.steps if s.id.verb == "assemble")
    assert [entering[j] for j in made.joints] == [("floor", "pockets"), ("kick", "pockets"), ("kick", "brads")]


# --- order lines ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "line, first, then",
    [
        ("set second before set first", "set second", "set first"),
        ("hang second before hang first", "set second", "set first"),
        ("set first after set second", "set second", "set first"),
        ("assemble second before cut worktop", "assemble second", "cut worktop"),
        ("assemble second before assemble first", "assemble second", "assemble first"),
        ("set box before cut worktop", "set second", "cut worktop"),
        ("assemble first before cut second.floor_panel", "assemble first", "cut second.floor_panel"),
        ("cut project before measure bed", "cut worktop", "measure bed"),
    ],
)
def test_every_declared_order_holds(built, line, first, then):
    worktop = "part worktop of ply { level at top; wide 20 from left; deep 10 from back - 10 }\n"
    bed = 'measure bed "bed" expect 2 to 5\n'
    steps = built(f"{bed}{TWO}{worktop}order {{ {line} }}")
    assert before(steps, first, then)


def test_a_part_named_by_an_order_line_is_cut_by_itself(built):
    steps = built(TWO + "order { assemble first before cut second.floor_panel }")
    assert {s for s in steps if s.startswith("cut")} == {"cut box", "cut second.floor_panel"}


def test_a_rule_pairs_up_within_each_instance_that_holds_both(compiled, built):
    lines = TWO + "fit 1 pull { on first.left_side.left }\nfit 1 pull { on second.left_side.left }\n"
    plan, _ = compiled(lines + "order { cure box before fit pull\n set box before fit pull }")
    reasons = {s.id: [r.after.target for r in s.reasons if r.kind == "declared"] for s in plan.order.steps}
    fits = {i.target: set(after) for i, after in reasons.items() if i.verb == "fit"}
    assert fits == {"first.pull": {"first"}, "second.pull": {"second"}}


def test_where_no_instance_holds_both_all_come_before_all(built):
    third = "place box (w = 9) as third { at right, bottom, back }\n"
    steps = built(TWO + third + 'order { step "Clear the floor" before set box }')
    assert all(before(steps, '"Clear the floor"', f"set {name}") for name in ("first", "second", "third"))


def test_an_own_step_stands_just_before_what_waits_for_it(built):
    steps = built(TWO + 'order { step "Sand the insides" before assemble second }')
    assert steps.index('"Sand the insides"') + 1 == steps.index("assemble second")
    steps = built(TWO + 'order { step "Oil" after cure first }')
    assert steps.index('"Oil"') - 1 == steps.index("cure first")


def test_own_steps_may_follow_each_other(built):
    steps = built(TWO + 'order { step "Prime" after cure first; step "Paint" after "Prime" before set first }')
    assert before(steps, '"Prime"', '"Paint"') and before(steps, '"Paint"', "set first")


def test_lines_in_an_assembly_hold_in_each_of_its_instances(compiled):
    inner = 'order { step "Oil" after cure box before set box }'
    head_box = """
assembly nook "Nook" {
  size wide 24, high 20, deep 16
  part left_side of ply { upright at left; grain high }
  part right_side mirrors left_side
  part floor_panel of ply { level at bottom; wide between left_side and right_side }
  joint floor_panel to left_side, right_side { glue }
""" + inner.replace("box", "nook") + "\n}\n"  # fmt: skip
    plan, found = compiled(head_box + TWO.replace("box", "nook"))
    assert not found
    own = {s.id.target: [r.after.target for r in s.reasons] for s in plan.order.steps if s.id.verb == "step"}
    assert own == {"first: Oil": ["first"], "second: Oil": ["second"]}


# --- what is wrong with them -----------------------------------------------------------------------


def codes(found) -> list[str]:
    return [d.code for d in found]


@pytest.mark.parametrize(
    "line, says",
    [
        ("set frist before set second", "set first"),
        ("cut boks before set second", "cut box"),
        ('"Sand" before set second', "cut box"),
        ("fit box before set second", "no hardware is fitted to it"),
        ("fasten first before set second", "nothing is left to fasten"),
        ("measure bed before set second", "cut box"),
    ],
)
def test_a_step_that_is_not_there(compiled, line, says):
    _, found = compiled(TWO + f"order {{ {line} }}")
    assert codes(found) == ["rod500"]
    assert says in found[0].help + found[0].label.text


def test_several_mistakes_in_one_run(compiled):
    _, found = compiled(TWO + "order { set a before set first\n set b before set c }")
    assert codes(found) == ["rod500"] * 3


def test_what_a_when_leaves_out_may_be_named(compiled):
    out = "when 1 = 2 { place box as third { at right, bottom, back } }\n"
    _, found = compiled(TWO + out + "order { set third before set first }")
    assert not found


def test_a_loop_is_printed_with_the_lines_behind_it(compiled):
    plan, found = compiled(TWO + "order { set first before cut second.floor_panel\n set second before set first }")
    assert codes(found) == ["rod501"] and plan is not None
    said = " ".join([found[0].label.text, *(other.text for other in found[0].others)])
    assert "set first before cut second.floor_panel: this line says so" in said
    assert "set second before set first: this line says so" in said
    assert "it must be put together first" in said or "its glue must cure first" in said
    assert "set first → cut second.floor_panel → machine second.floor_panel → assemble second → " in found[0].help


def test_a_loop_through_lines_about_many(compiled):
    _, found = compiled(TWO + "order { set box before cut project }")
    assert codes(found) == ["rod501"]
    assert "  " not in found[0].help


def test_two_knots_are_two_errors(compiled):
    _, found = compiled(TWO + "order { set first before cure first\n set second before cure second }")
    assert codes(found) == ["rod501", "rod501"]


def test_a_step_before_itself(compiled):
    _, found = compiled(TWO + "order { set first before set first }")
    assert codes(found) == ["rod501"]


def test_lines_that_change_nothing_are_pointed_out(compiled):
    _, found = compiled(TWO + """order {
  cut box before set first
  set second before set first
  set second before set first
}""")
    assert codes(found) == ["rod502", "rod502"]
    assert [d.severity.value for d in found] == ["note", "note"]


def test_own_steps_need_texts_of_their_own(compiled):
    _, found = compiled(TWO + 'order { step "Sand" before set first\n step "Sand" before set second }')
    assert codes(found) == ["rod503"]


def test_the_order_repeats(compiled):
    text = TWO + HELD.replace("place box { at left, bottom, back }", "place box as third { at right, bottom, back }")
    one, two = (compiled(text)[0].order for _ in range(2))
    assert one == two
    assert [s.number for s in one.steps] == list(range(1, len(one.steps) + 1))
    assert all(isinstance(s.wait, Fraction) for s in one.steps)
