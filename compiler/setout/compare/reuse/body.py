"""A cut piece as a body with things done to it, read from its shape's text. Whole numbers of one small unit.

A body lies flat: length, width, thickness on axes 0, 1, 2.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import lcm, prod

from setout.piece.outline import End, Outline, by_item
from setout.piece.parse import bare, parse_shape

Point = tuple[int, int, int]
Lay = tuple[tuple[int, int, int], tuple[int, int, int]]


@dataclass(frozen=True)
class Spot:
    """One thing that was done to a board; no material is certain to be left in the box `lo` to `hi`.

    word "cut": the box itself. "hole", "pocket": `at` is where it is drilled, `faces` and `numbers` (diameter, depth
    unless it goes through) as in an outline. "mitre": `faces` the end and the face that keeps its length, `numbers`
    its degrees.
    """

    word: str
    faces: tuple[End, ...]
    at: Point
    numbers: tuple
    lo: Point
    hi: Point


@dataclass(frozen=True)
class Body:
    """`grain` "length" "any" "none", "" for sticks. `bands`: (edge, edging's name). `show`: the good face."""

    kind: str
    stock: str
    size: Point
    grain: str
    show: End | None
    spots: tuple[Spot, ...]
    bands: tuple[tuple[End, str], ...]

    @property
    def volume(self) -> int:
        return self.size[0] * self.size[1] * self.size[2]

    @property
    def plain(self) -> bool:
        """Whether all ends and faces of it are alike."""
        return not (self.spots or self.show or self.bands)

    @cached_property
    def by_word(self) -> Mapping[str, tuple[Spot, ...]]:
        words = dict.fromkeys(spot.word for spot in self.spots)
        return {word: tuple(spot for spot in self.spots if spot.word == word) for word in words}

    @cached_property
    def _laid(self) -> dict[Lay, Body]:
        return {}

    def laid(self, lay: Lay) -> Body:
        """As it is when it lies so."""
        if lay not in self._laid:
            self._laid[lay] = _turned(self, lay)
        return self._laid[lay]


def unit_of(shapes: Iterable[str]) -> int:
    """So many units to the inch that every number of these cut shapes is a whole one."""
    outlines = (parse_shape(bare(shape)) for shape in shapes)
    return lcm(4, *{x.denominator for o in outlines if o is not None for x in o.columns[0]})


def body_of(shape: str, stock: str, unit: int) -> Body | None:
    """The body of a cut shape; None for one that hangs on a measure. `stock` is the name it is compared under."""
    outline = parse_shape(bare(shape))
    if outline is None or outline.measures:
        return None
    skeleton = outline.skeleton
    size: Point = _whole(outline.columns[0][:3], unit)  # type: ignore[assignment]
    show = skeleton.show
    bands = tuple((i.faces[0], i.word.split()[1]) for i in skeleton.items if i.word.startswith("band "))
    spots = sorted(_spots(outline, unit, size), key=_room, reverse=True)
    return Body(skeleton.kind, stock, size, skeleton.grain, show, tuple(spots), bands)


def _room(spot: Spot) -> int:
    """What takes most room is most in the way: it is looked at first."""
    return prod(b - a for a, b in zip(spot.lo, spot.hi))


def _whole(lengths: Sequence[Fraction], unit: int) -> tuple[int, ...]:
    return tuple(int(x * unit) for x in lengths)


def _spots(outline: Outline, unit: int, size: Point) -> Iterable[Spot]:
    for item, at, numbers in by_item(outline.skeleton, outline.columns[0]):
        points = [_whole(point, unit) for point in at]
        if item.word == "cut":
            lo, hi = (tuple(map(f, *points)) for f in (min, max))
            yield Spot("cut", (), lo, (), lo, hi)  # type: ignore[arg-type]
        elif item.word == "mitre":
            yield _mitre(item.faces, numbers[0], size)
        elif item.word in ("hole", "pocket"):
            yield _bore(item.word, item.faces, list(points[0]), _whole(numbers, unit), item.on, size)


def _bore(word: str, faces: tuple[End, ...], at: list[int], numbers: tuple, on: tuple[int, ...], size: Point) -> Spot:
    for axis, sign in faces:
        if axis in on:
            at[axis] = size[axis] if sign > 0 else 0
    # A hole that starts below a face (in a notch, say) has its place on all three axes in its shape.
    radius = -(-numbers[0] // 2)
    lo, hi = [x - radius for x in at], [x + radius for x in at]
    axis, sign = faces[0]
    if sign == 0 or len(numbers) < 2:
        lo[axis], hi[axis] = 0, size[axis]
    else:
        lo[axis], hi[axis] = sorted((at[axis], at[axis] - sign * numbers[1]))
    if word == "pocket":
        out, end = faces[1]
        reach = 2 * size[axis] + 2 * numbers[0]  # more than the 15 degrees of a pocket bit ask for
        lo[out], hi[out] = sorted((at[out], at[out] - end * reach))
    return Spot(word, faces, tuple(at), numbers, tuple(lo), tuple(hi))  # type: ignore[arg-type]


def _mitre(faces: tuple[End, ...], degrees: Fraction, size: Point) -> Spot:
    """What a mitre takes off, by the box round it: up to 45 degrees no more than the board is thick (or wide)."""
    (axis, sign), (across, _) = faces
    steep = 1 if degrees <= 45 else -(-90 // max(1, int(90 - degrees)))  # 90 / (90 - a) is more than its tangent
    far = min(size[axis], size[across] * steep)
    lo, hi = [0, 0, 0], list(size)
    lo[axis], hi[axis] = (size[axis] - far, size[axis]) if sign > 0 else (0, far)
    return Spot("mitre", faces, (0, 0, 0), (degrees,), tuple(lo), tuple(hi))  # type: ignore[arg-type]


# --- turning ---------------------------------------------------------------------------------------------

_FLAT: tuple[Lay, ...] = tuple(
    ((a, b, 2), signs)
    for a, b, ways in (
        (0, 1, ((1, 1, 1), (-1, -1, 1), (1, -1, -1), (-1, 1, -1))),
        (1, 0, ((1, -1, 1), (-1, 1, 1), (1, 1, -1), (-1, -1, -1))),
    )
    for signs in ways
)
_ROLLED: tuple[Lay, ...] = tuple(((0, 2, 1), signs) for signs in ((1, 1, -1), (1, -1, 1), (-1, 1, 1), (-1, -1, -1)))


def lays(body: Body) -> Sequence[Lay]:
    """Every way it may be turned with its broad faces up and down."""
    if body.kind == "sheet":
        return _FLAT
    square = body.size[1] == body.size[2]
    return (*_FLAT[:4], *(_ROLLED if square else ()))


def _turned(body: Body, lay: Lay) -> Body:
    axes, signs = lay
    place = {old: (new, sign) for new, (old, sign) in enumerate(zip(axes, signs))}

    def end(e: End) -> End:
        new, sign = place[e[0]]
        return new, e[1] * sign

    def point(p: Point) -> Point:
        a, b, c = (p[o] if s > 0 else body.size[o] - p[o] for o, s in zip(axes, signs))
        return a, b, c

    def spot(s: Spot) -> Spot:
        a, b = point(s.lo), point(s.hi)
        lo, hi = tuple(map(min, a, b)), tuple(map(max, a, b))
        faces = tuple(map(end, s.faces))
        at = list(lo if s.word == "cut" else point(s.at))
        if s.word == "hole" and not faces[0][1]:
            at[faces[0][0]] = 0  # it goes right through: neither end is its own
        return Spot(s.word, faces, tuple(at), s.numbers, lo, hi)  # type: ignore[arg-type]

    a, b, c = (body.size[axis] for axis in axes)
    show = None if body.show is None else end(body.show)
    bands = tuple((end(edge), name) for edge, name in body.bands)
    return Body(body.kind, body.stock, (a, b, c), body.grain, show, tuple(map(spot, body.spots)), bands)
