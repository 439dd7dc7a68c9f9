"""The build order: what the structure asks for, what the builder declared, sorted into one row of steps."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence

from setout.diagnostics import Checked, Diagnostic
from setout.piece.model import Pieces
from setout.plan.order import problems
from setout.plan.order.batches import batches
from setout.plan.order.bite import idle
from setout.plan.order.declared import Declared, links, named, singled
from setout.plan.order.draft import YIELDING, Draft, Link, Priority
from setout.plan.order.model import Order, Reason, Step, StepId
from setout.plan.order.names import Names
from setout.plan.order.sorting import loops, stable_order, urgency
from setout.plan.order.steps import structure
from setout.plan.order.things import things
from setout.plan.order.together import WIDTHS, together
from setout.source import Span


def order(pieces: Pieces) -> Checked[Order]:
    """Number the steps so that every dependency and every order line holds."""
    joined = pieces.joined
    lines = joined.placed.project.order
    all_things = things(joined.drawn)
    names = Names(pieces, all_things)
    book = structure(pieces, all_things, batches(pieces, singled(lines, names)))
    apart = tuple(named(lines, names, book.drafts))
    for width in WIDTHS:
        drafts, structural = together(book, apart, width)
        declared = Declared(lines, names, drafts)
        asked = links(declared.asked)
        every = [*_not_contradicted(structural, asked), *asked]
        drafts = declared.drafts
        if len(_sorted(drafts, every)) == _count(drafts, every):
            return Checked(Order(_numbered(drafts, every)), (*declared.found, *_idle(declared, every)))
    texts = {i: d.text for i, d in drafts.items()}
    rounds = [problems.goes_round(loop, texts) for loop in _loops(drafts, every)]
    return Checked(Order(_numbered(drafts, structural)), (*declared.found, *rounds))


def _not_contradicted(structural: Sequence[Link], asked: Iterable[Link]) -> list[Link]:
    """A habit yields to an order line that says the very opposite."""
    opposite = {(link.after, link.before) for link in asked}
    return [x for x in structural if x.kind not in YIELDING or (x.before, x.after) not in opposite]


def _edges(every: Iterable[Link]) -> list[tuple[StepId, StepId]]:
    return list(dict.fromkeys((x.before, x.after) for x in every))


def _nodes(drafts: Mapping[StepId, Draft], every: Iterable[Link]) -> list[StepId]:
    """The steps, and the meeting points of order lines between them."""
    return list(dict.fromkeys([*drafts, *(x for link in every for x in (link.before, link.after))]))


def _count(drafts: Mapping[StepId, Draft], every: Sequence[Link]) -> int:
    return len(_nodes(drafts, every))


def _sorted(drafts: Mapping[StepId, Draft], every: Sequence[Link]) -> list[StepId]:
    nodes, edges = _nodes(drafts, every), _edges(every)
    late, early = Priority(9), Priority(-1)
    own = {n: drafts[n].priority if n in drafts else late for n in nodes}
    some = stable_order(nodes, edges, own)
    known = set(some)
    pressing = urgency(some, [(a, b) for a, b in edges if a in known and b in known], own)
    # a meeting point is no work: it is passed as soon as it can be
    return stable_order(some, [(a, b) for a, b in edges if a in known and b in known],
                        {n: (pressing[n], own[n]) if n in drafts else (early, early) for n in some})  # fmt: skip


def _loops(drafts: Mapping[StepId, Draft], every: Sequence[Link]) -> list[list[Link]]:
    said = [(x.before, x.after) for x in every if x.line >= 0]
    by_ends = {(x.before, x.after): x for x in reversed(every)}
    by_ends.update({(x.before, x.after): x for x in reversed(every) if x.line >= 0})
    rounds = []
    for loop in loops(_nodes(drafts, every), _edges(every), said):
        chain = [by_ends[ends] for ends in zip([loop[-1], *loop[:-1]], loop)]
        rounds.append(_through_meeting_points(chain))
    return rounds


def _through_meeting_points(loop: list[Link]) -> list[Link]:
    """The loop with the two links at each meeting point made one."""
    start = next((i for i, link in enumerate(loop) if link.before.verb), 0)
    made: list[Link] = []
    for link in [*loop[start:], *loop[:start]]:
        if made and not made[-1].after.verb:
            made[-1] = Link(made[-1].before, link.after, link.kind, link.span, link.line)
        else:
            made.append(link)
    return made


def _idle(declared: Declared, every: Sequence[Link]) -> list[Diagnostic]:
    found = []
    for line in idle(declared.asked, every):
        first, then = line.wanted[0][0][0], line.wanted[0][1][0]
        found.append(problems.says_nothing_new(problems.label(first), problems.label(then), line.span))
    return found


def _numbered(drafts: Mapping[StepId, Draft], every: Sequence[Link]) -> tuple[Step, ...]:
    row = [n for n in _sorted(drafts, every) if n in drafts]
    number = {n: i + 1 for i, n in enumerate(row)}
    reasons = _reasons(every, number)
    return tuple(_step(drafts[n], number[n], reasons.get(n, ())) for n in row)


def _reasons(every: Sequence[Link], number: Mapping[StepId, int]) -> dict[StepId, tuple[Reason, ...]]:
    """For each step what it waits for, the nearest first, each once; an order line outranks other reasons for one."""
    last: dict[StepId, StepId] = {}  # meeting point -> the latest of the steps that come before it
    for x in every:
        if x.after not in number and x.before in number:
            last[x.after] = max(last.get(x.after, x.before), x.before, key=number.__getitem__)
    found: dict[StepId, dict[StepId, Reason]] = {}
    for x in sorted(every, key=lambda x: x.line < 0):
        before = last.get(x.before, x.before)
        if x.after in number and before in number:
            span: Span | None = x.span if x.line >= 0 else None
            found.setdefault(x.after, {}).setdefault(before, Reason(before, x.kind, span))
    return {n: tuple(sorted(rs.values(), key=lambda r: -number[r.after])) for n, rs in found.items()}


def _step(draft: Draft, number: int, reasons: Collection[Reason]) -> Step:
    return Step(
        number, draft.id, draft.owner, draft.marks, draft.joints, draft.fittings, draft.wait, tuple(reasons), draft.each
    )
