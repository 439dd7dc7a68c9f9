"""What a board's numbers do while measures run through their ranges: straight-line formulas where they follow one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from setout.piece.model import Size
from setout.piece.numbers import form_text
from setout.place.model import Placed
from setout.values import Trace

Row = tuple[Fraction, ...]
_ZERO = Fraction(0)


class Lines(NamedTuple):
    """As an Outline has them: constants, then slopes over each of `measures`."""

    columns: tuple[Row, ...]
    measures: tuple[str, ...]


@dataclass(frozen=True)
class Ranges:
    """The open measures by name, each with its ends; `takens` are the values used in each scene."""

    low: Mapping[str, Fraction]
    high: Mapping[str, Fraction]
    takens: tuple[Mapping[str, Fraction], ...]

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(self.low)


def ranges(placed: Placed) -> Ranges:
    """Measures in alphabetical order: a shape must not depend on the order in which a spec names them."""
    takens = tuple({m: scene.taken[m] for m in placed.open_measures} for scene in placed.scenes)
    names = sorted(placed.open_measures)
    low = {m: min(t[m] for t in takens) for m in names}
    high = {m: max(t[m] for t in takens) for m in names}
    return Ranges(low, high, takens)


def straight(numbers: Sequence[Row], over: Ranges) -> Lines | None:
    """The straight lines that numbers follow, None when they follow none. `numbers`: one row a scene, equally long."""
    base = numbers[_scene_where(over, over.low) or 0]
    columns: list[Row] = []
    names: list[str] = []
    for m in over.names:
        at = _scene_where(over, {**over.low, m: over.high[m]})
        step = over.high[m] - over.low[m]
        if at is None or not step:
            continue
        slopes = tuple((b - a) / step for a, b in zip(base, numbers[at]))
        if any(slopes):
            columns.append(slopes)
            names.append(m)
    lows = [over.low[m] for m in names]
    constants = tuple(n - sum((k * low for k, low in zip(ks, lows)), _ZERO) for n, *ks in zip(base, *columns))
    found = Lines((constants, *columns), tuple(names))
    fits = all(_at(found, taken) == tuple(row) for row, taken in zip(numbers, over.takens))
    return found if fits else None


def size(amounts: Sequence[Fraction], over: Ranges, held: bool, bent: bool) -> Size:
    """A size from its amount in each scene; held when it varies or is said to hang on a measure."""
    if not held and len(set(amounts)) == 1:
        return Size(amounts[0])
    line = None if bent else straight([(a,) for a in amounts], over)
    if line is None:
        return Size(min(amounts), max(amounts))
    constant = line.columns[0][0]
    slopes = tuple((m, column[0]) for m, column in zip(line.measures, line.columns[1:]))
    low, high = (sum((pick(k * over.low[m], k * over.high[m]) for m, k in slopes), constant) for pick in (min, max))
    return Size(low, high, (constant, slopes))


def size_text(size: Size) -> str:
    """A size as it stands in a shape: `?` when it follows no straight line."""
    if not size.held:
        return form_text([size.amount], ())
    if size.formula is None:
        return "?"
    constant, slopes = size.formula
    return form_text([constant, *(k for _, k in slopes)], [m for m, _ in slopes])


def varying_text(measures: Iterable[str], header: str, scenes: Iterable[str]) -> str:
    """The text of a board whose machining changes with a measure otherwise than along straight lines: what it hangs on,
    its sizes, and what it is in every scene."""
    return " | ".join((f"varies {' '.join(measures)}: {header}", *scenes))


def bends(trace: Trace, held: frozenset[str]) -> bool:
    """Whether an amount may be anything but a straight line over `held` measures: two scenes alone cannot tell."""
    seen: dict[int, tuple[bool, bool]] = {}  # by identity: a trace shares its branches, and each is looked at once
    waiting = [trace]
    while waiting:
        node = waiting[-1]
        first = [part for part in node.parts if id(part) not in seen]
        if first:
            waiting.extend(first)
            continue
        waiting.pop()
        parts = [seen[id(part)] for part in node.parts]
        hangs = [h for h, _ in parts]
        bent = any(b for _, b in parts) or (node.kind == "operation" and _bending(node.text, hangs))
        seen[id(node)] = (any(hangs) or (node.kind == "name" and node.text in held), bent)
    return seen[id(trace)][1]


def _bending(op: str, hangs: list[bool]) -> bool:
    if op == "*":
        return sum(hangs) > 1
    if op == "/":
        return any(hangs[1:])
    return any(hangs) and op not in ("+", "-", "neg")


def _scene_where(over: Ranges, taken: Mapping[str, Fraction]) -> int | None:
    return next((i for i, t in enumerate(over.takens) if t == taken), None)


def _at(lines: Lines, taken: Mapping[str, Fraction]) -> Row:
    values = [taken[m] for m in lines.measures]
    return tuple(c + sum((k * v for k, v in zip(ks, values)), _ZERO) for c, *ks in zip(*lines.columns))
