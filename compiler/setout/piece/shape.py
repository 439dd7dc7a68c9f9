"""The canonical text of a board: the same for two boards exactly when a turn of the board maps one to the other.

A board lies in its own frame: l along the length, w across, t through the thickness. Of all the ways in which it may be
laid so by turning (never by a mirror), the one whose numbers come first in order is written down.

    1 sheet ply 30-1/2 x 11 x 23/32 grain length; good +t; hole -t at l 3 w 2 dia 1/2 deep 3/8
    1 stick lath (40 - bed) x 1-1/2 x 3/4; cut l 0..3 w 0..1-1/2 t 0..3/8; mitre +l 45 long +w

The leading number is the version of this text. Registers keep such texts for years: what one version writes stays so.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import product
from math import lcm
from operator import sub
from typing import NamedTuple

from setout.geometry import Motion
from setout.piece.numbers import form_text
from setout.piece.outline import End, Item, Outline, Skeleton, by_item

VERSION = "1"
AXES = "lwt"

Form = tuple[int, ...]
"""A constant and its slopes, all multiplied by one common denominator so that comparing is quick."""
Lay = tuple[tuple[int, int, int], tuple[int, int, int]]
"""Which old axis becomes l, w and t, and the sign with which it does."""


class Shape(NamedTuple):
    """`text` without its version; `sizes` are rows of the outline's columns: (length, width, thickness)."""

    text: str
    axes: tuple[int, int, int]
    signs: tuple[int, int, int]


def shape(outline: Outline) -> Shape:
    """The canonical shape of an outline and the way the board lies in it."""
    scale, forms = _scaled(outline)
    table = _Table(outline.skeleton, forms)
    best = min((_laid(table, lay), lay) for lay in _lays(outline.skeleton, forms))
    (sizes, show, items), (axes, signs) = best
    words = _words(outline.skeleton, sizes, show, items, scale, outline.measures)
    return Shape("; ".join(words), axes, signs)


def lays(outline: Outline) -> tuple[Lay, ...]:
    """All the ways of laying a board down that give its canonical shape: more than one when it is alike turned."""
    _, forms = _scaled(outline)
    table = _Table(outline.skeleton, forms)
    laid = [(_laid(table, lay), lay) for lay in _lays(outline.skeleton, forms)]
    best = min(how for how, _ in laid)
    return tuple(lay for how, lay in laid if how == best)


def laying(axes: tuple[int, int, int], signs: tuple[int, int, int], lo: tuple, hi: tuple) -> Motion:
    """The motion that takes a board's box (job coordinates) to its own frame, low corner at 0."""
    to, sign, shift = [0, 0, 0], [1, 1, 1], [Fraction(0)] * 3
    for new, (old, s) in enumerate(zip(axes, signs)):
        to[old], sign[old] = new, s
        shift[new] = -lo[old] if s > 0 else hi[old]
    return Motion(tuple(to), tuple(sign), tuple(shift))  # type: ignore[arg-type]


class _Table:
    """An outline's items with each coordinate worked out from both ends, so that a way of lying only picks."""

    def __init__(self, skeleton: Skeleton, forms: list[Form]) -> None:
        self.sizes = forms[:3]
        self.show = skeleton.show
        self.items: list[tuple[Item, list[tuple], tuple[Form, ...]]] = []
        for item, points, numbers in by_item(skeleton, forms):
            both = [tuple((tuple(map(sub, s, x)), x) for s, x in zip(self.sizes, point)) for point in points]
            self.items.append((item, both, numbers))


