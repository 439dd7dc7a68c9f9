"""The build as a list of steps to tick off, and as a picture."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.drawing import Drawing
from setout.plan.order.model import Reason, Step, StepId
from setout.write.facts import Facts
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import decimal


@dataclass(frozen=True)
class Doing:
    """What a step does, in the pieces a sentence is made of.

    `what` tells how to take `title`: "measure", "kind" (an assembly's definition), "assembly" (one placed, called
    `path`; `title` may be ""), "job" (its own boards, or the whole), "all" (the job when it is one assembly),
    "hardware" (on `path`), "boards" (named outright) or "own" (the spec's own words).
    """

    verb: str
    what: str
    title: str
    path: str


@dataclass(frozen=True)
class Why:
    """One kind of reason and the steps that must come first for it.

    `line` of the spec for a declared one (0: none), `other_file` where that is not the spec's own file."""

    kind: str
    after: tuple[int, ...]
    other_file: str
    line: int


@dataclass(frozen=True)
class Row:
    """`hours` to wait after it, "" for none."""

    number: int
    doing: Doing
    marks: tuple[tuple[str, int], ...]
    hardware: tuple[tuple[str, int], ...]
    hours: str
    whys: tuple[Why, ...]


@dataclass(frozen=True)
class BuildOrder:
    rows: tuple[Row, ...]
    pictures: tuple[Drawing, ...]


def build(facts: Facts, pictures: tuple[Drawing, ...]) -> BuildOrder | None:
    """None when there is nothing to do."""
    rows = tuple(_row(facts, step) for step in facts.plan.order.steps)
    return BuildOrder(rows, pictures) if rows else None


def words(facts: Facts, say: Callable[[Doing], str]) -> Mapping[StepId, str]:
    """Each step's words for the picture, as `say` puts them."""
    return {step.id: say(doing(facts, step)) for step in facts.plan.order.steps}


def doing(facts: Facts, step: Step) -> Doing:
    verb, target = step.id.verb, step.id.target
    project, instances = facts.project, facts.scene.instances
    if verb == "step":
        return Doing(verb, "own", target, "")
    if verb == "measure":
        return Doing(verb, "measure", project.measures[target].title or spoken(target), spoken(target))
    if verb == "fit":
        return Doing(verb, "hardware", ", ".join(title for title, _ in _hardware(facts, step)), spoken(step.owner))
    if not target:
        return Doing(verb, "job" if len(instances) > 1 else "all", project.title, "")
    if target in instances:
        return Doing(verb, "assembly", _title(facts, target), spoken(target))
    if target in project.assemblies:
        return Doing(verb, "kind", facts.definition_title(target), "")
    return Doing(verb, "boards", _board(facts, target), "")


def _title(facts: Facts, path: str) -> str:
    """What the assembly is, unless its name says so already."""
    title = facts.definition_title(facts.scene.instances[path].definition)
    return "" if title.casefold() == spoken(path).casefold() else title


def _board(facts: Facts, path: str) -> str:
    """`left base: right side`; what is no board's path is spoken as it is."""
    board = facts.scene.boards.get(path)
    if board is None or not board.owner:
        return spoken(path)
    return f"{spoken(board.owner)}: {spoken(board.name)}"


def _row(facts: Facts, step: Step) -> Row:
    return Row(
        number=step.number,
        doing=doing(facts, step),
        marks=step.marks,
        hardware=_hardware(facts, step),
        hours=_hours(step.wait),
        whys=_whys(facts, step),
    )


def _hours(wait: Fraction) -> str:
    return "" if not wait else decimal(wait, 0 if wait.denominator == 1 else 1)


def _hardware(facts: Facts, step: Step) -> tuple[tuple[str, int], ...]:
    """Titles with how many."""
    count: Counter[str] = Counter()
    for fitting in facts.scene.fittings:
        if fitting.id in step.fittings:
            count[fitting.hardware.title or fitting.hardware.name] += fitting.count
    return tuple((title, n) for title, n in count.items() if n)  # of a pair, the other half counts for nothing


def _whys(facts: Facts, step: Step) -> tuple[Why, ...]:
    """Reasons of one kind stand together; each declared one has its own line of the spec."""
    number = {s.id: s.number for s in facts.plan.order.steps}
    found: dict[tuple[str, str, int], list[int]] = {}
    for reason in step.reasons:
        key = (reason.kind, *_line(facts, reason))
        found.setdefault(key, []).append(number[reason.after])
    return tuple(Why(kind, tuple(sorted(after)), file, line) for (kind, file, line), after in found.items())


def _line(facts: Facts, reason: Reason) -> tuple[str, int]:
    if reason.span is None or reason.kind != "declared":
        return "", 0
    sources = facts.project.sources
    own = next(iter(sources), "")
    line, _ = sources[reason.span.file].position(reason.span.start)
    return "" if reason.span.file == own else reason.span.file, line
