"""A sheet to draw on that ends as SVG text: black on white, few elements, the same bytes for the same strokes.

All strokes of one pen in one layer become a single path. Coordinates are points, y downwards; nothing has to start at
zero, for the finished drawing is cropped to what is on it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from setout.drawing.ink.lettering import CAP, FONT, SMALL, width
from setout.drawing.model import Drawing

Point = tuple[float, float]


class Pen(NamedTuple):
    """A stroke's width and its dashes, in points."""

    width: float
    dash: tuple[float, ...] = ()


HEAVY = Pen(1.4)
OUTLINE = Pen(0.9)
FINE = Pen(0.55)
HAIR = Pen(0.35)
HEAVY_DASHED = Pen(1.4, (5, 2.5))
OUTLINE_DASHED = Pen(0.9, (4, 2.5))
FINE_DASHED = Pen(0.55, (3, 2))
HAIR_DASHED = Pen(0.35, (2.5, 2))
CHAIN = Pen(0.5, (7, 1.8, 1.2, 1.8, 1.2, 1.8))  # what stands beside the thing drawn, as drafting has it
BROKEN = {HEAVY: HEAVY_DASHED, OUTLINE: OUTLINE_DASHED, FINE: FINE_DASHED, HAIR: HAIR_DASHED}

HATCH, LINES, MASKS, OVER = range(4)
"""Layers, the lowest first. Text always comes last."""


class Area(NamedTuple):
    """A rectangle on the sheet."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def wide(self) -> float:
        return self.right - self.left

    @property
    def high(self) -> float:
        return self.bottom - self.top

    @property
    def middle(self) -> Point:
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def meets(self, other: Area) -> bool:
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def nearest(self, to: Point) -> Point:
        """The point of it from which a line to `to` starts: on its border, unless `to` is in it."""
        return min(max(to[0], self.left), self.right), min(max(to[1], self.top), self.bottom)

    def grown(self, by: float) -> Area:
        return Area(self.left - by, self.top - by, self.right + by, self.bottom + by)


class Canvas:
    """Strokes, fills and words, gathered until `finished`."""

    def __init__(self) -> None:
        self._paths: dict[tuple[int, str], list[str]] = {}
        self._texts: list[str] = []
        self._low: list[float] = []
        self._high: list[float] = []

    # --- strokes ---

    def line(self, a: Point, b: Point, pen: Pen = OUTLINE, layer: int = LINES) -> None:
        self.polyline((a, b), pen, layer=layer)

    def polyline(
        self, points: Sequence[Point], pen: Pen = OUTLINE, *, closed: bool = False, layer: int = LINES
    ) -> None:
        self._path(layer, _stroke(pen), points, closed)

    def area(self, area: Area, pen: Pen = OUTLINE, *, layer: int = LINES, blank: bool = False) -> None:
        """A rectangle; `blank` wipes what lies under it in lower layers first."""
        if blank:
            self._path(layer, _FILL_WHITE, _corners(area), True)
        self.polyline(_corners(area), pen, closed=True, layer=layer)

    def mask(self, area: Area, layer: int = MASKS) -> None:
        """Wipes what lies under it in lower layers."""
        self._path(layer, _FILL_WHITE, _corners(area), True)

    def circle(self, centre: Point, radius: float, pen: Pen = OUTLINE, layer: int = LINES, fill: str = "") -> None:
        """`fill` "black" or "white" fills it, without an outline when the pen's width is 0."""
        x, y = centre
        r = num(radius)
        d = f"M{num(x - radius)} {num(y)}a{r} {r} 0 1 0 {num(2 * radius)} 0a{r} {r} 0 1 0 {num(-2 * radius)} 0z"
        self._mark((x - radius, y - radius), (x + radius, y + radius))
        if fill:
            self._add(layer, _FILL_WHITE if fill == "white" else _FILL_BLACK, d)
        if pen.width:
            self._add(layer, _stroke(pen), d)

    def solid(self, points: Sequence[Point], layer: int = LINES) -> None:
        """A filled black shape: an arrow head, a datum mark."""
        self._path(layer, _FILL_BLACK, points, True)

    def slot(self, a: Point, b: Point, radius: float, pen: Pen = FINE, layer: int = OVER) -> None:
        """A long hole with round ends about `a` and `b` (upright or level), white inside."""
        x, y = min(a[0], b[0]), min(a[1], b[1])
        far = max(a[0], b[0]) - x, max(a[1], b[1]) - y
        half = f"a{num(radius)} {num(radius)} 0 0 1"
        out, back = num(2 * radius), num(-2 * radius)
        if far[0] > far[1]:
            d = f"M{num(x)} {num(y - radius)}h{num(far[0])}{half} 0 {out}h{num(-far[0])}{half} 0 {back}z"
        else:
            d = f"M{num(x - radius)} {num(y)}{half} {out} 0v{num(far[1])}{half} {back} 0z"
        self._mark((x - radius, y - radius), (x + far[0] + radius, y + far[1] + radius))
        self._add(layer, _FILL_WHITE, d)
        self._add(layer, _stroke(pen), d)

    # --- words ---

    def text(
        self,
        at: Point,
        words: str,
        size: float = SMALL,
        *,
        anchor: str = "middle",
        bold: bool = False,
        turned: bool = False,
    ) -> Area:
        """Words whose capitals are centred on `at` crosswise; `turned` reads upwards. Says what room they take."""
        area = text_area(at, words, size, anchor=anchor, bold=bold, turned=turned)
        drop = CAP * size / 2
        # the start is worked out here: WeasyPrint clips centred text to a box that is too narrow by a hair
        where = f'x="{num(area.left)}" y="{num(at[1] + drop)}"'
        if turned:
            where = f'transform="translate({num(at[0] + drop)} {num(area.bottom)})rotate(-90)"'
        size_said = "" if size == SMALL else f' font-size="{num(size)}"'
        bold_said = ' font-weight="700"' if bold else ""
        self._texts.append(f"<text {where}{size_said}{bold_said}>{escaped(words)}</text>")
        self._mark(area[:2], area[2:])
        return area

    # --- the end ---

    @property
    def bounds(self) -> Area:
        """What has been drawn on so far."""
        return Area(*self._low, *self._high) if self._low else Area(0, 0, 0, 0)

    def finished(self, title: str, margin: float = 1.5) -> Drawing:
        """The drawing, cropped to its bounds and a narrow margin."""
        x, y, right, bottom = self.bounds.grown(margin)
        wide, high = num(right - x), num(bottom - y)
        body = [*self._path_elements(), *self._texts]
        svg = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}pt" height="{high}pt" '
            f'viewBox="{num(x)} {num(y)} {wide} {high}" font-family="{FONT}" font-size="{num(SMALL)}" '
            f'role="img"><title>{escaped(title)}</title>\n' + "\n".join(body) + "\n</svg>\n"
        )
        return Drawing(svg, float(wide), float(high), title)

    def _path_elements(self) -> Iterable[str]:
        for (_, look), parts in sorted(
            self._paths.items(), key=lambda item: (item[0][0], _rank(item[0][1]), item[0][1])
        ):
            yield f'<path {look} d="{"".join(parts)}"/>'

    def _path(self, layer: int, look: str, points: Sequence[Point], closed: bool) -> None:
        for p in points:
            self._mark(p, p)
        (x, y), *rest = points
        steps, last = [f"M{num(x)} {num(y)}"], (num(x), num(y))
        for px, py in rest:
            new = (num(px), num(py))
            steps.append(
                f"V{new[1]}" if new[0] == last[0] else f"H{new[0]}" if new[1] == last[1] else f"L{new[0]} {new[1]}"
            )
            last = new
        self._add(layer, look, "".join(steps) + ("z" if closed else ""))

    def _add(self, layer: int, look: str, d: str) -> None:
        self._paths.setdefault((layer, look), []).append(d)

    def _mark(self, low: Sequence[float], high: Sequence[float]) -> None:
        if not self._low:
            self._low, self._high = list(low), list(high)
        self._low = [min(a, b) for a, b in zip(self._low, low)]
        self._high = [max(a, b) for a, b in zip(self._high, high)]


