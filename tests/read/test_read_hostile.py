"""Any text and any bytes are read without an exception and in bounded time."""

import random
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from setout.diagnostics.render import render_json, render_text
from setout.read import MAX_BYTES, decode, read
from setout.read.limits import MAX_MISTAKES
from setout.read.table import grammar_table
from setout.source import Source

REPO = Path(__file__).parents[2]
BOOKCASE = (REPO / "specs" / "bookcase.rod").read_text("utf-8")
M = MAX_BYTES - 50

HUGE = {
    "brackets": "(" * M,
    "braces": "{" * M,
    "closers": "}" * M,
    "nested sums": "let a = " + "(" * 10_000 + "1" + ")" * 10_000,
    "nested blocks": "when a { " * 10_000,
    "a long number": "let a = " + "9" * M,
    "strokes": "let a = " + "9/" * (M // 2),
    "feet": "let a = " + "9'" * (M // 2),
    "by": "1x" * (M // 2),
    "a long name": "a" * M,
    "a long path": "a." * (M // 2),
    "dashes": "a-" * (M // 2),
    "quotes": '"' * M,
    "an open text": '"' + "\\" * M,
    "newlines": "\n" * M,
    "blank lines": " \n" * (M // 2),
    "remarks": "#\n" * (M // 2),
    "curly quotes": "“a" * (M // 2),
    "a long sum": "let a = 1" + " + 1" * 200_000,
    "a long list": "stock a { stick 1 x 2 long " + "3, " * 15_000 + "3 }",
    "nots": "when " + "not " * 200_000,
    "minuses": "let a = " + "-" * M,
    "commas": "," * M,
    "control characters": "\x1b" * M,
    "odd characters": "@$" * (M // 2),
    "words": "a " * (M // 2),
    "misspellings": "prt a of b { levl }\n" * 30_000,
    "statements": "let a = 1\n" * (M // 10),
    "numbers": "1 " * (M // 2),
}
words = st.sampled_from(
    [*grammar_table().literals, "shelf", "ply.thick", "23-1/4", "5/8", "600mm", '"text"', "-", "\n", ";", "#", '"']
)


def settled(text: str) -> None:
    """Read, and told of, without an exception; what comes out is bounded too."""
    source = Source("spec.rod", text)
    checked = read(source)
    assert checked.value or checked.failed
    assert len(checked.diagnostics) <= MAX_MISTAKES + 1
    for d in checked.diagnostics:
        assert 0 <= d.label.span.start <= d.label.span.end <= len(text)
    if checked.value:
        assert repr(checked.value) and checked.value == read(source).value
    said = render_text(checked.diagnostics, {"spec.rod": source})
    assert all(c.isprintable() or c == "\n" for c in said)
    render_json(checked.diagnostics, {"spec.rod": source})


@pytest.mark.parametrize("kind", HUGE)
def test_huge_input_is_dealt_with(kind):
    settled(HUGE[kind])


@given(st.text(max_size=200))
def test_any_text(text):
    settled(text)


@given(st.lists(words, max_size=60).map(" ".join))
def test_any_words_of_the_language(text):
    settled(text)


@given(st.integers(0, 2**32), st.integers(1, 6))
@settings(suppress_health_check=[HealthCheck.too_slow], deadline=None)
def test_a_spec_with_pieces_lost_moved_and_doubled(seed, times):
    rng = random.Random(seed)
    text = BOOKCASE
    for _ in range(times):
        a, b, c = sorted(rng.randrange(len(text)) for _ in range(3))
        text = rng.choice(
            [text[:a] + text[a + 9 :], text[:b] + text[a:c] + text[b:], text[:a] + text[b:c] + text[a:b] + text[c:]]
        )
    settled(text)


@given(st.binary(max_size=200))
def test_any_bytes(data):
    checked = decode("spec.rod", data)
    assert (checked.value is None) == checked.failed
    if checked.value:
        settled(checked.value.text)


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"let a = 1\0", "rod101"),
        ("let a = 1".encode("utf-16"), "rod101"),
        ("let é = 1".encode("latin-1"), "rod101"),
        (b"\x89PNG\r\n\x1a\n\0\0", "rod101"),
        (b"#" * (MAX_BYTES + 1), "rod102"),
    ],
)
def test_what_is_no_text_is_refused(data, code):
    assert [d.code for d in decode("spec.rod", data).diagnostics] == [code]


def test_a_byte_order_mark_and_the_line_ends_of_other_systems_are_taken():
    text = decode("spec.rod", b"\xef\xbb\xbflet a = 1\r\nlet b = 2\rlet c = 3\n").value.text
    assert text == "let a = 1\nlet b = 2\nlet c = 3\n"
