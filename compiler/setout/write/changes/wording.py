"""Changes in the builder's words. Lengths are in the new spec's unit and mark."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from setout.compare.model import AssemblyChange, BoardChange, Extent, Fate, Machined, Method, Sized, Trim, Way
from setout.units import Style, exact, say
from setout.write.facts.paths import spoken

WORK = {
    "hole": ("hole", "holes"),
    "pocket": ("pocket hole", "pocket holes"),
    "cut": ("housing or notch", "housings or notches"),
    "mitre": ("mitre", "mitres"),
    "band": ("banded edge", "banded edges"),
}
TO_DO = {
    "cut": ("cut {} housing or notch", "cut {} housings or notches"),
    "hole": ("drill {} hole", "drill {} holes"),
    "pocket": ("drill {} pocket hole", "drill {} pocket holes"),
    "widened": ("drill {} hole larger or deeper", "drill {} holes larger or deeper"),
    "mitre": ("mitre {} end", "mitre {} ends"),
    "band": ("band {} edge", "band {} edges"),
    "unband": ("take the banding off {} edge", "take the banding off {} edges"),
}
WHY_LOST = {
    "unwanted": "no longer wanted, and nothing else can be made of it",
    "thickness": "another thickness is wanted",
    "stock": "another material is wanted",
    "small": "too small for what is wanted now",
    "grain": "its grain would run the wrong way",
    "face": "its good face would be on the wrong side",
    "holes": "its holes or housings would show or clash",
    "taken": "another cut board serves there",
    "held": "what is wanted now waits for a measure",
}
LOOK = {
    "grain": "look first which way its grain runs",
    "face": "look first whether the face that shows is a good one",
}
TOWARDS = (("left", "right"), ("down", "up"), ("forward", "back"))


def counted(count: int, words: tuple[str, str]) -> str:
    return f"{count} {words[count != 1]}"


def extent(value: Extent, style: Style) -> str:
    low = say(value.low, style)
    return f"{low} to {say(value.high, style)}" if value.held else low


def sizes(values: Iterable[Extent], style: Style) -> str:
    return " × ".join(extent(value, style) for value in values)


def resized(sized: Sized, style: Style) -> str:
    """`2-1/2 less wide (24 → 21-1/2)`."""
    grown = say(abs(sized.by), style)
    if sized.axis == "thick":
        much = f"{grown} {'thicker' if sized.by > 0 else 'thinner'}"
    else:
        much = f"{grown} {'more' if sized.by > 0 else 'less'} {sized.axis}"
    waits = sized.old.held or sized.new.held
    start = f"{sized.axis}" if waits and not sized.by else much
    return f"{start} ({extent(sized.old, style)} → {extent(sized.new, style)})"


def machined(work: Machined) -> str:
    words = WORK[work.kind]
    if work.gone == work.added:
        return f"{counted(work.gone, words)} elsewhere or another"
    if not work.gone:
        return f"{counted(work.added, words)} more"
    if not work.added:
        return f"{counted(work.gone, words)} fewer"
    return f"{work.gone} of its {words[1]} {'goes' if work.gone == 1 else 'go'}, {work.added} new"


def method(held: Method, style: Style) -> str:
    size = f" #{held.gauge}" if held.gauge else ""
    size += f" × {exact(held.length)} in" if held.length and held.gauge else ""
    size += f" {exact(held.length)} in" if held.length and not held.gauge else ""
    size += f" {say(held.depth, style)} deep" if held.depth else ""
    return f"{held.kind}{size} to {spoken(held.partner)}"


def moved(by: Sequence[Fraction], style: Style) -> str:
    """`4 to the left, 1 up`."""
    words = []
    for axis, amount in enumerate(by):
        if amount:
            word = TOWARDS[axis][amount > 0]
            words.append(f"{say(abs(amount), style)} {'to the ' if axis == 0 else ''}{word}")
    return ", ".join(words)


def board(change: BoardChange, style: Style) -> tuple[str, ...]:
    """What there is to say of one board, its sizes apart."""
    return tuple(_board(change, style))


def _board(change: BoardChange, style: Style):
    old, new, how = change.old, change.new, change.how
    if old is None or new is None:
        yield "new" if old is None else "left out"
        return
    if "renamed" in how:
        yield f"was called {spoken(old.path)}"
    if "restocked" in how:
        yield f"of {new.stock} instead of {old.stock}"
    if "counted" in how:
        yield f"{new.count} of them instead of {old.count}"
    if "turned" in how:
        yield "lies another way"
    yield from (resized(sized, style) for sized in change.sized)
    if change.grain:
        before, after = change.grain
        yield f"grain {after or 'of no matter'} instead of {before or 'of no matter'}"
    if change.face:
        before, after = change.face
        yield f"good face {after or 'of no matter'} instead of {before or 'of no matter'}"
    if "other-hand" in how:
        yield "the other hand: its mirror image"
    if "machined" in how and not change.machined:
        yield "machined otherwise"
    yield from map(machined, change.machined)
    if change.unjoined:
        yield f"no longer {'; '.join(method(m, style) for m in change.unjoined)}"
    if change.joined:
        yield f"now {'; '.join(method(m, style) for m in change.joined)}"
    if how == ("moved",):
        yield "the same board, elsewhere"
    if how in (("marked",), ("marked", "moved"), ("moved", "marked"), ("renamed", "marked")):
        yield "the same board under another mark"


def assembly(change: AssemblyChange, style: Style) -> str:
    boards = counted(change.boards, ("board", "boards"))
    if change.old is None:
        return f"new, {boards}"
    if change.new is None:
        return f"left out, {boards}"
    words = [f"was called {spoken(change.old)}"] if "renamed" in change.how else []
    words += [resized(sized, style) for sized in change.sized]
    words += [word for word in ("mirrored", "turned") if word in change.how]
    if change.moved and (by := moved(change.moved, style)):
        words.append(f"moves {by}")
    elif change.moved:
        words.append("moves with a measure")
    return "; ".join(words)


def trim(cut: Trim, style: Style) -> str:
    return f"saw {say(cut.by, style)} off the {cut.end or cut.along}"


def work(way: Way, style: Style) -> str:
    """All that is done to a board, in its own words."""
    words = [LOOK[look] for look in way.look]
    words += [trim(cut, style) for cut in way.trims]
    words += [TO_DO[task.kind][task.count != 1].format(task.count) for task in way.tasks]
    return "; ".join(words) or "as it is"


def turned(way: Way) -> str:
    """Which of its faces becomes which, where that isn't plain."""
    pairs = [f"its {old} is the {new}" for old, new in way.turned if old != new]
    return ", ".join(pairs)


def lost(fate: Fate) -> str:
    return WHY_LOST[fate.why]