def text_area(
    at: Point, words: str, size: float = SMALL, *, anchor: str = "middle", bold: bool = False, turned: bool = False
) -> Area:
    """The room words take, descenders and a little air included."""
    long = width(words, size, bold)
    before = {"start": 0.0, "middle": long / 2, "end": long}[anchor]
    half = size * 0.56
    x, y = at
    if turned:
        return Area(x - half, y - long + before, x + half, y + before)
    return Area(x - before, y - half, x - before + long, y + half)


def num(value: float) -> str:
    """A coordinate in as few characters as two decimals need; never `-0`."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def escaped(text: str) -> str:
    """Text as XML holds it. Control characters, which XML has no way to hold, are dropped."""
    kept = "".join(c for c in text if c >= " " and c not in "\x7f\ufffe\uffff" and not "\ud800" <= c <= "\udfff")
    return kept.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


_FILL_WHITE = 'fill="#fff"'
_FILL_BLACK = 'fill="#000"'


def _rank(look: str) -> int:
    """Within a layer white goes under strokes, and black fills over them."""
    return (_FILL_WHITE, "", _FILL_BLACK).index(look if look.startswith('fill="#') else "")


def _stroke(pen: Pen) -> str:
    dash = f' stroke-dasharray="{" ".join(num(d) for d in pen.dash)}"' if pen.dash else ""
    return f'fill="none" stroke="#000" stroke-width="{num(pen.width)}"{dash}'


def _corners(area: Area) -> tuple[Point, ...]:
    left, top, right, bottom = area
    return (left, top), (right, top), (right, bottom), (left, bottom)
