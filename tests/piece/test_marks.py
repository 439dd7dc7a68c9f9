"""A mark, once given, is that piece's for good: under renames, additions, deletions and any sequence of revisions."""

from __future__ import annotations

from fractions import Fraction as F

from handmade import FREE, board, box, joined, scene, scenes_of
from hypothesis import given, settings
from hypothesis import strategies as st

from setout.piece import Register, parse_register, piece, register_text
from setout.source import Source


def of(*boards, register=()):
    return piece(joined(scene(boards)), Register(tuple(register))).value


def plain(path: str, length, width=11):
    return board(path, box(length, width, F(23, 32)))


def test_marks_count_up_by_assembly_and_leave_a_letter_for_the_job():
    base = plain("base.side", 30), plain("base.shelf", 20), plain("base.rail", 9)
    made = of(*base[:2], plain("top", 60), base[2], plain("tall.x", 7))
    assert made.mark_of == {"base.side": "A1", "base.shelf": "A2", "top": "B1", "base.rail": "A3", "tall.x": "C1"}
    assert made.letters == {"base": "A", "": "B", "tall": "C"}
    assert [p.mark for p in made.pieces] == ["A1", "A2", "A3", "B1", "C1"]


def test_a_piece_of_several_assemblies_bears_the_letter_of_the_first():
    made = of(plain("base.side", 30), plain("tall.side", 30), plain("tall.shelf", 8))
    assert made.mark_of["tall.side"] == "A1" and made.mark_of["tall.shelf"] == "B1"


def test_renames_and_a_new_order_keep_marks():
    first = of(plain("base.side", 30), plain("tall.shelf", 20))
    again = of(plain("high.tray", 20), plain("low.cheek", 30), register=first.new_entries)
    assert again.mark_of == {"high.tray": "B1", "low.cheek": "A1"}
    assert again.letters == {"high": "B", "low": "A"} and {e.kind for e in again.new_entries} == {"letter"}


def test_an_assembly_all_of_whose_boards_change_keeps_its_letter():
    first = of(plain("base.side", 30), plain("tall.side", 40))
    again = of(plain("base.side", 31), plain("tall.side", 41), register=first.new_entries)
    assert again.mark_of == {"base.side": "A2", "tall.side": "B2"}


def test_a_deleted_piece_takes_its_mark_along_and_may_come_back():
    first = of(plain("base.side", 30), plain("base.shelf", 20))
    second = of(plain("base.shelf", 20), plain("base.rail", 5), register=first.new_entries)
    assert second.mark_of == {"base.shelf": "A2", "base.rail": "A3"}
    third = of(plain("base.side", 30), register=first.new_entries + second.new_entries)
    assert third.mark_of == {"base.side": "A1"}


def test_a_new_assembly_never_takes_a_letter_that_was_used():
    first = of(plain("base.side", 30), plain("tall.side", 40))
    second = of(plain("tall.side", 40), plain("nook.side", 50), register=first.new_entries)
    assert second.mark_of == {"tall.side": "B1", "nook.side": "C1"}


def test_pieces_that_print_alike_are_pointed_out():
    close = F(30) + F(1, 200)
    checked = piece(joined(scene([plain("a.x", 30), plain("a.y", close)])), Register(()))
    assert [d.code for d in checked.diagnostics] == ["rod454"]
    assert [p.similar for p in checked.value.pieces] == [("A2",), ("A1",)]


revision = st.lists(
    st.tuples(st.sampled_from(["base", "tall", "nook"]), st.sampled_from([5, 6, 7, 8]), st.booleans()), max_size=5
)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.tuples(revision, st.sampled_from([None, 1, 2])), min_size=1, max_size=7))
def test_no_sequence_of_revisions_gives_a_mark_twice(revisions):
    """Boards come, go, change owner, hang on a measure or not; the measure is open, taken, taken anew."""
    text = ""
    cut_as: dict[str, str] = {}  # what each mark's board was cut to
    for boards, bed in revisions:
        checked = parse_register(Source("spec.marks", text))
        assert checked.diagnostics == ()

        def make(values, boards=boards, bed=bed):
            return scene([
                board(f"{owner}.n{i}", box(length + hangs * values["bed"], 3, F(23, 32)),
                      held=(frozenset({"bed"}) if hangs and bed is None else FREE, FREE, FREE))
                for i, (owner, length, hangs) in enumerate(boards)
            ])  # fmt: skip

        taken = {} if bed is None else {"bed": bed}
        made = piece(scenes_of(make, {"bed": (1, 2)}, taken), checked.value).value
        assert len({p.mark for p in made.pieces}) == len(made.pieces)
        assert not {letter for p in made.pieces for letter in p.mark} & set("IOQSZ")
        for p in made.pieces:
            if not p.held:
                assert cut_as.setdefault(p.mark, p.shape) == p.shape
        text += register_text(made.new_entries, fresh=not text)
        again = piece(scenes_of(make, {"bed": (1, 2)}, taken), parse_register(Source("spec.marks", text)).value).value
        assert again.mark_of == made.mark_of and not again.new_entries
