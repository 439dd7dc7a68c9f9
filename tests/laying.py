"""What a layout must leave as it is: the meaning, the words, the comments where they stand, the groups."""

from __future__ import annotations

import re

from setout.read import Tree, read, settled
from setout.source import Source

_MARKS = re.compile(r"""(?<![\d'])"(?:\\.|[^"\\\n])*"|#[^\n]*|[^\s;]""")  # a quote behind a number stands for inches
_ENDS = ("_SEP", "RBRACE", "$END")


def tree(text: str) -> Tree:
    checked = read(Source("spec.rod", text))
    assert checked.value is not None and not checked.failed, checked.diagnostics
    return checked.value


def same(one: str, other: str) -> None:
    """The two say the same, in the same words, with the same comments between the same words, in the same groups."""
    assert _meaning(one) == _meaning(other)
    assert _marks(one) == _marks(other)
    assert _comments(one) == _comments(other)
    assert _groups(one) == _groups(other)


def _meaning(text: str) -> str:
    """The statements without their places."""
    return re.sub(r"Span\(file='spec.rod', start=\d+, end=\d+\)", "Span", repr(tree(text).statements))


def _marks(text: str) -> list[str]:
    """All that is to be seen but for blanks and semicolons: without the reader's help."""
    return [mark.rstrip() for mark in _MARKS.findall(text)]


def _comments(text: str) -> list[tuple[str, bool]]:
    return [(comment.text, comment.own_line) for comment in tree(text).comments]


def _groups(text: str) -> list[bool]:
    """Whether a blank line stands before each statement and each comment between two, but the first of a block."""
    words = settled(Source("spec.rod", text))
    comments = [(c.span.start, c.span.end, "own" if c.own_line else "behind") for c in words.comments]
    parts = sorted([*((t.start, t.end, t.type) for t in words.tokens), *comments])
    found, end, before, ended = [], 0, "LBRACE", True
    for i, (start, stop, kind) in enumerate(parts):
        coming = next(k for *_, k in parts[i:] if k not in ("own", "behind"))
        if kind != "_SEP":
            if (ended or coming in _ENDS) and before != "LBRACE" and kind not in ("RBRACE", "$END"):
                found.append(bool(re.search(r"\n[^\S\n]*\n", text[end:start])))
            end, before = stop, before if (before, kind) == ("LBRACE", "behind") else kind
        ended = kind in ("_SEP", "LBRACE", "RBRACE") or (ended and kind in ("own", "behind"))
    return found
