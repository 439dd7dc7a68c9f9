"""All cuts of the job in the order of work, gathered under the setting of the saw."""

from __future__ import annotations

from collections import Counter
from itertools import groupby

from setout.piece.letters import mark_order
from setout.plan.cutting.model import Cut, Cutting
from setout.plan.cutting.sequence import groups, unlike
from setout.units import Style
from setout.write.cutting.cuts import how, saw_name
from setout.write.cutting.model import Batch, Equals
from setout.write.facts.paths import runs, spoken
from setout.write.facts.sizes import length

BY_DRAWING = ("trim", "break down")


def batches(cutting: Cutting, style: Style) -> tuple[Batch, ...]:
    """Neighbours in the order of work at the same setting; trimming and breaking down are done board by board, at
    many."""
    at = {number: index for index, setting in enumerate(cutting.settings) for number in setting.cuts}
    cuts = sorted((cut for stock in cutting.stocks for plan in stock.sources for cut in plan.cuts), key=_number)
    return tuple(_batch(list(many), style) for _, many in groupby(cuts, lambda cut: _key(cut, at)))


def equals(cutting: Cutting) -> Equals:
    """Which boards of one size come off one setting."""
    sources = ((stock.stock.name, plan.cuts) for stock in cutting.stocks for plan in stock.sources)
    found = groups(sources, cutting.settings)
    others = [boards for boards in found.values() if any(unlike(boards))]
    rows = (tuple(sorted({made.mark for made in boards}, key=mark_order)) for boards in others)
    marks = tuple(sorted(rows, key=lambda row: [mark_order(mark) for mark in row]))
    return Equals(len(found), len(found) - len(others), marks)


def _number(cut: Cut) -> int:
    return cut.number


def _key(cut: Cut, at: dict[int, int]) -> tuple:
    if cut.kind in BY_DRAWING:
        return (saw_name(cut),)
    return at.get(cut.number, -1), saw_name(cut), how(cut), cut.setting


def _batch(cuts: list[Cut], style: Style) -> Batch:
    first = cuts[0]
    by_drawing = first.kind in BY_DRAWING
    numbers: dict[str, list[int]] = {}
    for cut in cuts:
        numbers.setdefault(cut.source, []).append(cut.number)
    return Batch(
        saw=saw_name(first),
        how="drawing" if by_drawing else how(first),
        setting=None if by_drawing else length(first.setting, style),
        cuts=tuple((spoken(source), runs(of)) for source, of in numbers.items()),
        count=len(cuts),
        makes=tuple(_made(cuts).items()),
    )


def _made(cuts: list[Cut]) -> Counter[str]:
    fallen = (falls for cut in cuts for falls in (cut.off, cut.rest) if falls is not None)
    return Counter(falls.mark for falls in fallen if falls.kind in ("piece", "reserved"))
