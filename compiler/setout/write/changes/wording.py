"""Changes in the builder's words. Lengths are in the new spec's unit and mark."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from setout.compare.model import AssemblyChange, BoardChange, Extent, Fate, Machined, Method, Sized, Trim, Way
from setout.geometry import AXIS_WORDS, Vec
from setout.units import Style, exact, printed, say
from setout.write.facts.paths import spoken

WORK = {
    "hole": ("hole", "holes"),
    "pocket": ("pocket hole", "pocket holes"),
    "cut": ("housing or notch", "housings or notches"),
    "mitre": ("mitre", "mitres"),
    "band": ("banded edge", "banded edges"),
}
TO_DO = {
    "plug": ("plug {} old hole", "plug {} old holes"),
    "cut": ("cut {} housing or notch", "cut {} housings or notches"),
    "enlarged": ("deepen or widen {} housing or notch", "deepen or widen {} housings or notches"),
    "hole": ("drill {} hole", "drill {} holes"),
    "pocket": ("drill {} pocket hole", "drill {} pocket holes"),
    "widened": ("drill {} hole larger or deeper", "drill {} holes larger or deeper"),
    "mitre": ("mitre {} end", "mitre {} ends"),
    "band": ("band {} edge", "band {} edges"),
    "unband": ("take the banding off {} edge", "take the banding off {} edges"),
}
WHY_LOST = {
    "unwanted": "no longer wanted, and nothing else can be made of it",
    "spare": "spare: more than are wanted",
    "thickness": "another thickness is wanted",
    "stock": "another material is wanted",
    "small": "too small for what is wanted now",
    "grain": "its grain would run the wrong way",
    "face": "its good face would be on the wrong side",
    "holes": "large enough, but old work would be left over",
    "taken": "another cut board serves there",
    "held": "what is wanted now waits for a measure",
}
LOOK = {
    "grain": "look first which way its grain runs",
    "face": "look first whether the face that shows is a good one",
}
ALL_ITS, ALL_THEIR = "all its ", "all their "
GRAIN = {"": "of no matter", "any": "of no matter"}
TOWARDS = (("left", "right"), ("down", "up"), ("forward", "back"))


def counted(count: int, words: tuple[str, str]) -> str:
    return f"{count} {words[count != 1]}"


def extent(value: Extent, style: Style) -> str:
    low = say(value.low, style)
    return f"{low} to {say(value.high, style)}" if value.held else low


def by(values: Iterable[Extent], style: Style) -> str:
    """`24 × 22-9/16`."""
    return " × ".join(extent(value, style) for value in values)


# --- sizes and places ------------------------------------------------------------------------------------


def resized(sized: Sized, style: Style) -> str:
    """`2-1/2 less wide`."""
    much = say(abs(sized.by), _fine(sized, style))
    if not sized.by:
        return f"{sized.axis} waits for another measure"
    if sized.axis == "thick":
        return f"{much} {'thicker' if sized.by > 0 else 'thinner'}"
    return f"{much} {'more' if sized.by > 0 else 'less'} {sized.axis}"


def old_and_new(sized: Sequence[Sized], style: Style) -> str:
    """`24 → 21-1/2`, of the only size that changed."""
    if len(sized) != 1:
        return ""
    style = _fine(sized[0], style)
    return f"{extent(sized[0].old, style)} → {extent(sized[0].new, style)}"


def _fine(sized: Sized, style: Style) -> Style:
    """Finer than the paper is, where a thickness was measured so, or the difference would not be seen."""
    if sized.axis != "thick" and printed(sized.old.low, style).text != printed(sized.new.low, style).text:
        return style
    for n in range(4 if style.metric else 8):
        finer = Style(style.metric, style.mark / (10 if style.metric else 2) ** n)
        if all(printed(end, finer).exact for end in (sized.old.low, sized.new.low)):
            break
    return finer


def cut_size(change: BoardChange, style: Style) -> str:
    """`33 × 4 → 29 × 4`: what is sawn, and so not the thickness. "" where it stays as it was."""
    shown = [by(side.sizes[:2], style) for side in (change.old, change.new) if side]
    if change.old and change.new and (shown[0] == shown[1] or not (change.sized or _grain(change))):
        return ""
    return " → ".join(shown)


def moves(by: Sequence[Fraction], style: Style) -> str:
    """`moves 4 to the left, 1 up`; nothing by a rounding that can't be told."""
    words = []
    for axis, amount in enumerate(by):
        if amount:
            word = TOWARDS[axis][amount > 0]
            words.append(f"{say(abs(amount), style)} {'to the ' if axis == 0 else ''}{word}")
    return f"moves {', '.join(words)}" if words else "moves with a measure"


