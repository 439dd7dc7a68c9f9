"""Assemblies, boards, joints, hardware and the order of work."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from setout.read import model as m
from setout.read import problems
from setout.read.build.parts import (
    Clause,
    all_of,
    exprs,
    first_of,
    firsts,
    names,
    once,
    paths,
    statements,
    text,
    title,
    tokens,
)
from setout.read.machine import Action, Tell
from setout.source import Span


def _assembly(parts: list[Any], span: Span, tell: Tell) -> m.AssemblyStatement:
    parameters = firsts((Clause(p.name.text, p, p.span) for p in all_of(parts, m.Parameter)), tell)
    name = names(parts, span, tell)[0]
    return m.AssemblyStatement(name, title(parts, span), parameters, statements(parts), span, _head(parts, span))


def _head(parts: list[Any], span: Span) -> Span:
    """What stands before the braces."""
    brace = tokens(parts, "LBRACE")
    if not brace:
        return span
    before = parts[parts.index(brace[0]) - 1]
    end = before.span.end if hasattr(before, "span") else before.end
    return Span(span.file, span.start, end)


def _parameter(parts: list[Any], span: Span, tell: Tell) -> m.Parameter:
    return m.Parameter(names(parts, span, tell)[0], next(iter(exprs(parts)), None), span)


def _size(parts: list[Any], span: Span, tell: Tell) -> m.SizeStatement:
    sizes = firsts((Clause(pair[0].text, pair, pair[0].span) for pair in all_of(parts, tuple)), tell)
    return m.SizeStatement(sizes, span)


def _default(parts: list[Any], span: Span, tell: Tell) -> m.DefaultStatement:
    _whole(parts[1:], tell)
    return m.DefaultStatement(parts[1], span)


def _when(parts: list[Any], span: Span, tell: Tell) -> m.WhenStatement:
    return m.WhenStatement(exprs(parts)[0], statements(parts), span)


def _place(parts: list[Any], span: Span, tell: Tell) -> m.PlaceStatement:
    spans = _spans(parts, tell)
    said = once(all_of(parts, Clause), tell)
    return m.PlaceStatement(
        paths(parts, span)[0],
        said.get("(…)", ()),
        said.get("turned"),
        "mirrored" in said,
        said.get("as"),
        spans,
        _positions(parts),
        said.get("repeat"),
        span,
        _head(parts, span),
    )


def _arguments(parts: list[Any], span: Span, tell: Tell) -> Clause:
    given = firsts((Clause(pair[0].text, pair, pair[0].span) for pair in all_of(parts, tuple)), tell)
    return Clause("(…)", given, span)


def _argument(parts: list[Any], span: Span, tell: Tell) -> tuple[m.Name, m.Expr]:
    return names(parts, span, tell)[0], exprs(parts)[0]


def _turned(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("turned", exprs(parts)[0], span)


def _mirrored(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("mirrored", True, span)


def _alias(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("as", names(parts, span, tell)[0], span)


def _opening(parts: list[Any], span: Span, tell: Tell) -> m.OpeningStatement:
    spans = _spans(parts, tell)
    _whole(spans, tell)
    return m.OpeningStatement(names(parts, span, tell)[0], spans, span)


# --- boards ------------------------------------------------------------------------------------------


def _part(parts: list[Any], span: Span, tell: Tell) -> m.PartStatement:
    spans, features = _spans(parts, tell), all_of(parts, m.Feature)
    _whole((*spans, *(s for f in features for s in f.spans)), tell)
    get = once(all_of(parts, Clause), tell).get
    first, second = tokens(parts, "PATH")
    other = paths([second], span)[0]
    mirrors = bool(tokens(parts, "MIRRORS"))
    words, beside = get("upright, level or facing") or ((), ())
    return m.PartStatement(
        name=names([first], span, tell)[0],
        of=None if mirrors else other,
        mirrors=other if mirrors else None,
        across=first_of(parts, m.Name),
        orient=words,
        spans=spans,
        positions=(*beside, *_positions(parts)),
        repeat=get("repeat"),
        grain=get("grain"),
        show=get("show"),
        proud=get("proud") or (),
        rip=get("rip"),
        loose_size=get("size") or (),
        count=get("count"),
        features=features,
        span=span,
        head=_head(parts, span),
        sequence=get("in sequence"),
        bands=all_of(parts, m.BandClause),
        load=get("load"),
    )


def _positions(parts: list[Any]) -> tuple[m.Position, ...]:
    return tuple(position for several in all_of(parts, tuple) for position in several)


def _spans(parts: list[Any], tell: Tell) -> tuple[m.SpanClause, ...]:
    return firsts((Clause(s.axis.text, s, s.span) for s in all_of(parts, m.SpanClause)), tell)


def _whole(spans: Iterable[m.SpanClause], tell: Tell) -> None:
    """A lone `wide from X` says one end only. An assembly that is placed has its own size; nothing else has."""
    for span in spans:
        if span.kind in ("from", "to"):
            tell(problems.one_end(span.span, span.axis.text, span.kind), lost=True)


# --- joints, hardware, order ---------------------------------------------------------------------------


def _joint(parts: list[Any], span: Span, tell: Tell) -> m.JointStatement:
    entering, receiving = all_of(parts, tuple)
    return m.JointStatement(entering, receiving, all_of(parts, m.Method), span)


def _paths(parts: list[Any], span: Span, tell: Tell) -> tuple[m.Path, ...]:
    return tuple(paths(parts, span))


def _rests(parts: list[Any], span: Span, tell: Tell) -> m.RestsStatement:
    upper, lower = paths(parts, span)
    return m.RestsStatement(upper, lower, span)


def _fit(parts: list[Any], span: Span, tell: Tell) -> m.FitStatement | None:
    said = once(all_of(parts, Clause), tell)
    if "on or under" not in said:
        tell(problems.fit_nowhere(_head(parts, span)), lost=True)
        return None
    layout, along = said.get("at corners, row or centred", (None, None))
    count, hardware = exprs(parts)[0], paths(parts, span)[0]
    return m.FitStatement(count, hardware, said["on or under"], layout, along, said.get("inset"), span)


def _order(parts: list[Any], span: Span, tell: Tell) -> m.OrderStatement:
    return m.OrderStatement(tuple(p for p in parts if isinstance(p, (m.OrderRule, m.OwnStep))), span)


def _rule(parts: list[Any], span: Span, tell: Tell) -> m.OrderRule:
    first, then = all_of(parts, m.StepRef)
    return m.OrderRule(*((then, first) if tokens(parts, "AFTER") else (first, then)), span)


def _own_step(parts: list[Any], span: Span, tell: Tell) -> m.OwnStep:
    said = {key: refs for key, refs in all_of(parts, tuple)}
    return m.OwnStep(text(parts, span), said.get("after", ()), said.get("before", ()), span)


def _step_list(parts: list[Any], span: Span, tell: Tell) -> tuple[str, tuple[m.StepRef, ...]]:
    return parts[0].text, all_of(parts, m.StepRef)


def _step(parts: list[Any], span: Span, tell: Tell) -> m.StepRef:
    target = next(iter(paths(parts, span)), None)
    return m.StepRef(first_of(parts, m.Name), target, title(parts, span), span)


WORK: dict[str, Action] = {
    "assembly": _assembly,
    "parameter": _parameter,
    "size": _size,
    "default": _default,
    "when": _when,
    "place": _place,
    "arguments": _arguments,
    "argument": _argument,
    "turned": _turned,
    "mirrored": _mirrored,
    "alias": _alias,
    "opening": _opening,
    "part": _part,
    "joint": _joint,
    "paths": _paths,
    "rests": _rests,
    "fit": _fit,
    "order": _order,
    "rule": _rule,
    "own_step": _own_step,
    "step_after": _step_list,
    "step_before": _step_list,
    "step": _step,
}
