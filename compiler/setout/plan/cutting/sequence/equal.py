"""Equal boards are truly equal when one setting made them all: the stop or the fence stood still meanwhile."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import NamedTuple

from setout.plan.cutting.model import Cut, Falls, Setting

Origin = tuple[int | None, int | None]
"""The settings (by their place in the order) that made a board's sizes along x and y; None: no fence and no stop did.
"""


class Size(NamedTuple):
    """Boards of one stock, the longer side first."""

    stock: str
    long: Fraction
    short: Fraction


class Made(NamedTuple):
    """One board: which settings made its longer and its shorter side, as in Origin."""

    mark: str
    long: int | None
    short: int | None


def groups(cuts: Iterable[tuple[str, Sequence[Cut]]], settings: Sequence[Setting]) -> dict[Size, list[Made]]:
    """Sizes that several boards have. `cuts` of each source, in order, beside the name of its stock."""
    at = {number: place for place, one in enumerate(settings) for number in one.cuts}
    found: dict[Size, list[Made]] = {}
    for stock, of_source in cuts:
        boards: dict[str, Origin] = {}
        for cut in of_source:
            x, y = boards.get(cut.board, (None, None))
            setting = at.get(cut.number)
            off, rest = ((setting, y), (None, y)) if cut.across == "x" else ((x, setting), (x, None))
            for falls, origin in ((cut.off, off), (cut.rest, rest)):
                if falls is None:
                    continue
                if falls.kind == "board":
                    boards[falls.board] = origin
                elif falls.kind in ("piece", "reserved"):
                    _come_off(found, stock, falls, origin)
    return {size: boards for size, boards in found.items() if len(boards) > 1}


def unlike(boards: Sequence[Made]) -> tuple[bool, bool]:
    """Of a size's longer and shorter side, whether it is not one setting that made them all."""
    return _unlike([made.long for made in boards]), _unlike([made.short for made in boards])


def _unlike(side: Sequence[int | None]) -> bool:
    return side[0] is None or len(set(side)) > 1


def _come_off(found: dict[Size, list[Made]], stock: str, falls: Falls, origin: Origin) -> None:
    if falls.length >= falls.width:
        size, sides = Size(stock, falls.length, falls.width), origin
    else:
        size, sides = Size(stock, falls.width, falls.length), origin[::-1]
    found.setdefault(size, []).append(Made(falls.mark, *sides))
