"""The stages, in order. Each takes what the one before it made; none looks back."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import partial
from typing import TypeVar

from setout.diagnostics import Checked, Diagnostic, Severity
from setout.inspect import inspect
from setout.join import join
from setout.piece import parse_register, piece
from setout.place import place
from setout.plan import Cut, plan
from setout.plan.model import Plan
from setout.read import read
from setout.resolve import resolve
from setout.source import Source

T = TypeVar("T")
Reader = Callable[[str], "Source | None"]


def compile_spec(
    source: Source,
    reader: Reader,
    settings: Mapping[str, str],
    register: Source,
    tell: Callable[[str], None] = lambda stage: None,
    cut: Cut | None = None,
) -> Checked[Plan]:
    """From a spec's text to all that the packet is written from.

    `reader` fetches what the spec includes, `register` is the marks file (empty when there is none yet), `tell`
    hears the name of each stage as it starts. The cutting is planned when `cut` says how. A stage with errors is
    followed by the next as long as it handed something on, but then only errors are kept: a warning may come of
    what was left out.
    """
    found: list[Diagnostic] = []

    def run(stage: str, work: Callable[..., Checked[T]], *given: object) -> T | None:
        if any(value is None for value in given):
            return None
        tell(stage)
        checked = work(*given)
        found.extend(_errors(checked.diagnostics) if _errors(found) else checked.diagnostics)
        return checked.value

    tree = run("reading", read, source)
    project = run("resolving names", resolve, tree, reader, settings)
    placed = run("placing parts", place, project)
    joined = run("joining", join, placed)
    marks = run("reading the marks", parse_register, register)
    pieces = run("sorting pieces", piece, joined, marks)
    inspected = run("looking it over", inspect, pieces)
    planned = run("planning the work", partial(plan, cut=None if _errors(found) else cut), pieces, inspected)
    return Checked(planned, in_order(found, source.name))


def _errors(found: Iterable[Diagnostic]) -> list[Diagnostic]:
    return [d for d in found if d.severity is Severity.ERROR]


def in_order(found: list[Diagnostic], first: str) -> tuple[Diagnostic, ...]:
    """Without doubles, by place: the spec's own file `first`, then the others by name, then what has no place."""

    def place_of(d: Diagnostic) -> tuple[int, str, int, int, str, str]:
        if d.label is None:
            return 2, "", 0, 0, d.code, d.message
        span = d.label.span
        return int(span.file != first), span.file, span.start, span.end, d.code, d.message

    return tuple(sorted(dict.fromkeys(found), key=place_of))
