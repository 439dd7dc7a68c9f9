"""Picking out the parts of a rule: tokens by their terminal, made things by their type."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, TypeVar, get_args

from setout.read import problems
from setout.read.machine import Tell
from setout.read.model import Binary, Call, Expr, Name, Number, Path, Statement, Text, Unary
from setout.read.tokens import Token
from setout.source import Span

T = TypeVar("T")
_STATEMENTS = get_args(Statement)


@dataclass(frozen=True)
class Clause:
    """A clause that may be said once: `key` is what it is told by when it is said again."""

    key: str
    value: Any
    span: Span


def tokens(parts: list[Any], *types: str) -> list[Token]:
    return [p for p in parts if type(p) is Token and p.type in types]


def all_of(parts: list[Any], kind: type[T]) -> tuple[T, ...]:
    return tuple(p for p in parts if isinstance(p, kind))


def first_of(parts: list[Any], kind: type[T]) -> T | None:
    return next((p for p in parts if isinstance(p, kind)), None)


def exprs(parts: list[Any]) -> tuple[Expr, ...]:
    return tuple(p for p in parts if isinstance(p, (Number, Path, Unary, Binary, Call)))


def statements(parts: list[Any]) -> tuple[Statement, ...]:
    return tuple(p for p in parts if isinstance(p, _STATEMENTS))


def token_span(token: Token, span: Span) -> Span:
    return Span(span.file, token.start, token.end)


def word(token: Token, span: Span) -> Name:
    """A keyword, or a name that is not looked into."""
    return Name(token.text, token_span(token, span))


def names(parts: list[Any], span: Span, tell: Tell) -> list[Name]:
    """The plain names among the parts, in order."""
    found = [word(t, span) for t in tokens(parts, "PATH")]
    for name in found:
        if "." in name.text:
            tell(problems.dotted_name(name.span, name.text))
    return found


def paths(parts: list[Any], span: Span) -> list[Path]:
    return [Path(tuple(t.text.split(".")), token_span(t, span)) for t in tokens(parts, "PATH", "SUBJECT")]


def text(parts: list[Any], span: Span) -> Text:
    """The first text among the parts. A backslash takes the meaning off a quotation mark or another backslash."""
    token = tokens(parts, "STRING")[0]
    return Text(re.sub(r'\\(["\\])', r"\1", token.text[1:-1]), token_span(token, span))


def title(parts: list[Any], span: Span) -> Text | None:
    """The text among the parts, if there is one."""
    return text(parts, span) if tokens(parts, "STRING") else None


def firsts(clauses: Iterable[Clause], tell: Tell) -> tuple[Any, ...]:
    """The values in the order written, without those said again."""
    return tuple(once(clauses, tell).values())


def once(clauses: Iterable[Clause], tell: Tell) -> dict[str, Any]:
    """The values by key; the first stands when one is said twice."""
    said: dict[str, Clause] = {}
    for clause in clauses:
        if clause.key in said:
            tell(problems.said_twice(clause.span, clause.key, said[clause.key].span))
        else:
            said[clause.key] = clause
    return {key: clause.value for key, clause in said.items()}