def farthest(moved: Sequence[Vec], style: Style) -> str:
    if len(set(moved)) == 1:
        return moves(moved[0], style)
    ways = {(k, x > 0) for by in moved for k, x in enumerate(by) if x}
    far = say(max(abs(x) for by in moved for x in by), style)
    if len(ways) != 1:
        return f"move by up to {far}"
    axis, positive = ways.pop()
    return f"move by up to {far} {'to the ' if axis == 0 else ''}{TOWARDS[axis][positive]}"


# --- boards ----------------------------------------------------------------------------------------------


def material(change: BoardChange, style: Style) -> str:
    """Another stock, or the same of another thickness; "" for neither."""
    old, new = change.old, change.new
    if old is None or new is None:
        return ""
    if "restocked" in change.how:
        return f"{new.material} instead of {_other(old.material, new.material, old.stock)}"
    thick = [sized for sized in change.sized if sized.axis == "thick"]
    if thick:
        return f"{new.material} {resized(thick[0], style)} ({old_and_new(thick, style)})"
    return ""


def _other(material: str, than: str, stock: str) -> str:
    return material if material != than else f"{material} ({stock})"


def board(change: BoardChange, style: Style) -> tuple[str, ...]:
    """What there is to say of one board; material, joints and moves apart."""
    return tuple(_board(change, style))


def _board(change: BoardChange, style: Style) -> Iterator[str]:
    old, new, how = change.old, change.new, change.how
    if old is None or new is None:
        yield "new" if old is None else "left out"
        return
    if old.name != new.name:
        yield f"was called {spoken(old.name)}"
    if "counted" in how:
        yield f"{new.count} of them instead of {old.count}"
    if "turned" in how:
        yield "lies another way"
    yield from (resized(sized, style) for sized in change.sized if sized.axis != "thick")
    if words := _grain(change):
        yield words
    if change.face:
        before, after = change.face
        yield f"good face {after or 'of no matter'} instead of {before or 'of no matter'}"
    if "other-hand" in how:
        yield "the other hand: its mirror image"
    yield from _worked(change, style)
    if "marked" in how:
        yield "the same board under another mark"


def _grain(change: BoardChange) -> str:
    """That the other stock has none goes without saying."""
    before, after = change.grain or ("", "")
    if before == after or ("restocked" in change.how and not (before and after)):
        return ""
    return f"grain {GRAIN.get(after, after)} instead of {GRAIN.get(before, before)}"


def _worked(change: BoardChange, style: Style) -> Iterator[str]:
    """What is only elsewhere goes without saying where the board is another size, and where it is of another stock any
    drilling."""
    if "machined" in change.how and not change.machined and not change.sized:
        yield "machined otherwise"
    anew = bool(material(change, style))
    for work in change.machined:
        if anew and work.gone == work.added:
            continue
        says = machined(replace(work, moved=0) if change.sized else work)
        if says:
            yield says


def machined(work: Machined) -> str:
    """`all its holes elsewhere`, `5 holes elsewhere, 3 holes left out, 6 holes new`."""
    words = WORK[work.kind]
    said = []
    if work.moved:
        all_ = not work.kept + work.gone and work.moved > 1
        said.append(f"{ALL_ITS}{words[1]} elsewhere" if all_ else f"{counted(work.moved, words)} elsewhere")
    if work.gone and work.gone == work.added:
        said.append(f"{counted(work.gone, words)} otherwise")
    else:
        said += [f"{counted(work.gone, words)} fewer"] if work.gone else []
        said += [f"{counted(work.added, words)} {'new' if work.gone else 'more'}"] if work.added else []
    return ", ".join(said)


