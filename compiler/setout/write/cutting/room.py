"""How the pages of the cutting plan are filled: a drawing and the list of its cuts on one page, where that can be."""

from __future__ import annotations

from setout.drawing import Drawing
from setout.plan.cutting.model import Source
from setout.write.cutting.model import Row, Side
from setout.write.facts import Facts

TALLEST, LOWEST = 300.0, 205.0  # points; how high a sheet is drawn
HEAD, FIRST = 38.0, 34.0  # points; the list's own head and the gaps; over a stock's first source its name
CROWDED, HIGHEST = 26, 450.0  # cuts on a source from which on it is drawn still higher, the list on the next page
OVER = 60.0  # points; heading and what comes out, where they stand over and under the drawing
BESIDE = 118.0  # points; least room for them beside it
SIDES, ENDS = 46.0, 70.0  # points; what a drawing takes beyond the board itself
LINE, ROW = 11.4, 19.2  # points; each further line of a cut, and its first one with the box to tick
LETTERS, LETTERS_OF_SEVERAL = 25, 19  # that a column for what falls off has room for


def room_for_sheet(facts: Facts, source: Source, rows: tuple[Row, ...], is_first: bool) -> tuple[float, float]:
    """Width and height that the list leaves of the page, words over or beside the drawing, whichever lets it be larger.

    With more cuts than the page has room for, the drawing may as well be a good one.
    """
    left = _left(facts, rows, is_first)
    if left < LOWEST:
        return facts.width, HIGHEST if len(rows) >= CROWDED else TALLEST
    ways = ((facts.width, min(TALLEST, left - OVER)), (facts.width - BESIDE, min(TALLEST, left)))
    return max(ways, key=lambda way: _scale(source, *way))


def shares_a_page(facts: Facts, rows: tuple[Row, ...], drawing: Drawing, is_first: bool) -> bool:
    over = 0.0 if leaves_room_beside(facts, drawing) else OVER
    return drawing.height + over <= _left(facts, rows, is_first)


def leaves_room_beside(facts: Facts, drawing: Drawing) -> bool:
    return drawing.width + BESIDE <= facts.width


def _scale(source: Source, wide: float, high: float) -> float:
    return min((wide - SIDES) / float(source.length), (high - ENDS) / float(source.width))


def _left(facts: Facts, rows: tuple[Row, ...], is_first: bool) -> float:
    """What the list leaves of a page, whose room for drawings is kept somewhat short."""
    return facts.height + 24 - HEAD - (FIRST if is_first else 0.0) - sum(map(_high, rows))


def _high(row: Row) -> float:
    most = LETTERS if len(row.numbers) == 1 else LETTERS_OF_SEVERAL
    lines = max((len(row.numbers) + 1) // 2, 2 if any(_letters(side) > most for side in (row.off, row.rest)) else 1)
    return ROW + LINE * (lines - 1)


def _letters(side: Side | None) -> int:
    if side is None:
        return 0
    sizes = " × ".join(size.text for size in side.sizes) + "≈" * sum(size.rounded for size in side.sizes)
    return len(f"{side.name}, {sizes}") + 7 * (side.kind == "offcut")
