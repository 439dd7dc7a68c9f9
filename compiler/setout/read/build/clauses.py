"""What stands inside the braces of parts, places, joints and fits."""

from __future__ import annotations

from typing import Any

from setout.read.build.parts import Clause, all_of, exprs, first_of, once, paths, token_span, tokens, word
from setout.read.machine import Action, Tell
from setout.read.model import BandClause, Expr, Feature, Method, Name, Position, Repeat, SpanClause
from setout.source import Span


def _word(parts: list[Any], span: Span, tell: Tell) -> Name:
    return word(parts[0], span)


def _span_of(kind: str) -> Action:
    """a, b and extra stand in the order written; a lone end is b."""

    def build(parts: list[Any], span: Span, tell: Tell) -> SpanClause:
        given: tuple[Expr | None, ...] = (*paths(parts, span), *exprs(parts))
        if kind in ("from", "to"):
            given = (None, *given)
        a, b, extra = (*given, None, None, None)[:3]
        return SpanClause(parts[0], kind, a, b, extra, span)

    return build


def _position(parts: list[Any], span: Span, tell: Tell) -> tuple[Position, ...]:
    if isinstance(parts[0], Name):
        return (Position("face_at", parts[0], exprs(parts)[0], span),)
    kind = parts[0].text
    if kind == "centred":
        return (Position(kind, first_of(parts, Name), next(iter(exprs(parts)), None), span),)
    targets = exprs(parts) or paths(parts, span)
    return tuple(Position(kind, None, t, span if len(targets) == 1 else t.span) for t in targets)


def _orientation(parts: list[Any], span: Span, tell: Tell) -> Clause:
    words, positions = all_of(parts, Name), first_of(parts, tuple) or ()
    return Clause("upright, level or facing", (words, positions), span)


def _repeat(parts: list[Any], span: Span, tell: Tell) -> Clause:
    two, amounts = paths(parts, span), exprs(parts)
    between = (two[0], two[1]) if two else None
    pitch, start = (None, None) if two else amounts[1:3]
    return Clause("repeat", Repeat(amounts[0], first_of(parts, Name), between, pitch, start, span), span)


def _axis_value(parts: list[Any], span: Span, tell: Tell) -> tuple[Name, Any]:
    return parts[0], parts[1]


def _named(key: str) -> Action:
    """A clause whose value is one name: `show left`, `grain any`."""

    def build(parts: list[Any], span: Span, tell: Tell) -> Clause:
        value = parts[1] if isinstance(parts[1], Name) else word(parts[1], span)
        return Clause(key, value, span)

    return build


def _amount(key: str) -> Action:
    """A clause whose value is one expression: `rip 1-1/4`, `count 4`."""

    def build(parts: list[Any], span: Span, tell: Tell) -> Clause:
        return Clause(key, exprs(parts)[0], span)

    return build


def _proud(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("proud", all_of(parts, Name), span)


def _sequence(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("in sequence", span, span)


def _loose_size(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("size", exprs(parts), span)


def _band(parts: list[Any], span: Span, tell: Tell) -> BandClause:
    return BandClause(all_of(parts, Name), paths(parts, span)[0], bool(tokens(parts, "ADDED")), span)


def _cut(parts: list[Any], span: Span, tell: Tell) -> Feature:
    """A notch or a cut-out."""
    return Feature(parts[0].text, all_of(parts, SpanClause), (), None, None, None, None, span)


def _hole(parts: list[Any], span: Span, tell: Tell) -> Feature:
    amounts = (*exprs(parts), None)
    at = tuple(all_of(parts, tuple))
    return Feature("hole", (), at, amounts[0], amounts[1], first_of(parts, Name), None, span)


def _mitre(parts: list[Any], span: Span, tell: Tell) -> Feature:
    end, long = all_of(parts, Name)
    return Feature("mitre", (), (), exprs(parts)[0], None, end, long, span)


def _method_word(parts: list[Any], span: Span, tell: Tell) -> Clause:
    """`every 6`, `on bottom`, `through left_side`, `into studs`, `depth 1/4`, `gap 1/32`."""
    key = parts[0].text
    value = next(iter(exprs(parts)), None) or first_of(parts, Name) or next(iter(paths(parts, span)), None)
    return Clause(key, value or word(parts[-1], span), span)


def _stopped(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("stopped", (parts[1], parts[2]), span)


def _method(parts: list[Any], span: Span, tell: Tell) -> Method:
    kind, clauses = parts[0].text, all_of(parts, Clause)
    named = word(parts[1], span) if kind == "only" else None
    stopped = tuple(c.value for c in clauses if c.key == "stopped")
    get = once((c for c in clauses if c.key != "stopped"), tell).get
    return Method(
        kind, get("on"), get("through"), get("into"), get("every"), get("depth"), get("gap"), stopped, named, span
    )


def _fit_where(parts: list[Any], span: Span, tell: Tell) -> Clause:
    return Clause("on or under", Position(parts[0].text, None, paths(parts, span)[0], span), span)


def _fit_layout(parts: list[Any], span: Span, tell: Tell) -> Clause:
    """`at corners`, `row along wide`, `centred`."""
    layout = tokens(parts, "CORNERS", "ROW", "CENTRED")[0]
    return Clause("at corners, row or centred", (layout.text, first_of(parts, Name)), token_span(layout, span).to(span))


CLAUSES: dict[str, Action] = {
    **{f"span_{kind}": _span_of(kind) for kind in ("between", "over", "from_to", "size", "size_from", "size_to")},
    **{f"span_{kind}": _span_of(kind) for kind in ("size_on", "from", "to")},
    **{rule: _word for rule in ("axis", "face", "run", "broad", "verb")},
    "position": _position,
    "orientation": _orientation,
    "repeat": _repeat,
    "axis_value": _axis_value,
    "grain": _named("grain"),
    "show": _named("show"),
    "proud": _proud,
    "rip": _amount("rip"),
    "count": _amount("count"),
    "band": _band,
    "board_load": _amount("load"),
    "loose_size": _loose_size,
    "sequence": _sequence,
    "notch": _cut,
    "cutout": _cut,
    "hole": _hole,
    "mitre": _mitre,
    "method": _method,
    "method_stopped": _stopped,
    **{f"method_{key}": _method_word for key in ("on", "through", "into", "every", "depth", "gap")},
    "fit_on": _fit_where,
    "fit_under": _fit_where,
    "fit_corners": _fit_layout,
    "fit_row": _fit_layout,
    "fit_centred": _fit_layout,
    "fit_inset": _amount("inset"),
}
