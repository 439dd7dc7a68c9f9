"""The spec's `order` lines as links: each names steps, and its pairs of steps are what it asks for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from setout.diagnostics import Diagnostic
from setout.place.model import Scene
from setout.plan.order import problems
from setout.plan.order.draft import Draft, Link, Priority
from setout.plan.order.model import StepId
from setout.plan.order.names import Names
from setout.read.model import OrderRule, OwnStep, StepRef
from setout.resolve.model import OrderLine
from setout.source import Span

Pair = tuple[StepId, StepId]
Wanted = tuple[tuple[StepId, ...], tuple[StepId, ...]]
"""All of the first come before all of the second."""


@dataclass(frozen=True)
class Asked:
    """What one line asks for. `is_rule`: it only orders steps that are there anyway."""

    line: int
    span: Span
    is_rule: bool
    wanted: tuple[Wanted, ...]

    @property
    def pairs(self) -> Iterator[Pair]:
        return ((a, b) for first, then in self.wanted for a in first for b in then)


def singled(lines: Sequence[OrderLine], names: Names) -> Iterator[frozenset[str]]:
    """The sets of boards that lines name for cutting or machining."""
    for line in lines:
        for ref in _refs(line.rule):
            if ref.verb is not None and ref.target is not None and ref.verb.text in ("cut", "machine"):
                scopes = _scopes(line, names.scene)
                boards = frozenset(p for scope in scopes for p in names.boards(ref.target.text, scope))
                if boards:
                    yield boards


def named(lines: Sequence[OrderLine], names: Names, drafts: Mapping[StepId, Draft]) -> Iterator[frozenset[StepId]]:
    """The steps that each name in a line stands for, in all the instances in which the line holds."""
    for line in lines:
        scopes = _scopes(line, names.scene)
        for ref in _refs(line.rule):
            yield frozenset(step for scope in scopes for step in names.steps(ref, scope, drafts))


class Declared:
    """`drafts` with the builder's own steps added, `asked` one a line, `found` what can't be made sense of."""

    def __init__(self, lines: Sequence[OrderLine], names: Names, drafts: Mapping[StepId, Draft]) -> None:
        self.names = names
        self.scene = names.scene
        self.drafts = dict(drafts)
        self.found: list[Diagnostic] = []
        self.own: dict[tuple[int, str], StepId] = {}  # (line, scope) -> step
        for i, line in enumerate(lines):
            if isinstance(line.rule, OwnStep):
                self._own_steps(i, line, line.rule)
        self.asked = tuple(self._asked(i, line) for i, line in enumerate(lines))
        for i, line in enumerate(lines):
            if isinstance(line.rule, OwnStep):
                self._place_own(self.asked[i], line)

    def _own_steps(self, i: int, line: OrderLine, own: OwnStep) -> None:
        scopes = _scopes(line, self.scene)
        for scope in scopes:
            target = f"{scope}: {own.text.value}" if len(scopes) > 1 else own.text.value
            ident = StepId("step", target)
            if ident in self.drafts:
                self.found.append(problems.own_step_twice(own.text.value, own.text.span, self.drafts[ident].span))
                return
            within = _chain(scope, self.scene)
            text = own.text.value
            self.drafts[ident] = Draft(ident, scope, Priority(3), frozenset(), within, own.text.span, text=text)
            self.own[i, scope] = ident

    def _asked(self, i: int, line: OrderLine) -> Asked:
        rule = line.rule
        scopes = _scopes(line, self.scene)
        wanted: list[Wanted] = []
        known = {ref: self._known(ref, scopes) for ref in _refs(rule)}
        if isinstance(rule, OrderRule):
            if known[rule.first] and known[rule.then]:
                for scope in scopes:
                    wanted.extend(self._paired(self._steps(rule.first, scope), self._steps(rule.then, scope)))
            return Asked(i, rule.span, True, tuple(wanted))
        for scope in scopes:
            own = self.own.get((i, scope))
            if own is not None:
                wanted.extend((self._steps(ref, scope), (own,)) for ref in rule.after)
                wanted.extend(((own,), self._steps(ref, scope)) for ref in rule.before)
        return Asked(i, rule.span, False, tuple((a, b) for a, b in wanted if a and b))

    def _steps(self, ref: StepRef, scope: str) -> tuple[StepId, ...]:
        return self.names.steps(ref, scope, self.drafts)

    def _known(self, ref: StepRef, scopes: Sequence[str]) -> bool:
        """Whether the reference stands for some step; says so if it never could."""
        if any(self._steps(ref, scope) for scope in scopes):
            return True
        known = any(self.names.is_known(ref, scope) for scope in scopes)
        if scopes and (known or not self.names.is_absent(ref)):
            labels = [problems.label(i, d.text) for i, d in self.drafts.items()]
            self.found.append(problems.no_such_step(ref, known, labels))
        return False

    def _paired(self, first: tuple[StepId, ...], then: tuple[StepId, ...]) -> list[Wanted]:
        """Within each instance that holds both; where none does, all before all."""
        firsts, thens = self._by_instance(first), self._by_instance(then)
        pairs: dict[Pair, None] = {}
        for a in first:
            for i in self._nearest(a, thens):
                pairs.update(dict.fromkeys((a, b) for b in thens[i]))
        met = {b for _, b in pairs}
        for b in then:
            for i in self._nearest(b, firsts) if b not in met else ():
                pairs.update(dict.fromkeys((a, b) for a in firsts[i]))
        return [((a,), (b,)) for a, b in pairs] if pairs else [(first, then)]

    def _by_instance(self, steps: Iterable[StepId]) -> dict[str, list[StepId]]:
        found: dict[str, list[StepId]] = {}
        for step in steps:
            for instance in self.drafts[step].within:
                found.setdefault(instance, []).append(step)
        return found

    def _nearest(self, step: StepId, holding: Mapping[str, list[StepId]]) -> list[str]:
        """The innermost instances that hold the step and one of `holding`."""
        both = [i for i in self.drafts[step].within if i in holding]
        outer = {o for i in both for o in _chain(i, self.scene)[1:]}
        return [i for i in both if i not in outer]

    def _place_own(self, asked: Asked, line: OrderLine) -> None:
        """A step of the builder's own stands just before the first that waits for it, else just after the last it waits
        for, else when all the rest is done."""
        for (i, _), ident in self.own.items():
            if i != asked.line:
                continue
            later = [self.drafts[b].priority for a, b in asked.pairs if a == ident]
            sooner = [self.drafts[a].priority for a, b in asked.pairs if b == ident]
            if later:
                at = min(later)._replace(tie=-1)
            elif sooner:
                at = max(sooner)._replace(tie=1)
            else:
                continue
            self.drafts[ident] = replace(self.drafts[ident], priority=at)


def links(asked: Iterable[Asked]) -> list[Link]:
    """One link a pair; where many come before many, all meet in a step without a verb that is never printed."""
    found: list[Link] = []
    for one in asked:
        for n, (first, then) in enumerate(one.wanted):
            if min(len(first), len(then)) == 1:
                found.extend(Link(a, b, "declared", one.span, one.line) for a in first for b in then)
                continue
            middle = StepId("", f"{one.line} {n}")
            found.extend(Link(a, middle, "declared", one.span, one.line) for a in first)
            found.extend(Link(middle, b, "declared", one.span, one.line) for b in then)
    return found


def _refs(rule: OrderRule | OwnStep) -> tuple[StepRef, ...]:
    return (rule.first, rule.then) if isinstance(rule, OrderRule) else (*rule.after, *rule.before)


def _scopes(line: OrderLine, scene: Scene) -> list[str]:
    """The instances of the assembly in which the line stands; the job's lines have the job."""
    return [path for path, i in scene.instances.items() if i.definition == line.scope] if line.scope else [""]


def _chain(instance: str, scene: Scene) -> tuple[str, ...]:
    chain, at = [], instance
    while at:
        chain.append(at)
        at = scene.instances[at].parent or ""
    return tuple(chain)
