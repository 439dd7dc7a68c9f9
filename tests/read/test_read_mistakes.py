"""Mistakes in a spec's text: what is said, where, and that the next ones are found too."""

import re
from pathlib import Path

import pytest

from setout.diagnostics.catalogue import codes, page
from setout.read import read
from setout.source import Source

OWN = [e.code for e in codes() if e.code < "rod150"]
NOT_FROM_TEXT = {"rod101", "rod102"}  # these are about files


def checked(text: str):
    return read(Source("spec.rod", text))


def told(text: str) -> list[tuple[str, str]]:
    """Codes, and the text that each points at."""
    return [(d.code, text[d.label.span.start : d.label.span.end]) for d in checked(text).diagnostics]


def only(text: str):
    (diagnostic,) = checked(text).diagnostics
    return diagnostic


def test_several_mistakes_are_told_in_one_run():
    text = """
project "Bad" { units inch; mrk to 1/32 }
stok ply { sheet 96x48 x 23/32 }
let w = 23-5/4
assembly box (w = 3 {
  part a of ply { uprigt at left; grain high; grain deep }
  part b ply { wide between a an c }
  joint a b { glue evry 6 }
}
place box { at left, bottom
"""
    assert told(text) == [
        ("rod111", "mrk"),
        ("rod111", "stok"),
        ("rod115", "96x48"),
        ("rod120", "23-5/4"),
        ("rod112", "("),
        ("rod111", "uprigt"),
        ("rod130", "grain deep"),
        ("rod110", "ply"),
        ("rod111", "an"),
        ("rod110", "b"),
        ("rod110", "evry"),
        ("rod112", "{"),
    ]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("let = 3", "Expected a name after `let`"),
        ("let a 3", "Expected `=` after `a`"),
        ("let a = ", "Expected a size or a name after `=`"),
        ("part a of b { show lef + 1 }", "Expected the end of the line or `}`"),
        ("part a of b { grain 3 }", "Expected an axis (wide, high, deep) or `any` after `grain`"),
        ("part a of b { show 3 }", "Expected a face (left, right, bottom, top, front, back) after `show`"),
        (
            "joint a to b { dado every 6 }",
            "Expected the end of the line, `}`, `depth`, `gap` or `stopped` after `dado`",
        ),
        ("include rack", "Expected a text in quotes after `include`"),
        ("glue a to b", "`glue` can't begin anything here"),
        ("rack { ply 41 x 22 }", "Expected `:` after `ply`"),
        ("rack { ply: }", "Expected a size or a name after `:`"),
        ("rack { ply: 2 x 60 x 11 }", "Expected the end of the line, `}`, `,` or `grain` after `60`"),
        ("saw a { kerf 1/8; rips 24 }", "Expected `up` after `rips`"),
        ("part a of b { in order }", "Expected `sequence` after `in`"),
    ],
)
def test_what_was_expected_is_said_in_words(text, says):
    assert says in "\n".join(d.message for d in checked(text).diagnostics)


def test_no_name_of_the_grammar_shows():
    for text in (
        "let",
        "part",
        "joint a",
        "let a = 3 4",
        "place b {",
        "order {",
        "fit",
        "size",
        "room { studs }",
        "when",
    ):
        for d in checked(text).diagnostics:
            words = f"{d.message} {d.label.text} {d.help}"
            assert not re.search(r"\b[A-Z]{2,}\b|__|\$END|_SEP", words), words


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("prt a of b { level }", "part"),
        ("PART a of b { level }", "part"),
        ("part a off b { level }", "of"),
        ("part a of b { levle }", "level"),
        ("part a of b { wide 3 form left }", "from"),
        ("place a { centered }", "centred"),
        ("block rest on board", "rests"),
        ("part a of b { show lefft }", "left"),
    ],
)
def test_a_misspelt_word_is_put_right(text, word):
    d = only(text)
    assert d.code == "rod111" and f"`{word}`" in d.help
    assert checked(text).value == checked(text).value is not None


def test_a_word_put_right_stands_in_the_tree_as_it_should():
    part = checked("part a of b { levle; show lefft }").value.statements[0]
    assert (part.orient[0].text, part.show.text) == ("level", "left")


def test_a_statement_that_was_skipped_leaves_no_tree():
    assert checked("let a = 1\npart b of c { upright 3 }").value is None


def test_a_brace_that_is_missing_does_not_hide_what_follows():
    text = "part a of b {\n level\npart c of d {\n levl\n}\npart e of f\n upright\n}\nlet g = 1 1"
    assert told(text) == [("rod112", "{"), ("rod111", "levl"), ("rod110", "\n"), ("rod110", "1")]


def test_two_statements_on_a_line_are_one_mistake():
    text = "part a of b { level at bottom wide 3 } part c of d { level }"
    assert told(text) == [("rod110", "wide"), ("rod110", "part")]
    assert len(checked(text).value.statements) == 2


