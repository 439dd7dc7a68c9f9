"""Specs whose layout was thrown about, with comments put in wherever one can stand."""

from __future__ import annotations

from collections.abc import Iterator

from hypothesis import strategies as st

from setout.read import settled
from setout.source import Source

_ENDS = ("\n", "\n", ";", " ;; ", "\n\n\n", "  # {n} }} ;\n", "\n# {n}\n", "; #{n}\n\n  # {n} {{ (\n\n", "\n#\n ;")
_WITHIN = (" ", " ", " ", "  ", "\t", "\n", " # {n}\n", "\n\n # {n} (\n")  # where a statement goes on
_BLANKS = (" ", "  ", " \t ")


@st.composite
def respaced(draw, texts: st.SearchStrategy[str]) -> str:
    """The same words in the same order."""
    words = settled(Source("spec.rod", draw(texts)))
    seed = draw(st.randoms(use_true_random=False))
    return "".join(_put(words.tokens, seed))


def blanks_only(text: str) -> str:
    """Blanks doubled, but for those inside a text or a number, and for indentation."""
    words = settled(Source("spec.rod", text))
    starts = {token.start for token in words.tokens}
    return "".join(f"  {c}" if i in starts and text[i - 1 : i] == " " else c for i, c in enumerate(text))


def _put(tokens, seed) -> Iterator[str]:
    depth = number = 0
    for before, token in zip((None, *tokens), tokens):
        if token.type == "_SEP":
            yield seed.choice(_ENDS).format(n=(number := number + 1))
            continue
        if before is not None and before.type != "_SEP":
            yield _between(before, token, depth, seed).format(n=(number := number + 1))
        depth += (token.type == "LPAR") - (token.type == "RPAR")
        yield token.text


def _between(before, token, depth: int, seed) -> str:
    if before.type == "NEGATIVE" or (before.type == "FUNCTION" and token.type == "LPAR"):
        return ""
    goes_on = depth or before.type in ("COMMA", "LBRACE") or token.type == "LBRACE" or before.text in "+-*/"
    return seed.choice(_WITHIN if goes_on else _BLANKS)
