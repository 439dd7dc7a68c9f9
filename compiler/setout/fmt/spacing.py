"""Where a blank stands between two words, and behind which a line may end."""

from __future__ import annotations

from setout.read.tokens import Token

_GLUED_BEHIND = {"LPAR", "NEGATIVE"}
_GLUED_BEFORE = {"RPAR", "COMMA", "COLON"}
_OPERATORS = {"+", "-", "*", "/", "=", "!=", "<", "<=", ">", ">=", "and", "or"}


def glued(before: Token | None, token: Token) -> bool:
    """No blank between the two: inside parentheses, before a comma, behind a sign, before a function's arguments."""
    if before is None:
        return True
    called = before.type == "FUNCTION" and token.type == "LPAR"
    return called or before.type in _GLUED_BEHIND or token.type in _GLUED_BEFORE


def parts(token: Token) -> bool:
    """Whether the statement goes on in the next line when this is the last word of its line."""
    return token.type == "COMMA" or (token.text in _OPERATORS and token.type not in ("NEGATIVE", "PATH", "STRING"))
