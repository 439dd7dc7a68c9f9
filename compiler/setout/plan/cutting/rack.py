"""What is left, as the rack of the next job."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction

from setout.plan.cutting.model import Cutting
from setout.units import Style, say

Board = tuple[str, Fraction, Fraction, "str | None"]


def rack_text(cutting: Cutting, style: Style) -> str:
    """A `rack` block: what this job leaves, and what it found there and left alone. Sizes down to the mark of the tape,
    a line each, to be typed or ticked off; "" when there is nothing."""
    sticks = {plan.stock.name for plan in cutting.stocks if plan.stock.kind == "stick"}
    lines = [
        *_lines(cutting.rack, "left by this job", sticks, style),
        *_lines(cutting.untouched, "not touched", sticks, style),
    ]
    return "rack {\n" + "\n".join(f"  {line}" for line in lines) + "\n}\n" if lines else ""


def _lines(boards: Iterable[Board], says: str, sticks: set[str], style: Style) -> list[str]:
    of: dict[str, Counter[str]] = {}
    for stock, length, width, grain in boards:
        size = _down(length, style)
        if stock not in sticks:
            size += f" x {_down(width, style)}"
            size += f" grain along {_down(width, style)}" if grain == "width" else ""
        of.setdefault(stock, Counter())[size] += 1
    listed = [f"{stock}: " + ",\n      ".join(_of(*pair) for pair in sizes.items()) for stock, sizes in of.items()]
    return [f"# {says}", *listed] if listed else []


def _of(size: str, count: int) -> str:
    return size if count == 1 else f"{count} of {size}"


def _down(length: Fraction, style: Style) -> str:
    return say(length // style.mark * style.mark, style)
