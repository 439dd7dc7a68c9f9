"""The marks file as text: what it says comes back, and what was spoilt in it is told."""

from __future__ import annotations

import pytest
from handmade import board, box, joined, loose, scene

from setout.piece import Register, parse_register, piece, register_text
from setout.piece.letters import all_letters, mark_order
from setout.source import Source

A1 = "A1 cut 1 sheet ply 30 x 11 x 23/32 grain length"
HELD = "A2 held 1 sheet ply (40 - bed) x 11 x 23/32 grain length"


def read(*lines: str):
    return parse_register(Source("spec.marks", "".join(line + "\n" for line in ("marks 1", *lines))))


def codes(*lines: str) -> list[str]:
    return [d.code for d in read(*lines).diagnostics]


def test_what_is_written_reads_back():
    made = piece(joined(scene([board("a.x", box(30, 11, 1))], [loose("s", 9, 3)])), Register(())).value
    checked = parse_register(Source("spec.marks", register_text(made.new_entries, fresh=True)))
    assert checked.diagnostics == () and checked.value.entries == made.new_entries


def test_no_file_is_an_empty_register():
    assert parse_register(Source("marks", "")).value == Register(())


def test_a_file_of_another_version_is_refused_whole():
    checked = parse_register(Source("spec.marks", f"# marks\nmarks 2\n{A1}\n"))
    assert checked.value is None and [d.code for d in checked.diagnostics] == ["rod450"]


@pytest.mark.parametrize(
    "line",
    [
        "A1",
        "A1 cut",
        "I1 cut 1 sheet ply 30 x 11 x 23/32 grain length",
        "A0 cut 1 sheet ply 30 x 11 x 23/32 grain length",
        "A1 sawn 1 sheet ply 30 x 11 x 23/32 grain length",
        "A1 cut 2 sheet ply 30 x 11 x 23/32 grain length",
        "A1 cut 1 sheet ply 30 x 11 x 23/32 grain",
        "A1 cut 1 sheet ply 30.0 x 11 x 23/32 grain length",
        "A1 cut 1 sheet ply 11/0 x 11 x 23/32 grain length",
        "A1 cut 1 sheet ply 30 x 11 x 46/64 grain length",
        "A1 cut 1 sheet ply (40 - bed) x 11 x 23/32 grain length",
        "A1 cut 1 sheet ply 30 x 11 x 23/32 grain length; hole +t at l 3 w 99999999999999999999 dia",
        f"A1 cut 1 sheet ply {'9' * 5000} x 11 x 23/32 grain length",
        "A1 letter base",
        "O letter base",
        "A letter base rail",
        "<<<<<<< ours",
    ],
)
def test_a_damaged_line_is_told_with_its_place(line):
    checked = read(line, A1.replace("A1", "A5"))
    assert [d.code for d in checked.diagnostics] == ["rod451"]
    assert checked.diagnostics[0].label.span.start == len("marks 1\n")
    assert [e.mark for e in checked.value.entries] == ["A5"]


def test_doubled_lines():
    assert codes(A1, A1.replace("11 x", "12 x")) == ["rod452"]
    assert codes(A1, A1.replace("A1", "B7")) == ["rod453"]
    assert codes(A1, A1) == ["rod453"]


def test_a_mark_may_come_off_hold_but_not_go_back():
    cut = "A2 cut 1 sheet ply 37 x 11 x 23/32 grain length"
    assert codes(HELD, cut) == []
    assert codes(cut, HELD) == ["rod452"]
    assert codes(HELD, cut, cut.replace("37", "36")) == ["rod452"]
    assert codes(HELD, HELD.replace("40", "41")) == ["rod452"]
    assert codes(HELD.replace("- bed", "- bed + gap"), HELD, cut) == []


def test_letters_leave_out_what_is_misread():
    letters = all_letters()
    first = [next(letters) for _ in range(22)]
    assert "".join(first[:21]) == "ABCDEFGHJKLMNPRTUVWXY" and first[21] == "AA"


def test_marks_sort_as_one_counts():
    assert sorted(["AA1", "B1", "A10", "A2"], key=mark_order) == ["A2", "A10", "B1", "AA1"]
