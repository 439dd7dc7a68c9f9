"""Steps of the build that came or went, and lines of the spec's own order."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping

from setout.compare.model import StepChange
from setout.plan.model import Plan
from setout.plan.order.model import StepId

Line = tuple[StepId, StepId]


def steps(old: Plan, new: Plan, to_new: Mapping[str, str], measures: Mapping[str, str]) -> tuple[StepChange, ...]:
    """`to_new`: paths of assemblies and boards, and definitions by name, old → new, where they differ; `measures`:
    those that are called otherwise."""

    def called(step: StepId) -> StepId:
        if step.verb == "measure":
            return StepId(step.verb, measures.get(step.target, step.target))
        return _renamed(step, to_new)

    before = {called(step.id): step.id for step in old.order.steps}
    after = [step.id for step in new.order.steps]
    kept = set(after)
    gone = {key: step for key, step in before.items() if key not in kept}
    added = [step for step in after if step not in before]
    found = [StepChange("gone", s.verb, s.target) for s in gone.values()]
    found += [StepChange("added", s.verb, s.target) for s in added]
    swapped = _swapped(gone, added)
    lines = {tuple(swapped.get(s, s) for s in map(called, line)): line for line in _declared(old)}
    now = _declared(new)
    said = set(now)
    found += [_line("line gone", line) for key, line in lines.items() if key not in said]
    found += [_line("line added", line) for line in now if line not in lines]
    return tuple(found)


def _swapped(gone: Iterable[StepId], added: Iterable[StepId]) -> dict[StepId, StepId]:
    """Steps with one thing instead of another, other slides say: the only one of its verb that went from what holds
    it, and the only one that came."""
    went, came = _by_holder(gone), _by_holder(added)
    return {went[key][0]: came[key][0] for key in went if len(went[key]) == len(came.get(key, ())) == 1}


def _by_holder(steps: Iterable[StepId]) -> dict[tuple[str, str], list[StepId]]:
    found: dict[tuple[str, str], list[StepId]] = defaultdict(list)
    for step in steps:
        holder, dot, _ = step.target.rpartition(".")
        if dot:
            found[step.verb, holder].append(step)
    return found


def _line(how: str, line: Line) -> StepChange:
    first, then = line
    return StepChange(how, first.verb, first.target, (then.verb, then.target))


def _declared(plan: Plan) -> list[Line]:
    return [(r.after, step.id) for step in plan.order.steps for r in step.reasons if r.kind == "declared"]


def _renamed(step: StepId, to_new: Mapping[str, str]) -> StepId:
    """`left_base.drawers.slide20` goes with `left_base`."""
    words = step.target.split(".")
    for n in range(len(words), 0, -1):
        head = ".".join(words[:n])
        if head in to_new:
            return StepId(step.verb, ".".join([to_new[head], *words[n:]]))
    return step
