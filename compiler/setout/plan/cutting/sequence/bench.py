"""Boards as they lie about the shop while a plan is cut, at the sizes the saws really leave."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from setout.plan.cutting.model import Cut, Falls, Laid, Leftover, Source
from setout.plan.cutting.saws import Way, far_way, fixed_way, guided_way
from setout.plan.cutting.sequence.manner import PLAIN, Manner
from setout.plan.cutting.sequence.model import Blank, Job, Limits, other, size

LETTERS = "abcdefghjklmnprtuvwxy"  # the letters a hurried pencil doesn't confuse
NOTHING = 0


@dataclass
class Bench:
    """One source on its way through the saws: what came of it so far. `index` is its place among all sources."""

    index: int
    source: Source
    limits: Limits
    laid: list[Laid] = field(default_factory=list)
    leftovers: list[Leftover] = field(default_factory=list)
    cuts: list[Cut] = field(default_factory=list)
    letters: int = 0
    manner: Manner = PLAIN

    def letter(self) -> str:
        n, text = self.letters, ""
        self.letters += 1
        while True:
            n, last = divmod(n, len(LETTERS))
            text = LETTERS[last] + text
            if not n:
                return text
            n -= 1

    def put_by(self, x: Fraction, y: Fraction, dx: Fraction, dy: Fraction) -> Falls:
        """A leftover, with a letter when it is worth keeping."""
        keep = self.limits.keep(dx, dy)
        name = self.letter() if keep else ""
        self.leftovers.append(Leftover(x, y, dx, dy, keep, name))
        return Falls("offcut" if keep else "waste", "", 0, name, dx, dy)

    def take(self, blank: Blank, x: Fraction, y: Fraction) -> Falls:
        self.laid.append(Laid(blank.mark, blank.copy, x, y, blank.dx, blank.dy, blank.turned, blank.reserved))
        return Falls("reserved" if blank.reserved else "piece", blank.mark, blank.copy, "", blank.dx, blank.dy)


@dataclass(frozen=True)
class Open:
    """A board with cuts still to make: `parts` side by side along `along`. Its sizes are the real ones."""

    bench: Bench
    name: str
    x: Fraction
    y: Fraction
    dx: Fraction
    dy: Fraction
    along: str
    parts: tuple[Job | Blank, ...]
    to_stop: bool | None = None  # how its first cut along was to be made; None before

    @property
    def extent(self) -> Fraction:
        return self.dx if self.along == "x" else self.dy

    @property
    def across(self) -> Fraction:
        return self.dy if self.along == "x" else self.dx

    def piece_of(self, start: Fraction, extent: Fraction, name: str, parts: Sequence[Job | Blank]) -> Open:
        """The part of this board from `start` on along it, with some of its parts."""
        if self.along == "x":
            rect = self.x + start, self.y, extent, self.dy
        else:
            rect = self.x, self.y + start, self.dx, extent
        return Open(self.bench, name, *rect, self.along, tuple(parts), self.to_stop)

    def going_on(self, along: str, parts: tuple[Job | Blank, ...], to_stop: bool | None) -> Open:
        return Open(self.bench, self.name, self.x, self.y, self.dx, self.dy, along, parts, to_stop)

    def fixed(self, setting: Fraction) -> Way | None:
        limits, widest = self.bench.limits, setting in self.bench.manner.one_saw
        asked = (self.extent, self.across, setting, self.to_stop, widest)
        if asked not in limits.ways:
            limits.ways[asked] = fixed_way(limits.saws, *asked)
        return limits.ways[asked]

    def guided(self, setting: Fraction) -> Way | None:
        return guided_way(self.bench.limits.saws, self.extent, self.across, setting)

    def from_far(self, setting: Fraction) -> Way | None:
        return far_way(self.bench.limits.saws, self.extent, self.across, setting)

    def workable(self) -> bool:
        """Whether a saw that stands still can go on with it, and a person carry it there."""
        settled = settle(self)
        if not isinstance(settled, Open):
            return True
        lone = settled.bench.limits.heavy(settled.dx, settled.dy)
        return not lone and any(settled.fixed(s) for s in settled.settings())

    def settings(self) -> list[Fraction]:
        return list(dict.fromkeys(size(part, self.along) for part in self.parts))


def settle(board: Open) -> Open | Blank | None:
    """What a board is once there is nothing to do along it: cut across next, done (a Blank), or left over (None)."""
    while True:
        if not board.parts:
            return None
        if len(board.parts) > 1:
            return board
        part, extent = board.parts[0], size(board.parts[0], board.along)
        if isinstance(part, Blank):
            across = size(part, other(board.along))
            if extent < board.extent:
                return board
            if across == board.across:
                return part
            board = board.going_on(other(board.along), board.parts, None)
            continue
        if extent < board.extent and not _takes_up(board, part, extent):
            return board
        same = part.along == board.along
        board = board.going_on(part.along, part.parts, board.to_stop if same else None)


def _takes_up(board: Open, part: Job, extent: Fraction) -> bool:
    """Whether a last part may stay as large as the board is, because it will be cut to size that way in any case."""
    rest = board.extent - extent - board.bench.limits.kerf
    sizes = (rest, board.across) if board.along == "x" else (board.across, rest)
    return not (rest > 0 and board.bench.limits.keep(*sizes)) and _has_play(part, board.along, board.bench.limits.kerf)


def _has_play(job: Job, axis: str, kerf: Fraction) -> bool:
    whole = size(job, axis)
    if job.along == axis:
        return sum((size(p, axis) for p in job.parts), NOTHING) + kerf * (len(job.parts) - 1) < whole
    return all(_has_play(p, axis, kerf) if isinstance(p, Job) else size(p, axis) < whole for p in job.parts)
