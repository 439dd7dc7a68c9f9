"""Steps of the build, and what is warned of."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from setout.compare.model import Changes, StepChange, Told
from setout.write.changes.model import Table
from setout.write.facts.paths import ranges, spoken

STEP = {"gone": "no longer", "added": "new"}
LINE = {"line gone": "no longer said", "line added": "now said"}


def steps(changes: Changes) -> Table:
    """Steps of assemblies that came or went are told of with these."""
    alone = [a.new or a.old or "" for a in changes.assemblies if a.old is None or a.new is None]
    known = [s for s in changes.steps if s.then is None and not _is_within(s.target, alone)]
    verbs: dict[tuple[str, str], list[str]] = {}
    for (how, words), targets in _targets(known).items():
        verbs.setdefault((how, ", ".join(ranges(targets))), []).append(words)
    cells = [(how, f"{', '.join(words)}: {targets}") for (how, targets), words in verbs.items()]
    return Table("steps", "Build order", "", ("Change", "Step"), (*cells, *_lines(changes)))


def _targets(known: Iterable[StepChange]) -> dict[tuple[str, str], list[str]]:
    """By what happens to a verb: of which targets."""
    rows: dict[tuple[str, str], list[str]] = {}
    for group in _by_holder(known):
        if [s.how for s in group] == ["gone", "added"]:
            old, new = (_thing(s.target) for s in group)
            rows.setdefault(("instead", f"{group[0].verb} {new} instead of {old}"), []).append(_holder(group[0].target))
            continue
        for change in group:
            rows.setdefault((STEP[change.how], change.verb), []).append(change.target or "the job")
    return rows


def _is_within(target: str, assemblies: Iterable[str]) -> bool:
    return any(target == path or target.startswith(f"{path}.") for path in assemblies)


def _by_holder(steps: Iterable[StepChange]) -> Iterator[list[StepChange]]:
    found: dict[tuple[str, str], list[StepChange]] = {}
    for step in steps:
        found.setdefault((step.verb, _holder(step.target) or step.target), []).append(step)
    yield from found.values()


def _holder(target: str) -> str:
    return target.rpartition(".")[0]


def _thing(target: str) -> str:
    return spoken(target.rpartition(".")[2])


def _lines(changes: Changes) -> list[tuple[str, str]]:
    """Lines of the spec's own order. One that reads as before, though other things bear its names, isn't told."""
    lines = [(s.how, _line(s)) for s in changes.steps if s.then is not None]
    before, now = ({words for how, words in lines if how == which} for which in LINE)
    return [(LINE[how], words) for how, words in lines if words not in before & now]


def _line(change: StepChange) -> str:
    assert change.then is not None
    verb, target = change.then
    return f"{change.verb} {spoken(change.target)} before {verb} {spoken(target)}"


# --- warnings --------------------------------------------------------------------------------------------


def told(changes: Changes) -> Table:
    """What is only said with other numbers stands in one row, as it is said now."""
    cleared = {_gist(t): t for t in changes.told if t.how == "cleared"}
    fresh = {_gist(t) for t in changes.told if t.how == "new"}
    rows = tuple(
        (_how(t, t.how == "new" and _gist(t) in cleared), t.code, t.message)
        for t in _new_first(changes.told)
        if t.how == "new" or _gist(t) not in fresh
    )
    return Table("told", "Warnings and notes", "", ("Change", "Code", "What it says"), rows)


def _new_first(some: Sequence[Told]) -> list[Told]:
    return sorted(some, key=lambda t: t.how != "new")


def _how(one: Told, still: bool) -> str:
    kind = one.severity.value
    return f"{kind}, other numbers" if still else f"new {kind}" if one.how == "new" else f"{kind} cleared"


def _gist(one: Told) -> tuple[str, str]:
    return one.code, re.sub(r"\d[\d\-/.]*", "0", one.message)
