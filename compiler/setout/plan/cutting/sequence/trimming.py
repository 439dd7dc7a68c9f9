"""The factory edges of whole sheets.

The two edges that everything is measured from are trimmed first. The far ones are trimmed at once too, or left to the
cuts that come there in any case: whichever makes fewer cuts. A leftover worth keeping never has a factory edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from setout.plan.cutting.model import Cut, Falls
from setout.plan.cutting.saws import takes
from setout.plan.cutting.sequence.bench import Bench
from setout.plan.cutting.sequence.model import Job
from setout.resolve.model import Saw

NOTHING = 0


@dataclass(frozen=True)
class Start:
    """A source before its first cut. `far` names the far edges that are trimmed first: "", "x", "y" or "xy"."""

    bench: Bench
    job: Job
    trim: Fraction
    far: str

    @property
    def corner(self) -> tuple[Fraction, Fraction]:
        return self.trim, self.trim

    @property
    def sizes(self) -> tuple[Fraction, Fraction]:
        """Of the board once it is trimmed."""
        source = self.bench.source
        return (
            source.length - self.trim * (2 if "x" in self.far else 1),
            source.width - self.trim * (2 if "y" in self.far else 1),
        )


def trims(start: Start) -> Iterator[Cut]:
    """The trimming cuts, long edges first; none where nothing is trimmed."""
    if not start.trim:
        return
    source, trim = start.bench.source, start.trim
    x, y, dx, dy = NOTHING, NOTHING, source.length, source.width
    for axis, far in (("y", False), ("y", True), ("x", False), ("x", True)):
        if far and axis not in start.far:
            continue
        yield _trim(start, axis, far, (x, y, dx, dy))
        if axis == "x":
            dx -= trim
            x += NOTHING if far else trim
        else:
            dy -= trim
            y += NOTHING if far else trim


def _trim(start: Start, axis: str, far: bool, rect: tuple[Fraction, Fraction, Fraction, Fraction]) -> Cut:
    """What falls off is narrower than the trim by the kerf. A kerf wider than the trim leaves nothing: the blade runs
    along the edge, set from the other."""
    x, y, dx, dy = rect
    along, across, low = (dx, dy, x) if axis == "x" else (dy, dx, y)
    saw = _saw(start, along, across)
    kerf = saw.kerf if saw else start.bench.limits.kerf
    waste, kept = start.trim - kerf, along - start.trim
    strip = _falls("waste", "", axis, waste, across) if waste > 0 else None
    board = _falls("board", start.bench.source.id, axis, kept, across)
    at = low + kept if far else low + waste
    name = start.bench.source.id
    if strip is None:
        side = "low" if far else "high"
        return Cut(0, name, name, "trim", axis, kept, at, across, kerf, saw, board, None, side)
    side = "high" if far else "low"
    return Cut(0, name, name, "trim", axis, waste, at, across, kerf, saw, strip, board, side)


def _saw(start: Start, along: Fraction, across: Fraction) -> Saw | None:
    """A saw brought to the sheet, else one that takes it."""
    saws = [saw for saw in start.bench.limits.saws if takes(saw, along, across)]
    able = [
        s for s in saws if s.breaks_down or s.rips is not None or (s.crosscuts is not None and s.crosscuts >= across)
    ]
    return min(able, key=lambda saw: (not saw.breaks_down, saws.index(saw)), default=None)


def _falls(kind: str, name: str, axis: str, along: Fraction, across: Fraction) -> Falls:
    return Falls(kind, "", 0, name, *((along, across) if axis == "x" else (across, along)))
