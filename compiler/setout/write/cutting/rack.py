"""What is left, written as a rack that the next spec can include."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from math import floor

from setout.plan.cutting.model import Cutting
from setout.resolve.model import Stock
from setout.units import Style, say

Offcut = tuple[str, Fraction, Fraction, "str | None"]


def rack_text(cutting: Cutting, stocks: dict[str, Stock], style: Style) -> str:
    """What this job leaves and what it left alone; sizes a mark short rather than long. "" when nothing is worth keeping."""
    count = Counter(_down(offcut, style) for offcut in (*cutting.rack, *cutting.untouched))
    lines: dict[str, list[str]] = {}
    for offcut in sorted(count, key=lambda o: (o[0], -o[1] * o[2], -o[1], o[3] or "")):
        lines.setdefault(offcut[0], []).append(_said(offcut, count[offcut], stocks[offcut[0]], style))
    if not lines:
        return ""
    body = "".join(f"  {name}: {line}\n" for name, many in lines.items() for line in many)
    return f'project "Rack" {{ units {"mm" if style.metric else "inch"} }}\nrack {{\n{body}}}\n'


def _down(offcut: Offcut, style: Style) -> Offcut:
    stock, long, wide, grain = offcut
    return stock, floor(long / style.mark) * style.mark, floor(wide / style.mark) * style.mark, grain


def _said(offcut: Offcut, count: int, stock: Stock, style: Style) -> str:
    _, long, wide, grain = offcut
    many = f"{count} of " if count > 1 else ""
    if stock.kind == "stick":
        return many + say(long, style)
    along = f" grain along {say(wide, style)}" if grain == "width" and wide != long else ""
    return f"{many}{say(long, style)} x {say(wide, style)}{along}"
