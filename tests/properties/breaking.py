"""Sound texts spoiled a little: the slips of people who type, and a little malice."""

from __future__ import annotations

import re

from hypothesis import strategies as st

NUMBERS = ("0", "-1", "1/0", "23-5/4", "999999", "1in * 1in", "1e9", "0.001", "4-1/2", "x")
WORDS = (
    "left", "top", "wide", "deep", "part", "joint", "repeat", "between", "and", "from", "mirrors", "{", "}", ";", "ply",
    "shelf.9", "room.back", "gap", "w0", "back_panel.front", "a0.left_side", "(", ")", '"', "=", "# ", "1 = 1", "place",
)  # fmt: skip
NUMBER = re.compile(r"(?<![\w.])\d[\d/-]*(?:in|mm)?")
WORD = re.compile(r"[a-z]\w*(?:\.\w+)*")


@st.composite
def spoiled(draw, texts) -> str:
    """One of the texts with up to three slips in it; now and then none."""
    text = draw(texts)
    for _ in range(draw(st.integers(0, 3))):
        text = draw(st.sampled_from((_lines, _numbers, _words, _letters)))(draw, text)
    return text


def _lines(draw, text: str) -> str:
    """A line is lost, doubled, or stands elsewhere."""
    lines = text.splitlines()
    at, to = (draw(st.integers(0, max(0, len(lines) - 1))) for _ in range(2))
    line = lines[at : at + 1]
    if not draw(st.booleans()):
        del lines[at : at + 1]
    if draw(st.booleans()):
        lines[to:to] = line
    return "\n".join(lines) + "\n"


def _numbers(draw, text: str) -> str:
    return _replaced(draw, text, NUMBER, draw(st.sampled_from(NUMBERS)))


def _words(draw, text: str) -> str:
    """A word is another one, of the text or not."""
    others = WORD.findall(text)[:400]
    return _replaced(draw, text, WORD, draw(st.sampled_from([*WORDS, *others])))


def _replaced(draw, text: str, what: re.Pattern, by: str) -> str:
    found = list(what.finditer(text))
    if not found:
        return text + by
    match = found[draw(st.integers(0, len(found) - 1))]
    return text[: match.start()] + by + text[match.end() :]


def _letters(draw, text: str) -> str:
    at = draw(st.integers(0, len(text)))
    return text[:at] + draw(st.sampled_from(("", *"{}();,.'\"#-/*=é\t\r\x00\u202e0aA"))) + text[at + 1 :]