def _scaled(outline: Outline) -> tuple[int, list[Form]]:
    scale = lcm(*{f.denominator for column in outline.columns for f in column})
    columns = ([f.numerator * (scale // f.denominator) for f in column] for column in outline.columns)
    return scale, list(zip(*columns))


def _lays(skeleton: Skeleton, forms: list[Form]) -> Iterator[Lay]:
    for axes in _axis_orders(skeleton, forms):
        odd = sum(axes[i] > axes[j] for i in range(3) for j in range(i + 1, 3)) % 2
        for a, b, c in product((1, -1), repeat=3):
            if (a * b * c < 0) == bool(odd):
                yield axes, (a, b, c)


def _axis_orders(skeleton: Skeleton, forms: list[Form]) -> list[tuple[int, int, int]]:
    """Length, width and thickness as old axes. Sheets keep their thickness, sticks their run; equal sizes may swap."""
    t = skeleton.thick
    if skeleton.long is not None:
        long, wide = skeleton.long, 3 - t - skeleton.long
        square = skeleton.kind == "stick" and forms[wide] == forms[t]
        return [(long, wide, t), (long, t, wide)] if square else [(long, wide, t)]
    a, b = (axis for axis in range(3) if axis != t)
    if forms[a] == forms[b]:
        return [(a, b, t), (b, a, t)]
    return [(a, b, t)] if forms[a] > forms[b] else [(b, a, t)]


def _laid(table: _Table, lay: Lay) -> tuple:
    axes, signs = lay
    place = {old: (new, s) for new, (old, s) in enumerate(zip(axes, signs))}
    picks = tuple((old, s > 0) for old, s in zip(axes, signs))
    items = {_laid_item(item, points, numbers, place, picks) for item, points, numbers in table.items}
    # negative, so that the good face comes to lie up rather than down
    show = () if table.show is None else tuple(-n for n in _turned(table.show, place))
    return tuple(table.sizes[a] for a in axes), show, tuple(sorted(items))


def _laid_item(item: Item, points: list[tuple], numbers: tuple[Form, ...], place: dict, picks: tuple) -> tuple:
    faces = tuple(_turned(end, place) for end in item.faces)
    if item.word == "cut":
        low, high = points
        # Turned end for end, the low corner of what is gone is where its high corner was.
        lo = tuple(low[a][1] if up else high[a][0] for a, up in picks)
        hi = tuple(high[a][1] if up else low[a][0] for a, up in picks)
        return item.word, faces, (lo, hi), numbers
    where = tuple(tuple(() if a in item.on else p[a][up] for a, up in picks) for p in points)
    return item.word, faces, where, numbers


def _turned(end: End, place: dict[int, tuple[int, int]]) -> End:
    new, sign = place[end[0]]
    return new, end[1] * sign


def _words(skeleton: Skeleton, sizes: tuple, show: tuple, items: tuple, scale: int, measures: tuple[str, ...]):
    def say(form: Form) -> str:
        return form_text([Fraction(n, scale) for n in form], measures)

    yield header(skeleton, [say(s) for s in sizes])
    if show:
        yield f"good {_end_text((-show[0], -show[1]))}"
    for word, faces, points, numbers in items:
        yield _item_text(word, faces, points, [say(n) for n in numbers], say)


def header(skeleton: Skeleton, sizes: list[str]) -> str:
    """The first words of a shape: what it is cut from, its sizes and its grain."""
    grain = f" grain {skeleton.grain}" if skeleton.grain else ""
    return f"{skeleton.kind} {skeleton.stock} {' x '.join(sizes)}{grain}"


def _item_text(word: str, faces: tuple, points: tuple, numbers: list[str], say) -> str:
    if word == "cut":
        ranges = (f"{x} {say(a)}..{say(b)}" for x, a, b in zip(AXES, *points))
        return f"cut {' '.join(ranges)}"
    if word.startswith("band "):
        return f"{word.replace('band', 'band ' + _end_text(faces[0]), 1)}"
    if word == "mitre":
        return f"mitre {_end_text(faces[0])} {numbers[0]} long {_end_text(faces[1])}"
    at = " ".join(f"{x} {say(form)}" for x, form in zip(AXES, points[0]) if form != ())
    toward = f" toward {_end_text(faces[1])}" if word == "pocket" else ""
    deep = f"deep {numbers[1]}" if len(numbers) > 1 else "through"
    return f"{word} {_end_text(faces[0])}{f' at {at}' if at else ''}{toward} dia {numbers[0]} {deep}"


def _end_text(end: End) -> str:
    return {1: "+", -1: "-", 0: ""}[end[1]] + AXES[end[0]]
