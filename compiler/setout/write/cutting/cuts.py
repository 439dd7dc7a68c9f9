"""The cuts of a source, as lines to follow."""

from __future__ import annotations

from fractions import Fraction

from setout.plan.cutting.model import Cut, Falls, SourcePlan
from setout.units import Style
from setout.write.cutting.alike import Alike
from setout.write.cutting.model import Row, Side
from setout.write.facts.sizes import Length, length

EDGES = {("x", "low"): "left", ("x", "high"): "right", ("y", "low"): "bottom", ("y", "high"): "top"}
"""By axis and reference: the board's edges as its drawing shows them."""

_ACROSS = {"low": "high", "high": "low"}


def rows(alike: Alike, style: Style) -> tuple[Row, ...]:
    numbers = zip(*(tuple(cut.number for cut in plan.cuts) for plan in alike.plans))
    lasts = _lasts(alike.first)
    return tuple(_row(alike, cut, many, last, style) for cut, many, last in zip(alike.first.cuts, numbers, lasts))


def _lasts(plan: SourcePlan) -> list[Fraction | None]:
    """By cut: what is left of the board for the blade, where nothing remains beyond it."""
    boards = {plan.source.id: (plan.source.length, plan.source.width)}
    found: list[Fraction | None] = []
    for cut in plan.cuts:
        extent = boards[cut.board][0 if cut.across == "x" else 1]
        found.append(extent - cut.setting if cut.rest is None and cut.kind != "trim" else None)
        for falls in (cut.off, cut.rest):
            if falls is not None and falls.kind == "board":
                boards[falls.board] = falls.length, falls.width
    return found


def how(cut: Cut) -> str:
    """As in Row."""
    if cut.saw is None:
        return "none"
    if cut.kind == "trim":
        return "trim" if cut.off.kind == "waste" else "shave"
    if cut.saw.breaks_down:
        return "guide"
    return "stop" if cut.kind == "crosscut" else "fence"


def saw_name(cut: Cut) -> str:
    return "" if cut.saw is None else cut.saw.title or cut.saw.name.replace("_", " ")


def sizes_of(long, wide, is_sheet: bool, style: Style) -> tuple[Length, ...]:
    """Of a stick the length alone."""
    return (length(long, style), length(wide, style)) if is_sheet else (length(long, style),)


def _row(alike: Alike, cut: Cut, numbers: tuple[int, ...], last: Fraction | None, style: Style) -> Row:
    way = how(cut)
    is_sheet = alike.first.source.stock.kind == "sheet"
    return Row(
        numbers=numbers,
        kind=cut.kind,
        saw=saw_name(cut),
        how=way,
        setting=length(cut.setting + cut.kerf if way == "trim" else cut.setting, style),
        edge=EDGES[cut.across, _ACROSS[cut.reference] if way == "shave" else cut.reference],
        board=alike.board(cut.board),
        off=_side(alike, cut.off, is_sheet, style),
        rest=None if cut.rest is None else _side(alike, cut.rest, is_sheet, style),
        last=None if last is None else length(last, style),
    )


def _side(alike: Alike, falls: Falls, is_sheet: bool, style: Style) -> Side:
    """Sizes only where they help to tell boards apart."""
    if falls.kind in ("piece", "reserved"):
        return Side(falls.kind, falls.mark, ())
    if falls.kind == "waste":
        return Side("waste", "", ())
    name = falls.board if falls.kind == "offcut" else alike.board(falls.board)
    return Side(falls.kind, name, sizes_of(falls.length, falls.width, is_sheet, style))
