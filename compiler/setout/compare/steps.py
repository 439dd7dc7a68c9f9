"""Steps of the build that came or went, and lines of the spec's own order."""

from __future__ import annotations

from collections.abc import Mapping

from setout.compare.model import StepChange
from setout.plan.model import Plan
from setout.plan.order.model import StepId

Line = tuple[StepId, StepId]


def steps(old: Plan, new: Plan, to_new: Mapping[str, str]) -> tuple[StepChange, ...]:
    """`to_new`: paths of assemblies and boards, and definitions by name, old → new, where they differ."""
    before = {_renamed(step.id, to_new): step.id for step in old.order.steps}
    after = [step.id for step in new.order.steps]
    kept = set(after)
    found = [StepChange("gone", s.verb, s.target) for key, s in before.items() if key not in kept]
    found += [StepChange("added", s.verb, s.target) for s in after if s not in before]
    lines = {tuple(_renamed(s, to_new) for s in line): line for line in _declared(old)}
    now = _declared(new)
    found += [_line("line gone", line) for key, line in lines.items() if key not in set(now)]
    found += [_line("line added", line) for line in now if line not in lines]
    return tuple(found)


def _line(how: str, line: Line) -> StepChange:
    first, then = line
    return StepChange(how, first.verb, first.target, (then.verb, then.target))


def _declared(plan: Plan) -> list[Line]:
    return [(r.after, step.id) for step in plan.order.steps for r in step.reasons if r.kind == "declared"]


def _renamed(step: StepId, to_new: Mapping[str, str]) -> StepId:
    return StepId(step.verb, to_new.get(step.target, step.target))