@pytest.mark.parametrize(
    "text",
    [
        'project "A" { paper a4; paper letter }',
        "size wide 3, wide 4",
        "stock a { sheet 3 x 2 x 1; sheet 3 x 2 x 1 }",
        "stock a { grain none; grain along 4 }",
        "hardware a { pack 2; pack 3 }",
        "part a of b { wide 3; wide from left to right }",
        "part a of b { upright; level }",
        "part a of b { rip 1; rip 2 }",
        "place a (w = 1, w = 2)",
        "place a as b as c",
        "assembly a (w, w) { size wide 3 }",
        "joint a to b { brads every 3; pockets every 4 every 5 }",
        "fit 2 a { on b; under c }",
        "fit 2 a { on b; centred; at corners }",
        "practice { kerf 1; kerf 2 }",
        "room { size wide 3; size wide 4 }",
    ],
)
def test_a_clause_said_twice_points_at_both(text):
    d = only(text)
    assert d.code == "rod130" and d.others[0].span.end <= d.label.span.start


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("let a = “b”", "rod104"),
        ("let a = 3 × 4", "rod104"),
        ("let a = 3 – 4", "rod104"),
        ("let a = 9^9^9", "rod104"),
        ("let a = 3 # \x1b[31m", "rod104"),
        ("let a\u202e = 3", "rod104"),
        ('include "rack', "rod105"),
        ("let a = sqrt(4)", "rod111"),
        ("let a = 1 }", "rod113"),
        ("part a.b of c { level }", "rod131"),
        ("let " + "a" * 81 + " = 1", "rod131"),
        ("let left-over = 1", "rod114"),
        ("part shelf-2 of ply { level }", "rod114"),
        ("fit 4 foot { at corners }", "rod134"),
        ("", "rod103"),
        ("\n # nothing\n", "rod103"),
    ],
)
def test_one_slip_is_one_error(text, code):
    assert [d.code for d in checked(text).diagnostics] == [code]


def test_the_list_of_mistakes_ends():
    found = checked("let a b\n" * 50).diagnostics
    assert [d.code for d in found] == ["rod110"] * 20 + ["rod108"]


@pytest.mark.parametrize("code", [c for c in OWN if c not in NOT_FROM_TEXT])
def test_a_page_shows_the_mistake_and_its_mending(code):
    wrong, mended = re.findall(r"```rod\n(.*?)```", page(code), re.S)
    assert code in {d.code for d in checked(wrong).diagnostics}
    assert not checked(mended).diagnostics


def test_every_error_of_reading_has_its_page():
    problems = (Path(read.__code__.co_filename).parent / "problems.py").read_text("utf-8")
    assert sorted(set(re.findall(r'"(rod\d{3})"', problems))) == OWN


@pytest.mark.parametrize(
    ("text", "code", "written"),
    [
        ("let toe = 3 1/2\n", "rod123", "`3-1/2`"),
        ("let high = 30 -toe\n", "rod114", "`30 - toe`"),
        ("joint a to b { dado 1/4 }\n", "rod110", "`dado depth 1/4`"),
        ("joint a to b { rabbet 1/4; glue }\n", "rod110", "`rabbet depth 1/4`"),
        ("joint a to b { groove 1/4 }\n", "rod110", "`groove depth 1/4`"),
        ("stock ply { sheet 96 by 48 x 3/4 }\n", "rod111", "`96 x 48`"),
        ("part a of ply { level; below worktop }\n", "rod111", "`under`"),
        ("part a of ply { level above worktop }\n", "rod111", "`on`"),
        ("part a of ply { upright next to side }\n", "rod111", "`against`"),
    ],
)
def test_the_commonest_slips_are_told_with_what_to_write(text, code, written):
    (found,) = [d for d in checked(text).diagnostics if d.code != "rod173"]
    assert (found.code, written in found.help) == (code, True), found


def test_everyday_words_stand_for_words_of_the_grammar():
    from setout.read.repair.synonyms import MEANT
    from setout.read.table import grammar_table

    literals = grammar_table().literals
    assert all(meant in literals for meant in MEANT.values())


@pytest.mark.parametrize(
    ("text", "help"),
    [
        ("size wide 20, high 30 deep 12", "is a comma missing? `30, deep`"),
        ("part a of ply { level; band front left with tape }", "is a comma missing? `front, left`"),
        ("part a of ply { level; bottom at 4 feet 6 }", "write `4'6\"`"),
        ("part a of ply { level; bottom at 4 feet 6-1/2 inches }", "write `4'6-1/2\"`"),
        ("part a of ply { level; bottom at 4 ft 6 in }", "write `4'6\"`"),
        ("part a of ply { level; bottom at 6 inches }", "write `6in`"),
        ("part a of ply { level; bottom at 4 ft }", "write `4ft`"),
        ("part a of ply { level at 4 feet", "write `4ft`"),
        ("size wide 4 feet", "write `4ft`"),
    ],
)
def test_what_is_written_as_it_is_spoken_is_put_right(text, help):
    assert help in [d.help for d in checked(text).diagnostics]
    assert "is a comma missing" not in str(checked("size wide 20, high").diagnostics)
