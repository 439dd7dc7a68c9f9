"""What hangs on what: loops, and names of what is not there."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from setout.diagnostics import Diagnostic, Label, error
from setout.geometry import Axis, Face
from setout.place.engine import Ask
from setout.place.problems.words import head
from setout.place.site import Scope, Thing
from setout.source import Span

_LINKS_SHOWN = 12
"""Of a longer loop only the first links are shown."""


def loop(links: Sequence[Ask]) -> Diagnostic:
    """`links`: each question asked while the one before it was open; the last is asked for by itself."""
    names = [_question(link) for link in links]
    labels = [
        Label(link.span, f"`{names[i - 1]}` hangs on `{names[i]}`")
        for i, link in enumerate(links)
        if link.span is not None and _thing(links[i - 1]) != _thing(link)
    ]
    if not labels:
        labels = [Label(link.span, f"`{names[i]}` hangs on itself") for i, link in enumerate(links) if link.span]
    shown = _without_repeats(labels)
    others = shown[1:_LINKS_SHOWN]
    more = f" ({len(shown) - _LINKS_SHOWN} more links are not shown)" if len(shown) > _LINKS_SHOWN else ""
    ring = _ring(names)
    return error(
        "rod250",
        "Sizes and places hang on one another in a loop",
        shown[0].span if shown else None,
        shown[0].text if shown else "",
        *others,
        help=f"{ring}{more}: give one of them a place or a size that doesn't come from the others",
    )


def left_out(path: str, span: Span, thing: Thing) -> Diagnostic:
    return error(
        "rod251",
        f"`{path}` is left out here",
        span,
        "this needs it",
        Label(head(thing), "its `when` is false here"),
        help="put what needs it under the same `when`, or measure from something that is always there",
    )


def no_such_member(name: str, number: str, many: int, span: Span, thing: Thing) -> Diagnostic:
    have = f"there are {many}: `{name}.1` to `{name}.{many}`" if many > 1 else f"there is only `{name}.1`"
    return error(
        "rod252",
        f"There is no `{name}.{number}`",
        span,
        have if many else f"`{name}` has no members here",
        Label(head(thing), "repeated here"),
        help="the lowest, leftmost or frontmost is number 1",
    )


# --- helpers ---


def _thing(link: Ask) -> object:
    """Whose end is asked for, so that a link within one thing can be passed over. Nothing else is alike."""
    return link.key[1:3] if link.key[0] == "end" else link.key


def _question(link: Ask) -> str:
    return _QUESTIONS[link.key[0]](*link.key[1:])


def _end(scope: Scope, name: str, member: int, axis: Axis, sign: int) -> str:
    return f"{scope.path_of(name, member)}.{Face(axis, sign).word if sign else axis.word}"


def _spot(scope: Scope, what: str) -> str:
    return f"{scope.path}.{what}" if scope.path else what


_QUESTIONS: dict[str, Callable[..., str]] = {
    "end": _end,
    "box": lambda scope, name, member: scope.path_of(name, member),
    "size": lambda scope, axis: f"{scope.path or 'the job'}.{axis.word}",
    "width": lambda scope, name: f"the width of {scope.path_of(name)}",
    "row": lambda scope, name: f"the spacing of {scope.path_of(name)}",
    "count": lambda scope, name: f"how many {scope.path_of(name)}",
    "there": lambda scope, name: f"whether there is {scope.path_of(name)}",
    "gap": lambda scope, a, b, axis, at: f"the gap between {'.'.join(a)} and {'.'.join(b)}",
    "reach": lambda scope, a, b, axis, at: f"the reach over {'.'.join(a)} and {'.'.join(b)}",
    "parameter": lambda scope, name: _spot(scope, name),
    "let": lambda name: name,
    "scope": lambda scope, name, member: scope.path_of(name, member),
    "motion": lambda scope: f"the place of {scope.path}",
    "raised": lambda scope: f"the feet of {scope.path}",
}


def _ring(names: Sequence[str]) -> str:
    ring = [*names[-1:], *names]
    if len(ring) > _LINKS_SHOWN:
        ring = [*ring[: _LINKS_SHOWN - 2], "...", ring[-1]]
    return " -> ".join(name for i, name in enumerate(ring) if i == 0 or name != ring[i - 1])


def _without_repeats(labels: Sequence[Label]) -> list[Label]:
    kept: dict[Span, Label] = {}
    for label in labels:
        kept.setdefault(label.span, label)
    return list(kept.values())
