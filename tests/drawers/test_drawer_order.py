"""Drawers, fronts, doors and shelves are made in one go, unless an order line speaks of one of them."""

from __future__ import annotations

import pytest
from drawer_specs import case, compiled, drawers, steps

FOUR = drawers("heights 4, 4, 4, rest")
SECOND = "place box as second { at bottom, back; wide from first.right + 10 }\n"


def job(more: str = "", inside: str = FOUR) -> str:
    return case(inside) + more


def two(more: str = "", inside: str = FOUR) -> str:
    return job(SECOND + more, inside).replace("place box {", "place box as first {")


def after(order: list[str], a: str, b: str) -> bool:
    return order.index(a) > order.index(b)


def test_the_drawers_of_a_case_are_made_in_one_go():
    assert steps(job()) == [
        "cut box", "machine box", "assemble box", "cure box", "fit box.slide20",
        "cut box.drawers", "machine box.drawers", "assemble box.drawers", "cure box.drawers", "fit box.drawers.slide20",
        "set box", "set box.drawers", "set box.fronts",
    ]  # fmt: skip


def test_a_step_for_several_names_each_and_holds_all_their_work():
    made = {f"{s.id.verb} {s.id.target}": s for s in compiled(job()).value.order.steps}
    assert made["assemble box.drawers"].things == tuple(f"box.bay.drawer.{n}" for n in (1, 2, 3, 4))
    assert sum(n for _, n in made["assemble box.drawers"].marks) == 4 * 5  # fronts go on at the end
    assert len(made["assemble box.drawers"].joints) == 4 * 4
    assert sum(n for _, n in made["set box.fronts"].marks) == 4 and len(made["set box.fronts"].joints) == 4
    assert made["assemble box"].things == ()


def test_cases_of_a_kind_have_their_drawers_made_in_one_go_after_both():
    order = steps(two())
    assert order.count("assemble box.drawers") == 1 and not [s for s in order if ".bay.drawer" in s]
    assert after(order, "assemble box.drawers", "cure second") and after(order, "set box.drawers", "set second")


def test_a_drawer_that_an_order_line_names_has_a_step_of_its_own():
    order = steps(job("order { assemble box.bay.drawer.2 before assemble box }"))
    assert after(order, "assemble box", "assemble box.bay.drawer.2")
    assert after(order, "assemble box.drawers", "assemble box.bay.drawer.2") and "cure box.drawers" in order


@pytest.mark.parametrize("name", ["first.drawers", "first.bay.drawers", "first.bay.drawer"])
def test_the_drawers_of_one_of_two_cases_can_be_named(name):
    order = steps(two(f"order {{ assemble {name} before assemble second }}"))
    assert [s for s in order if s.startswith("assemble ")] == [
        "assemble first", "assemble first.drawers", "assemble second", "assemble second.drawers",
    ]  # fmt: skip


def test_a_line_of_the_case_holds_in_each_and_leaves_the_drawers_together():
    order = steps(two(inside=FOUR + "\norder { fit slides before set box }"))
    assert after(order, "set first", "fit box.drawers.slide20")
    assert after(order, "set second", "fit box.drawers.slide20")


def test_lines_that_would_go_round_for_all_are_kept_by_making_less_in_one_go():
    """Each case's drawers run in before it is fastened, and the second case is set when the first is fastened."""
    lines = "order { fasten first before set second }"
    inside = FOUR + "\norder { set drawers before fasten box }"
    fastened = "joint first, second to room.floor { screws; only face }\n"
    room = 'room "Shop" { size wide 90, high 96, deep 40 }\n'
    text = two(fastened + lines, inside).replace("size wide 90, high 96, deep 40\n", room)
    order = steps(text)
    assert after(order, "set second", "fasten first")
    assert after(order, "fasten first", "set first.bay.drawers")
    assert after(order, "fasten second", "set second.bay.drawers")


def test_a_pair_of_doors_and_the_shelves_of_a_bay_go_in_together():
    inside = """
    hardware hinge "cup hinge" { cup 35mm depth 12mm from 4mm; plate 37mm apart 32mm }
    """
    text = case("door in bay of ply { inset; reveal 1/16; hinges hinge on left; pair }\n"
                "shelves in bay of ply { count 2; pins pin every 32mm from bottom + 3; clear 1/16 }")  # fmt: skip
    text = text.replace("let t =", inside + 'hardware pin "pin" { hole 5mm depth 10mm }\nlet t =')
    order = steps(text)
    assert [s for s in order if s.startswith("set ")] == ["set box", "set box.doors", "set box.shelves"]
    assert [s for s in order if s.startswith("fit ")] == ["fit box", "fit box.doors.hinge"]
    apart = steps(text + "order { set box.bay.door.right before set box.bay.door.left }")
    assert after(apart, "set box.bay.door.left", "set box.bay.door.right")
