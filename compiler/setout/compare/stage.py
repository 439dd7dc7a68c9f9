"""Two plans to what changed between them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from setout.compare import assemblies, boards, matching
from setout.compare.joints import methods_of
from setout.compare.known import boards_of
from setout.compare.model import Changes, Pair, Told
from setout.compare.names import common_names, renamed_measures
from setout.compare.numbers import numbers
from setout.compare.reuse import reuse
from setout.compare.steps import steps
from setout.diagnostics import Diagnostic, Severity
from setout.plan.model import Plan


def compare(
    old: Plan, new: Plan, old_told: Iterable[Diagnostic] = (), new_told: Iterable[Diagnostic] = ()
) -> Changes:
    """What changed from `old` to `new`; the diagnostics are what was said of each. Turned round it is the mirror image:
    what was added is gone, what grew shrinks."""
    common = common_names(old, new)
    before, after = boards_of(old, common[0]), boards_of(new, common[1])
    owners = matching.assemblies(old, new, before, after)
    pairs = matching.boards(before, after, owners)
    place = {board.path: i for i, board in enumerate(after)}
    pairs.sort(key=lambda pair: place[pair[1].path])
    to_new = {**owners, **{a.path: b.path for a, b in pairs}}
    was, project = (plan.pieces.joined.placed.project for plan in (old, new))
    return Changes(
        was.title,
        project.title,
        project.metric,
        project.mark,
        was.metric,
        was.mark,
        tuple(Pair(a.path, b.path) for a, b in pairs),
        boards.changes(pairs, before, after, (methods_of(old), methods_of(new)), owners),
        assemblies.changes(old, new, owners),
        reuse(old, new, common, {a.path: b.path for a, b in pairs}),
        numbers(old, new),
        steps(old, new, {**_definitions(old, new, owners), **to_new}, renamed_measures(common)),
        _told(old_told, new_told),
    )


def _definitions(old: Plan, new: Plan, owners: Mapping[str, str]) -> dict[str, str]:
    """Definitions by name, old → new, as their placed assemblies pair up."""
    before, after = (plan.pieces.joined.drawn.scene.instances for plan in (old, new))
    return {before[a].definition: after[b].definition for a, b in reversed(owners.items()) if a}


def _told(old: Iterable[Diagnostic], new: Iterable[Diagnostic]) -> tuple[Told, ...]:
    """Warnings and notes by what they say; a place in the text is no matter."""
    before, after = _said(old), _said(new)
    cleared, fresh = before - after, after - before
    found = [Told("cleared", *key) for key in _each(cleared)] + [Told("new", *key) for key in _each(fresh)]
    return tuple(found)


def _said(found: Iterable[Diagnostic]) -> Counter:
    return Counter((d.severity, d.code, d.message) for d in found if d.severity is not Severity.ERROR)


def _each(count: Counter) -> Sequence[tuple]:
    weight = {severity: i for i, severity in enumerate(Severity)}
    return sorted(count.elements(), key=lambda key: (weight[key[0]], key[1], key[2]))
