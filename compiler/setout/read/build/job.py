"""The file as a whole, and what it says of the job and of what is bought."""

from __future__ import annotations

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
    word,
)
from setout.read.machine import Action, Tell
from setout.source import Span


def _start(parts: list[Any], span: Span, tell: Tell) -> tuple[m.Statement, ...]:
    return statements(parts)


# --- the job and what is bought ------------------------------------------------------------------------


def _project(parts: list[Any], span: Span, tell: Tell) -> m.ProjectStatement:
    settings = firsts((Clause(s.key.text, s, s.span) for s in all_of(parts, m.Setting)), tell)
    return m.ProjectStatement(text(parts, span), settings, span)


def _setting(parts: list[Any], span: Span, tell: Tell) -> m.Setting:
    given = exprs(parts)
    return m.Setting(word(parts[0], span), given[0] if given else names(parts, span, tell)[0], span)


def _include(parts: list[Any], span: Span, tell: Tell) -> m.IncludeStatement:
    return m.IncludeStatement(text(parts, span), span)


def _let(parts: list[Any], span: Span, tell: Tell) -> m.LetStatement:
    return m.LetStatement(names(parts, span, tell)[0], exprs(parts)[0], span)


def _measure(parts: list[Any], span: Span, tell: Tell) -> m.MeasureStatement:
    low, high = exprs(parts)
    return m.MeasureStatement(names(parts, span, tell)[0], text(parts, span), low, high, span)


def _practice(parts: list[Any], span: Span, tell: Tell) -> m.PracticeStatement:
    rows = firsts((Clause(row[0].text, row, row[0].span) for row in all_of(parts, tuple)), tell)
    return m.PracticeStatement(rows, span)


def _practice_row(parts: list[Any], span: Span, tell: Tell) -> tuple[m.Name, m.Expr]:
    return names(parts, span, tell)[0], exprs(parts)[0]


def _room(parts: list[Any], span: Span, tell: Tell) -> m.RoomStatement:
    sizes = (Clause("size", size.sizes, size.span) for size in all_of(parts, m.SizeStatement))
    said = once((*sizes, *all_of(parts, Clause)), tell)
    return m.RoomStatement(
        title(parts, span),
        said.get("size", ()),
        said.get("studs"),
        span,
        said.get("door", ()),
        said.get("ceiling"),
        all_of(parts, m.RoomBox),
    )


def _studs(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("studs", (*exprs(parts), None)[:2], span)


def _doorway(parts: list[Any], span: Span, tell: Tell) -> Clause:
    pairs = firsts((Clause(pair[0].text, pair, pair[0].span) for pair in all_of(parts, tuple)), tell)
    return Clause("door", pairs, span)


def _ceiling(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("ceiling", exprs(parts)[0], span)


def _room_box(kind: str) -> Action:
    def build(parts: list[Any], span: Span, tell: Tell) -> m.RoomBox:
        spans = firsts((Clause(s.axis.text, s, s.span) for s in all_of(parts, m.SpanClause)), tell)
        for one in spans:
            if one.kind in ("from", "to"):
                tell(problems.one_end(one.span, one.axis.text, one.kind), lost=True)
        return m.RoomBox(kind, text(parts, span), spans, span)

    return build


def _bought(kind: type, many: tuple[str, ...]) -> Action:
    """Stock, hardware or a saw; clauses in `many` may be said again."""

    def build(parts: list[Any], span: Span, tell: Tell) -> Any:
        given = all_of(parts, m.StockClause)
        single = firsts((Clause(c.key.partition("_")[0], c, c.span) for c in given if c.key not in many), tell)
        clauses = tuple(c for c in given if c.key in many or c in single)
        return kind(names(parts, span, tell)[0], title(parts, span), clauses, span)

    return build


def _rack(parts: list[Any], span: Span, tell: Tell) -> m.RackStatement:
    return m.RackStatement(all_of(parts, m.RackLine), span)


def _rack_line(parts: list[Any], span: Span, tell: Tell) -> m.RackLine:
    return m.RackLine(paths(parts, span)[0], all_of(parts, m.Offcut), span)


def _offcut(parts: list[Any], span: Span, tell: Tell) -> m.Offcut:
    along = first_of(parts, m.StockClause)
    size = first_of(parts, tuple)
    assert size is not None
    return m.Offcut(next(iter(exprs(parts)), None), size, along.values[0] if along else None, span)


def _offcut_size(parts: list[Any], span: Span, tell: Tell) -> tuple[m.Expr, ...]:
    return exprs(parts)


def _stock_clause(key: str) -> Action:
    def build(parts: list[Any], span: Span, tell: Tell) -> m.StockClause:
        return m.StockClause(key, exprs(parts), span)

    return build


def _kind_of_wood(key: str) -> Action:
    """`species poplar`, `panel "hardwood-faced plywood"`"""

    def build(parts: list[Any], span: Span, tell: Tell) -> m.StockClause:
        words = title(parts, span) or names(parts, span, tell)[0]
        return m.StockClause(key, (), span, words)

    return build


def _serves(parts: list[Any], span: Span, tell: Tell) -> m.StockClause:
    return m.StockClause(f"serves_{parts[1].text}", exprs(parts), span)


JOB: dict[str, Action] = {
    "start": _start,
    "project": _project,
    "setting": _setting,
    "include": _include,
    "let": _let,
    "measure": _measure,
    "practice": _practice,
    "practice_row": _practice_row,
    "room": _room,
    "studs": _studs,
    "stock": _bought(m.StockStatement, ("price", "on_hand", "at_most")),
    "hardware": _bought(m.HardwareStatement, ()),
    "saw": _bought(m.SawStatement, ()),
    **{key: _stock_clause(key) for key in ("sheet", "stick", "grain_along", "grain_none", "price", "pack", "raises")},
    **{key: _stock_clause(key) for key in ("on_hand", "at_most")},
    **{key: _stock_clause(key) for key in ("kerf", "rips", "crosscuts", "takes", "breaks", "sticks")},
    **{key: _stock_clause(key) for key in ("density", "stiffness", "edging")},
    **{key: _kind_of_wood(key) for key in ("species", "panel")},
    "box": _stock_clause("pack_box"),
    "serves": _serves,
    "doorway": _doorway,
    "ceiling": _ceiling,
    "keep_clear": _room_box("keep clear"),
    "obstacle": _room_box("obstacle"),
    "rack": _rack,
    "rack_line": _rack_line,
    "offcut": _offcut,
    "offcut_size": _offcut_size,
    "bore": _stock_clause("hole"),
}
