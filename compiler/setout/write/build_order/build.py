"""The build as a list of steps to tick off, and as a picture."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.drawing import Drawing
from setout.plan.order.model import Reason, Step, StepId
from setout.write.build_order.making import AtHand, Making, at_hand, joints_made, makings, put
from setout.write.build_order.standing import Standing, standings
from setout.write.facts import Facts
from setout.write.facts.paths import ranges, spoken
from setout.write.facts.sizes import decimal
from setout.write.installing import Fixing, fixings

ALIKE = ("drawers", "fronts", "doors", "shelves")
"""What is made in one go for a cabinet, or for all of a kind; the last word of the step's target."""


@dataclass(frozen=True)
class Doing:
    """What a step does, in the pieces a sentence is made of.

    `what` tells how to take `title`: "measure", "kind" (an assembly's definition), "assembly" (one placed, called
    `path`; `title` may be ""), "job" (its own boards, or the whole), "all" (the job when it is one assembly),
    "hardware" (on `path`), "drawers" "fronts" "doors" "shelves" (several at once, of `path`, or of the assembly called
    `title`), "boards" (named outright) or "own" (the spec's own words). `kinds` counts the kinds of
    hardware or the boards, `onto` is what hardware goes on where that is several.
    """

    verb: str
    what: str
    title: str
    path: str
    kinds: int = 1
    onto: Doing | None = None


@dataclass(frozen=True)
class Why:
    """One kind of reason and the steps that must come first for it.

    `line` of the spec for a declared one (0: none), and the `file` it is in, as the spec's own folder has it; ""
    where the spec is one file."""

    kind: str
    after: tuple[int, ...]
    file: str
    line: int


@dataclass(frozen=True)
class Row:
    """`hours` to wait after it, "" for none. `each` are what to tick one by one, where a step makes several.

    `makings` are its joints; `standing` is where it is put; `fixings` screws into walls in it."""

    number: int
    doing: Doing
    marks: tuple[tuple[str, int], ...]
    hardware: tuple[tuple[str, int], ...]
    hours: str
    whys: tuple[Why, ...]
    each: tuple[str, ...]
    makings: tuple[Making, ...]
    needs: AtHand
    standing: Standing | None
    fixings: tuple[Fixing, ...]


@dataclass(frozen=True)
class Later:
    """A step that cuts boards when the rest has long been sawn: those whose size waits for a measure (`measured`, until
    then there are blanks of them), or all of it because the spec says so. `others` are boards of the same step that
    don't wait."""

    number: int
    marks: tuple[str, ...]
    measured: bool
    others: bool


@dataclass(frozen=True)
class BuildOrder:
    """`sawn`: the packet has a cutting plan, whose order goes through the whole job. `fitted`: steps that cut what is
    to fit into an opening, when that can be measured."""

    rows: tuple[Row, ...]
    pictures: tuple[Drawing, ...]
    sawn: bool
    later: tuple[Later, ...]
    fitted: tuple[int, ...]


def build(facts: Facts, pictures: tuple[Drawing, ...]) -> BuildOrder | None:
    """None when there is nothing to do."""
    standing = standings(facts)
    rows = tuple(_row(facts, step, standing.get(step.number)) for step in facts.plan.order.steps)
    sawn = facts.plan.cutting is not None and bool(facts.plan.cutting.stocks)
    fitted = tuple(row.number for row in rows if row.doing.verb == "cut" and row.doing.what in ("drawers", "fronts"))
    return BuildOrder(rows, pictures, sawn, tuple(_later(facts)), fitted) if rows else None


def _later(facts: Facts) -> Iterable[Later]:
    held = {piece.mark for piece in facts.plan.pieces.pieces if piece.sized_by}
    for step in facts.plan.order.steps:
        marks = tuple(mark for mark, _ in step.marks)
        waiting = tuple(mark for mark in marks if mark in held)
        if step.id.verb != "cut" or not marks:
            continue
        if any(reason.kind == "declared" and reason.after.verb != "cut" for reason in step.reasons):
            yield Later(step.number, marks, False, False)
        elif waiting:
            yield Later(step.number, waiting, True, waiting != marks)


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
        titles = _kinds_of_hardware(facts, step)
        onto = _alike(facts, verb, target) or _alike(facts, verb, target.rpartition(".")[0])
        return Doing(verb, "hardware", ", ".join(titles), spoken(step.owner), len(titles), onto)
    if not target:
        return Doing(verb, "job" if len(instances) > 1 else "all", project.title, "")
    if target in instances and len(step.things) < 2:
        return Doing(verb, "assembly", _title(facts, target), spoken(target))
    if target in project.assemblies and not step.things:
        return Doing(verb, "kind", facts.definition_title(target), "")
    names = ", ".join(ranges(step.things)) if step.things else _board(facts, target)
    return _alike(facts, verb, target) or Doing(verb, "boards", names, "", len(step.things) or 1)


def _alike(facts: Facts, verb: str, target: str) -> Doing | None:
    """What is made in one go, if `target` names that."""
    holder, _, word = target.partition(" ")[0].rpartition(".")
    if word not in ALIKE or target in facts.scene.boards:
        return None
    kind = holder not in facts.scene.instances and holder in facts.project.assemblies
    return Doing(verb, word, facts.definition_title(holder) if kind else "", "" if kind else spoken(holder))


def _kinds_of_hardware(facts: Facts, step: Step) -> list[str]:
    wanted = {*step.fittings}
    some = [f.hardware for f in facts.scene.fittings if f.id in wanted]
    return list(dict.fromkeys(h.title or h.name for h in some))


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


def _row(facts: Facts, step: Step, standing: Standing | None) -> Row:
    joints = joints_made(facts, step)
    return Row(
        number=step.number,
        doing=doing(facts, step),
        marks=step.marks,
        hardware=_hardware(facts, step),
        hours=_hours(step.wait),
        whys=_whys(facts, step),
        each=tuple(_each(step)),
        makings=makings(facts, joints),
        needs=at_hand(facts, joints),
        standing=standing,
        fixings=_fixings(facts, step),
    )


def _fixings(facts: Facts, step: Step) -> tuple[Fixing, ...]:
    walled = (contact for joint in step.joints for contact in facts.contacts_of.get(joint, ()) if contact.b is None)
    return tuple(one for thing in put(step) for one in fixings(facts, thing)) if any(walled) else ()


def _each(step: Step) -> Iterable[str]:
    """What a step makes or puts in place several of; sawing and curing have no ticks of their own."""
    if step.id.verb in ("cut", "machine", "cure"):
        return ()
    return (spoken(thing.removesuffix(".front_panel")) for thing in step.things)


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
    line, _ = sources[reason.span.file].position(reason.span.start)
    folder = next(iter(sources)).rpartition("/")[0]
    return reason.span.file.removeprefix(f"{folder}/") if len(sources) > 1 else "", line
