"""What one board is to the register, judged over all scenes: an exact shape, or a held one by its formulas."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.piece.held import Ranges, bends, ranges, size, size_text, straight, varying_text
from setout.piece.model import Size
from setout.piece.outline import Outline
from setout.piece.shape import VERSION, Shape, header, shape
from setout.place.model import Placed
from setout.values import Trace


@dataclass(frozen=True)
class Seen:
    """One board as it is in each scene. `alike`: its joints and features are listed in one order in all of them.
    `whys` and `held` go by the outline's axes."""

    outlines: Sequence[Outline]
    alike: bool
    whys: Sequence[Trace]
    held: Sequence[frozenset[str]]


@dataclass(frozen=True)
class Reckoning:
    """`kind` and `shape` are the register's; `axes` the board's own axes along which its length and width run."""

    kind: str
    shape: str
    length: Size
    width: Size
    thick: Fraction
    grain: str | None
    measures: tuple[str, ...]
    axes: tuple[int, int]


class Reckoner:
    """Boards repeat a great deal, so each distinct outline is worked out once."""

    def __init__(self, placed: Placed) -> None:
        self.over = ranges(placed)
        self.known: dict[Outline, Shape] = {}

    def reckon(self, seen: Seen) -> Reckoning:
        first, *others = seen.outlines
        said = {m for names in seen.held for m in names} & set(self.over.names)
        if not said and all(o == first for o in others):
            made = self._shape(first)
            return self._reckoning(made, "cut", made.text, seen, said)
        bent = any(self._bends(seen, axis) for axis in range(3))
        same = seen.alike and not bent and all(o.skeleton == first.skeleton for o in others)
        lines = straight([o.columns[0] for o in seen.outlines], self.over) if same else None
        if lines is None:
            return self._varying(seen, said)
        made = self._shape(Outline(first.skeleton, lines.columns, lines.measures))
        return self._reckoning(made, "held", made.text, seen, said | set(lines.measures))

    def _varying(self, seen: Seen, said: set[str]) -> Reckoning:
        made = [self._shape(o) for o in seen.outlines]
        sizes = [self._size(seen, axis) for axis in made[-1].axes]
        measures = said | _movers(seen.outlines, self.over)
        head = header(seen.outlines[-1].skeleton, [size_text(s) for s in sizes])
        text = varying_text(sorted(measures), head, [m.text for m in made])
        return self._reckoning(made[-1], "held", text, seen, measures)

    def _reckoning(self, made: Shape, kind: str, text: str, seen: Seen, measures: set[str]) -> Reckoning:
        skeleton = seen.outlines[-1].skeleton
        length, width, thick = (self._size(seen, axis) for axis in made.axes)
        axes = made.axes[:2]
        if skeleton.long is None and width.reserve > length.reserve:
            length, width, axes = width, length, (axes[1], axes[0])
        grain = {"none": None, "": "length"}.get(skeleton.grain, skeleton.grain)
        names = tuple(sorted(measures))
        return Reckoning(kind, f"{VERSION} {text}", length, width, thick.amount, grain, names, axes)

    def _size(self, seen: Seen, axis: int) -> Size:
        held = bool(seen.held[axis] & set(self.over.names))
        return size([o.columns[0][axis] for o in seen.outlines], self.over, held, self._bends(seen, axis))

    def _bends(self, seen: Seen, axis: int) -> bool:
        return bool(seen.held[axis]) and bends(seen.whys[axis], frozenset(self.over.names))

    def _shape(self, of: Outline) -> Shape:
        made = self.known.get(of)
        if made is None:
            made = self.known[of] = shape(of)
        return made


def _movers(outlines: Sequence[Outline], over: Ranges) -> set[str]:
    """The measures that a board without straight lines hangs on, as far as single scenes tell; else all of them."""
    low = dict(over.low)
    still = next((o for o, taken in zip(outlines, over.takens) if taken == low), outlines[0])
    moved = {
        m
        for o, taken in zip(outlines, over.takens)
        for m in over.names
        if o != still and taken == {**low, m: over.high[m]}
    }
    return moved or set(over.names)
