"""Cells that hold a length, as shops and spreadsheets write them."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from setout.new.model import Amount
from setout.units import exact

UNITS = {
    **dict.fromkeys(("in", "inch", "inches", '"'), "in"),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("ft", "foot", "feet", "'"), "ft"),
}
DOUBT = "may be thousands or a decimal"
_SWAPS = {**dict.fromkeys("″”“„", '"'), **dict.fromkeys("′’‘", "'"), **dict.fromkeys("–—−‐‑", "-"), "⁄": "/"}
_NUMBER = (
    r"(?:(?P<whole>\d{1,6})(?:\s*-\s*|\s+))?(?P<top>\d{1,6})/(?P<bottom>\d{1,6})"
    r"|(?P<decimal>\d{1,6}(?:[.,]\d{0,6})?|[.,]\d{1,6})"
)
_UNIT = "|".join(sorted(UNITS, key=len, reverse=True))
_PLAIN = re.compile(rf"(?:{_NUMBER})\s*(?P<unit>{_UNIT})?\.?", re.ASCII)
_FEET = re.compile(
    rf"(?P<feet>\d{{1,4}})\s*(?:'|ft\.?|foot|feet)\s*-?\s*(?:{_NUMBER})\s*(?:\"|''|in\.?|inch|inches)?", re.ASCII
)
_THICK = re.compile(r"(?<!\S)(\d+/\d+|\d+[.,]?\d*)\s*(mm|cm|in|inch|\")?(?!\S)", re.ASCII)
_GROUPED = re.compile(r"(?<!\d)[1-9]\d{0,2},\d{3}(?!\d)", re.ASCII)
_POINTED = re.compile(r"[1-9]\d?\.\d{3}(?!\d)", re.ASCII)
_COUNT = re.compile(r"(?:[x×]\s*)?(\d{1,6})(?:[.,]0*)?\s*(?:x|×|pcs?\.?|pieces?|off|ea\.?)?", re.ASCII)


def amount(cell: str) -> Amount | str:
    """The length in the cell, its unit empty where it says none; or why there is none."""
    if not cell:
        return "is missing"
    text = _plain(cell)
    if _GROUPED.search(text):
        return DOUBT
    feet = _FEET.fullmatch(text)
    match = feet or _PLAIN.fullmatch(text)
    if not match:
        return "can't be read"
    parts = match.groupdict()
    value = _value(parts)
    if value is None:
        return "is no proper fraction"
    if feet:
        value = int(parts["feet"]) * 12 + value
        return Amount(value, "in", exact(value))
    return Amount(value, UNITS[parts["unit"]] if parts["unit"] else "", _spelled(parts))


def doubtful(cell: str, unit: str) -> bool:
    """`1.200` millimetres: no board is measured so finely, and 1200 is one."""
    return unit == "mm" and bool(_POINTED.match(_plain(cell)))


def count(cell: str) -> int | None:
    """`4`, `4.0`, `4 pcs`, `x4`, `4x`."""
    match = _COUNT.fullmatch(cell.casefold().strip())
    return int(match[1]) if match else None


def thickness_in(material: str) -> Amount | None:
    """What the material's name says of it: `3/4 birch ply`, `18mm MDF`, `MDF 12 mm`, `ply 1/2"`."""
    match = _THICK.search(_plain(material))
    found = amount(f"{match[1]}{match[2] or 'in'}") if match and (match[2] or "/" in match[1]) else None
    return found if isinstance(found, Amount) and found.value else None


def _plain(cell: str) -> str:
    """Small letters; signs that only print otherwise as the keyboard has them; ½ as 1/2."""
    text = "".join(_SWAPS.get(c, c) for c in cell)
    text = re.sub("[\u00bc-\u00be\u2150-\u215e]", lambda m: f" {_written_out(m[0])}", text)
    return " ".join(text.casefold().split())


def _written_out(char: str) -> str:
    return str(Fraction(unicodedata.numeric(char)).limit_denominator(16))


def _value(parts: dict[str, str | None]) -> Fraction | None:
    if parts["decimal"]:
        return Fraction(_point(parts["decimal"]))
    top, bottom = int(parts["top"] or 0), int(parts["bottom"] or 0)
    if not bottom or (parts["whole"] and top >= bottom):
        return None
    return int(parts["whole"] or 0) + Fraction(top, bottom)


def _spelled(parts: dict[str, str | None]) -> str:
    if parts["decimal"]:
        return _point(parts["decimal"])
    fraction = f"{parts['top']}/{parts['bottom']}"
    return f"{parts['whole']}-{fraction}" if parts["whole"] else fraction


def _point(text: str) -> str:
    """A decimal as a spec has it: a point, and no more noughts than needed."""
    text = text.replace(",", ".")
    whole, _, rest = text.partition(".")
    rest = rest.rstrip("0")
    whole = whole.lstrip("0") or "0"
    return f"{whole}.{rest}" if rest else whole
