"""Marks carried on from one revision to the next."""

from __future__ import annotations

from comparing import shop
from compiling import compiled

from setout.compare import carried_on, compare
from setout.piece import register_text
from setout.source import Source

OLD = shop("part shelf of ply { size 30 x 11; count 4 }", "part side of ply { size 60 x 11; count 2 }")
NEW = shop("part lid of ply { size 30 x 10 }", "part side of ply { size 60 x 11; count 2 }")
OTHER = shop("part box of half { size 9 x 9 }")


def marks(text: str, register: str = "") -> dict[str, str]:
    checked = compiled(text, marks=register)
    assert checked.value is not None and not checked.failed
    return {board: piece.mark for piece in checked.value.pieces.pieces for board in piece.boards}


def carried(register: str, old: str) -> str:
    first = compiled(old)
    assert first.value is not None
    return carried_on(Source("spec.marks", register), first.value).text


def test_a_board_keeps_its_mark_though_neither_revision_was_built():
    assert (marks(OLD), marks(NEW)) == ({"shelf": "A1", "side": "A2"}, {"lid": "A1", "side": "A2"})
    assert marks(NEW, carried("", OLD)) == {"lid": "A3", "side": "A2"}


def test_marks_that_are_written_down_stand():
    """The later spec was built: A1 is pencilled on a lid."""
    built = compiled(NEW).value
    assert built is not None
    register = register_text(built.pieces.new_entries)
    text = carried(register, OLD)
    assert text.startswith(register) and marks(NEW, text) == marks(NEW)


def test_a_damaged_marks_file_is_left_for_others_to_tell_of():
    assert carried("A1 cut nonsense\n", OLD) == "A1 cut nonsense\n"


def test_specs_that_have_nothing_to_do_with_each_other():
    plans = compiled(OLD), compiled(OTHER, marks=carried("", OLD))
    assert all(plan.value is not None and not plan.failed for plan in plans)
    changes = compare(plans[0].value, plans[1].value)
    assert [change.how for change in changes.boards] == [("gone",), ("gone",), ("added",)]