def method(held: Method, style: Style) -> str:
    """`screws #8 × 2 in`, `dado 1/4 deep`."""
    size = f" #{held.gauge}" if held.gauge else ""
    size += f" × {exact(held.length)} in" if held.length and held.gauge else ""
    size += f" {exact(held.length)} in" if held.length and not held.gauge else ""
    size += f" {say(held.depth, style)} deep" if held.depth else ""
    return f"{held.kind}{size}"


def instead(gone: Sequence[str], come: Sequence[str]) -> str:
    if not gone or not come:
        return f"now {', '.join(come)}" if come else f"no longer {', '.join(gone)}"
    return f"{', '.join(come)} instead of {', '.join(gone)}"


def assembly(change: AssemblyChange, style: Style) -> str:
    """That it came or went, or how its sizes change."""
    boards = counted(change.boards, ("board", "boards"))
    if change.old is None or change.new is None:
        return f"{'new' if change.old is None else 'left out'}: {change.title}, {boards}"
    return "; ".join(resized(sized, style) for sized in change.sized)


def standing(change: AssemblyChange, style: Style, slight: Fraction) -> str:
    """How it stands otherwise than before. `slight`: moves up to so much are told in a word."""
    words = [word for word in ("mirrored", "turned") if word in change.how]
    if (by := shifted(change)) is not None:
        far = max(map(abs, by))
        words.append("shifts a little" if 0 < far <= slight else moves(by, style))
    return "; ".join(words)


def shifted(change: AssemblyChange) -> Vec | None:
    """How far it moved, but for what its growth at one end, or at both alike, brings with it; None for nothing."""
    if change.moved is None or not change.sized:
        return change.moved
    grown = {sized.axis: sized.by for sized in change.sized}
    left = [Fraction(0) if _is_growth(by, grown.get(axis)) else by for axis, by in zip(AXIS_WORDS, change.moved)]
    return (left[0], left[1], left[2]) if any(left) else None


def _is_growth(by: Fraction, grown: Fraction | None) -> bool:
    return grown is not None and by in (0, -grown, -grown / 2)


# --- boards that are cut already -------------------------------------------------------------------------


def done(fate: Fate, sizes: Mapping[str, Sequence[Extent]], style: Style) -> str:
    """All that is done to a board, in its own words, and the size it comes to; if it then lies otherwise, how. `sizes`
    are those of the new boards by mark."""
    assert fate.way is not None
    way = fate.way
    words = [LOOK[look] for look in way.look]
    tasks = [TO_DO[task.kind][task.count != 1].format(task.count) for task in way.tasks]
    plugs = sum(task.kind == "plug" for task in way.tasks)
    words += tasks[:plugs]
    words += [trims(way.trims, sizes.get(fate.new or "", ()), style)] if way.trims else []
    words += tasks[plugs:]
    says = "; ".join(words) or "as it is"
    turn = turned(way)
    return f"{says} ({turn})" if turn else says


def trims(cuts: Sequence[Trim], size: Sequence[Extent], style: Style) -> str:
    """`saw 4 off the left, plane or sand 1/32 off the top, to 30 × 11-1/2`."""
    ways = (("saw", [cut for cut in cuts if not cut.shaving]), ("plane or sand", [cut for cut in cuts if cut.shaving]))
    off = [f"{verb} {', '.join(_off(cut, style) for cut in some)}" for verb, some in ways if some]
    to = [f"to {by(size[:2], style)}"] if size else []
    return ", ".join(off + to)


def _off(cut: Trim, style: Style) -> str:
    return f"{say(cut.by, style)} off the {cut.end or cut.along}"


def turned(way: Way) -> str:
    """Which of its edges becomes which, where it lies otherwise; all else follows, but for a face turned about."""
    edges = [f"the old {old} edge becomes the {new}" for old, new in way.turned[:2] if old != new][:1]
    faces = [f"the old {old} face becomes the {new}" for old, new in way.turned[2:] if old != new]
    return ", ".join([*edges, *faces])


def left_over(fate: Fate) -> str:
    """`2 holes, 1 pocket hole`: what of a lost board's old work is in the way."""
    return ", ".join(counted(task.count, WORK[task.kind]) for task in fate.blocked)
