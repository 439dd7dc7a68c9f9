"""How a diagnostic looks at a terminal."""

import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from setout.diagnostics import Label, error, note, warning
from setout.diagnostics.render import render_text
from setout.source import Source, Span

TEXT = 'project "A"\n\tpart a of ply { level }\npart 棚板 of ply {\n  level\n}\n'
SOURCES = {"a.rod": Source("a.rod", TEXT)}


def span(word: str, end: str = "", file: str = "a.rod") -> Span:
    start = TEXT.index(word)
    return Span(file, start, TEXT.index(end, start) + len(end) if end else start + len(word))


def test_the_whole_of_it():
    found = error(
        "rod301", "parts overlap", span("ply"), "this one", Label(span("level"), "and this"), help="move\none"
    )
    assert (
        render_text([found, warning("rod302", "mind", None)], SOURCES)
        == """\
a.rod:2:12: error rod301: parts overlap
 2 |     part a of ply { level }
   |               ^^^ this one
   |                     ----- and this
   = help: move
           one

warning rod302: mind

1 error, 1 warning
"""
    )


def test_wide_characters_take_two_columns():
    said = render_text(
        [error("rod301", "x", span("ply {\n", "ply"), "here"), error("rod301", "x", span("棚板"))], SOURCES
    )
    assert " 3 | part 棚板 of ply {\n   |      ^^^^\n" in said


def test_labels_come_in_the_order_given_and_name_their_file():
    other = {**SOURCES, "b.rod": Source("b.rod", "let a = 1\n")}
    labels = Label(Span("b.rod", 4, 5), "first"), Label(span("project"), "second"), Label(Span("c.rod", 3, 4), "third")
    said = render_text([error("rod301", "x", span("part"), "", *labels)], other)
    assert said.splitlines()[1:-2] == [
        " 2 |     part a of ply { level }",
        "   |     ^^^^",
        "   in b.rod:1:5",
        " 1 | let a = 1",
        "   |     - first",
        "   in a.rod:1:1",
        ' 1 | project "A"',
        "   | ------- second",
        "   in c.rod third",
    ]


def test_a_place_over_several_lines_is_shown_by_its_first():
    said = render_text([note("rod301", "x", span("part 棚板", "}"), "here")], SOURCES)
    assert " 3 | part 棚板 of ply {\n   | ^^^^^^^^^^^^^^^^^^ here (to line 5)\n" in said


def test_the_end_of_a_file_and_an_empty_file_can_be_pointed_at():
    assert "a.rod:6:1: error" in render_text([error("rod301", "x", Span("a.rod", len(TEXT), len(TEXT)))], SOURCES)
    said = render_text([error("rod301", "x", Span("e.rod", 0, 0))], {"e.rod": Source("e.rod", "")})
    assert said == "e.rod:1:1: error rod301: x\n 1 |\n   | ^\n\n1 error\n"


def test_a_long_line_is_cut_to_a_window():
    text = "a" * 500 + "here" + "b" * 500
    said = render_text([error("rod301", "x", Span("l.rod", 500, 504), "it")], {"l.rod": Source("l.rod", text)})
    line, under = said.splitlines()[1:3]
    assert len(line) < 120 and line.count("…") == 2
    assert line[under.index("^") : under.index("^") + 4] == "here" and "^^^^ it" in under


def test_colour_only_repeats_what_the_words_say():
    found = [error("rod301", "x", span("part")), warning("rod302", "y", None)]
    coloured = render_text(found, SOURCES, colour=True)
    for code in ("\x1b[1;31m", "\x1b[1;33m", "\x1b[0m"):
        assert code in coloured
        coloured = coloured.replace(code, "")
    assert coloured == render_text(found, SOURCES)


def test_nothing_found_is_nothing_said():
    assert render_text([], SOURCES) == ""


@given(st.text(), st.text(), st.text(), st.text(), st.data())
def test_nothing_that_steers_a_terminal_gets_through(text, message, label, help, data):
    start, end = sorted(data.draw(st.tuples(st.integers(0, len(text)), st.integers(0, len(text)))))
    name = data.draw(st.text())
    found = error("rod301", message, Span(name, start, end), label, Label(Span(name, 0, end), label), help=help)
    said = render_text([found], {name: Source(name, text)})
    assert not [c for c in said if (c != "\n" and unicodedata.category(c)[0] in "C") or c in "\u2028\u2029"]
