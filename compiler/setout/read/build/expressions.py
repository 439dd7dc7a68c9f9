"""Numbers, names and sums."""

from __future__ import annotations

from typing import Any

from setout.read.build.parts import exprs, paths
from setout.read.machine import Tell
from setout.read.model import Binary, Call, Expr, Number, Path, Unary
from setout.source import Span


def _number(parts: list[Any], span: Span, tell: Tell) -> Number:
    return parts[0].number


def _path(parts: list[Any], span: Span, tell: Tell) -> Path:
    return paths(parts, span)[0]


def _group(parts: list[Any], span: Span, tell: Tell) -> Expr:
    return parts[1]


def _call(parts: list[Any], span: Span, tell: Tell) -> Call:
    return Call(parts[0].text, exprs(parts), span)


def _unary(parts: list[Any], span: Span, tell: Tell) -> Unary:
    return Unary(parts[0].text, parts[1], span)


def _binary(parts: list[Any], span: Span, tell: Tell) -> Binary:
    return Binary(parts[1].text, parts[0], parts[2], span)


EXPRESSIONS = {
    "number": _number,
    "path": _path,
    "group": _group,
    "call": _call,
    "signed": _unary,
    "denied": _unary,
    "product": _binary,
    "sum": _binary,
    "compared": _binary,
    "both": _binary,
    "either": _binary,
}
