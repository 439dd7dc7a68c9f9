"""Which saw makes a cut, and how it is set."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.resolve.model import Saw, Stock


@dataclass(frozen=True)
class Way:
    """How a cut is made. `kind` "rip", "crosscut" or "break down"; `reference` as in Cut; `setting` from there."""

    saw: Saw
    kind: str
    reference: str
    setting: Fraction


def able(saws: Sequence[Saw], stock: Stock) -> tuple[Saw, ...]:
    """The saws that may come to cut this stock. Sticks go to a saw for sticks, where there is one."""
    if stock.kind == "sheet":
        return tuple(saw for saw in saws if saw.breaks_down or saw.rips is not None or saw.crosscuts is not None)
    for widest in (lambda saw: saw.sticks, lambda saw: saw.crosscuts):
        found = tuple(saw for saw in saws if (widest(saw) or 0) >= stock.short)
        if found:
            return found
    return ()


def fixed_way(
    saws: Iterable[Saw],
    along: Fraction,
    across: Fraction,
    setting: Fraction,
    to_stop: bool | None = None,
    widest: bool = False,
) -> Way | None:
    """The way a saw that stands still cuts a board, `along` × `across`, at `setting` along it: the smallest saw that
    can.

    To a stop rather than by the fence when the board is longer than the cut, or `to_stop` says so (as it began: a board
    that grows shorter cut by cut stays at the stop). `widest`: to the stop of the largest saw instead. Integers serve
    as well as fractions.
    """
    still = [saw for saw in saws if not saw.breaks_down and takes(saw, along, across)]
    if not still:
        return None
    cross, fence = _crosscut(still, across, setting, widest), _fence(still, across, setting, "low")
    if to_stop is None:
        to_stop = along >= across
    return (cross or fence) if to_stop else (fence or cross)


def far_way(saws: Iterable[Saw], along: Fraction, across: Fraction, setting: Fraction) -> Way | None:
    """Where neither fence nor guide reaches: the fence set for what remains, so that what falls off lies on the far
    side of the blade."""
    for saw in saws:
        rest = along - setting - saw.kerf
        if (
            rest > 0
            and not saw.breaks_down
            and takes(saw, along, across)
            and (way := _fence([saw], across, rest, "high"))
        ):
            return way
    return None


def guided_way(saws: Iterable[Saw], along: Fraction, across: Fraction, setting: Fraction) -> Way | None:
    """The way a saw that is brought to the board cuts it."""
    for saw in saws:
        if saw.breaks_down and takes(saw, along, across):
            if reach := _reach(saw, along, across, setting):
                return Way(saw, "break down", reach, setting if reach == "low" else along - setting - saw.kerf)
    return None


def takes(saw: Saw, along: Fraction, across: Fraction) -> bool:
    return saw.takes is None or (max(along, across) <= saw.takes[0] and min(along, across) <= saw.takes[1])


def _crosscut(saws: Sequence[Saw], across: Fraction, setting: Fraction, widest: bool) -> Way | None:
    found = [saw for saw in saws if saw.crosscuts is not None and across <= saw.crosscuts]
    order = -1 if widest else 1
    best = min(found, key=lambda saw: (order * saw.crosscuts, saws.index(saw)), default=None)
    return Way(best, "crosscut", "low", setting) if best else None


def _fence(saws: Sequence[Saw], across: Fraction, setting: Fraction, reference: str) -> Way | None:
    """What runs along the fence must be longer than it is wide, or it turns."""
    found = [saw for saw in saws if saw.rips is not None and setting <= saw.rips and setting <= across]
    best = min(found, key=lambda saw: (saw.rips, saws.index(saw)), default=None)
    return Way(best, "rip", reference, setting) if best else None


def _reach(saw: Saw, along: Fraction, across: Fraction, setting: Fraction) -> str:
    """From which edge its guide is set: "" when it can't."""
    free = saw.rips is None and saw.crosscuts is None
    if (
        free
        or (saw.crosscuts is not None and across <= saw.crosscuts)
        or (saw.rips is not None and setting <= saw.rips)
    ):
        return "low"
    return "high" if saw.rips is not None and 0 < along - setting - saw.kerf <= saw.rips else ""
