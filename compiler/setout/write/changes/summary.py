"""The whole change in a few sentences."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from setout.compare.model import ANEW, Changes, Delta
from setout.units import Style, printed
from setout.write.changes.placing import elsewhere, stands_elsewhere
from setout.write.changes.wording import counted
from setout.write.facts.sizes import area, decimal


def summary(changes: Changes, style: Style) -> Iterator[str]:
    if not changes.changed:
        yield "Nothing changes."
        yield from _of_both(changes)
        return
    yield _of_boards(changes)
    yield from _of_both(changes)
    yield from _of_print(changes)
    yield from _of_what_is_bought(changes.numbers)
    yield from _of_cut_ones(changes, style)


def _of_both(changes: Changes) -> Iterator[str]:
    """That there is nothing, or little, to compare."""
    if changes.pairs:
        return
    sides = [any(side for side in some) for some in zip(*((c.old, c.new) for c in changes.boards))] or [False, False]
    if all(sides):
        yield "These two share no board."
        return
    which = "Neither spec has" if not any(sides) else "The first spec has no" if sides[1] else "The second spec has no"
    boards = "a board of its own" if not any(sides) else "boards of its own"
    yield f"{which} {boards}: if it is a file that others include, compare a spec that includes it."


def _of_print(changes: Changes) -> Iterator[str]:
    if changes.old_title != changes.new_title:
        yield f"The job is called {changes.new_title or 'nothing'} now, no longer {changes.old_title or 'nothing'}."
    before, now = (changes.old_metric, changes.old_mark), (changes.metric, changes.mark)
    if before != now:
        yield f"All sizes are printed {_to(*now)} now, no longer {_to(*before)}: they round otherwise."


def _to(metric: bool, mark: Fraction) -> str:
    style = Style(metric, mark)
    return f"to {printed(mark, style).text} {'mm' if metric else 'in'}"


def listed(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _of_boards(changes: Changes) -> str:
    both = [c for c in changes.boards if c.old and c.new]
    anew = sum(c.new.count for c in both if c.new and ANEW.intersection(c.how))
    words = [f"{counted(anew, ('board changes', 'boards change'))}"] if anew else []
    words += _come_and_gone(changes)
    placed = sum(map(stands_elsewhere, changes.assemblies))
    alone = len(elsewhere(changes))
    moved = [counted(n, w) for n, w in ((placed, ("assembly", "assemblies")), (alone, ("board", "boards"))) if n]
    if moved:
        verb = "stands" if placed + alone == 1 else "stand"
        words.append(f"{listed(moved)} {verb} elsewhere")
    return _sentence("; ".join(words) if words else "no board changes")


def _come_and_gone(changes: Changes) -> Iterator[str]:
    """Loose boards by how many there are."""
    added = sum(max(0, (c.new.count if c.new else 0) - (c.old.count if c.old else 0)) for c in changes.boards)
    gone = sum(max(0, (c.old.count if c.old else 0) - (c.new.count if c.new else 0)) for c in changes.boards)
    if added:
        yield f"{added} new"
    if gone:
        yield f"{gone} left out"


def _of_what_is_bought(numbers: Sequence[Delta]) -> Iterator[str]:
    words = [
        f"{counted(int(abs(d.by)), ('sheet', 'sheets'))} {'more' if d.by > 0 else 'fewer'} of {d.name}"
        for d in numbers
        if d.kind == "sheet"
    ]
    money = next((d.by for d in numbers if d.kind == "money"), None)
    if money is not None:
        words.append(f"{decimal(abs(money), 2)} {'more' if money > 0 else 'less'}")
    if words:
        yield f"To buy from the start: {'; '.join(words)}."


def _of_cut_ones(changes: Changes, style: Style) -> Iterator[str]:
    count: Counter[str] = Counter()
    for fate in changes.reuse.fates:
        count[fate.kind] += fate.count
    worked = count["reworked"] + count["serves"] + count["lost"]
    if not worked:
        if count["right"]:
            yield "Every board that is cut already is right as it is."
        return
    words = [f"{count['right']} {_are(count['right'])} right as {'it is' if count['right'] == 1 else 'they are'}"]
    words += [f"{count['reworked']} can be reworked"] if count["reworked"] else []
    words += [f"{count['serves']} can serve elsewhere"] if count["serves"] else []
    words += [f"{count['lost']} {_are(count['lost'])} lost"] if count["lost"] else []
    yield f"If all boards are cut already: {listed(words)}."
    waste = sorted((loss for loss in changes.reuse.losses if loss.lost), key=lambda loss: -loss.lost)
    if waste:
        unit = "m²" if style.metric else "sq ft"
        words = [f"{area(loss.lost, style)} {unit} of {loss.stock}" for loss in waste]
        yield f"Lost of them, with what is sawn off: {listed(words)}."
    if changes.reuse.narrowed:
        yield "There are too many boards to try each at every place: each was tried at its own."


def _are(count: int) -> str:
    return "is" if count == 1 else "are"


def _sentence(words: str) -> str:
    return f"{words[0].upper()}{words[1:]}."
