"""Equal boards gathered into pieces, each with its mark. A piece lies flat: length × width × thick, in inches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.join.model import Joined, JoinedBoard
from setout.place.model import LooseBoard
from setout.resolve.model import Hardware, Stock
from setout.values import Trace


@dataclass(frozen=True)
class Size:
    """A cut size. `high` and `formula` are set on a held size: it lies between `amount` and `high` (for the expected
    range) and equals `formula[0] + sum(k * measure for measure, k in formula[1])`; formula None when it is not a
    straight-line one."""

    amount: Fraction
    high: Fraction | None = None
    formula: tuple[Fraction, tuple[tuple[str, Fraction], ...]] | None = None

    @property
    def held(self) -> bool:
        return self.high is not None

    @property
    def reserve(self) -> Fraction:
        """The size that material is kept for."""
        return self.amount if self.high is None else max(self.amount, self.high)

    def hangs_on(self, measures: tuple[str, ...]) -> tuple[str, ...]:
        """Those of its piece's measures that it hangs on; all of them where no formula tells."""
        if not self.held:
            return ()
        named = {name for name, _ in self.formula[1]} if self.formula is not None else set()
        return tuple(name for name in measures if name in named) if named else measures


@dataclass(frozen=True)
class EdgeBand:
    """A banded edge of a piece as it lies: it runs along the piece's "length" or "width", on the side with low (-1) or
    high (+1) coordinates. Not `added`: the piece's cut size is already less by the banding."""

    along: str
    sign: int
    edging: Hardware
    added: bool


@dataclass(frozen=True)
class Piece:
    """All the boards that are one and the same to cut.

    `grain`: "length", "width", "any" or None. `boards` paths in the order placed (loose: the one path, `count` many).
    `exemplar` is the board drawn for all of them (None for loose parts), from the drawn scene. `shape` is the exact one
    the register keeps. `similar` marks pieces of unequal shape that print alike. `measures` names what it is held by.
    """

    mark: str
    stock: Stock
    length: Size
    width: Size
    thick: Fraction
    grain: str | None
    count: int
    boards: tuple[str, ...]
    exemplar: JoinedBoard | None
    loose: LooseBoard | None
    shape: str
    measures: tuple[str, ...]
    similar: tuple[str, ...]
    why_length: Trace
    why_width: Trace
    bands: tuple[EdgeBand, ...] = ()

    @property
    def held(self) -> bool:
        return bool(self.measures)

    @property
    def sized_by(self) -> tuple[str, ...]:
        """The measures that its size hangs on: it can't be cut before they are taken."""
        sized = {*self.length.hangs_on(self.measures), *self.width.hangs_on(self.measures)}
        return tuple(name for name in self.measures if name in sized)

    @property
    def worked_by(self) -> tuple[str, ...]:
        """The measures that only its holes, housings and cut-outs hang on."""
        sized = self.sized_by
        return tuple(name for name in self.measures if name not in sized)


@dataclass(frozen=True)
class Member:
    """A board of a Run: its path, its piece's mark, and which of its sizes, "length" or "width", adds to the run's."""

    board: str
    mark: str
    along: str


@dataclass(frozen=True)
class Run:
    """Boards to be cut side by side from one sheet, in this order (lowest, leftmost or frontmost first), so that the
    grain runs on. Their marks may differ, and one mark may stand in several runs. `name` is the repeat's path,
    "base.door"."""

    name: str
    members: tuple[Member, ...]


@dataclass(frozen=True)
class Entry:
    """A line of the register: `mark kind shape`; kind is "cut" (exact), "held" (by formula) or "letter" (then `mark` is
    a letter and `shape` the assembly definition that has it, "the job" for the job's own boards)."""

    mark: str
    kind: str
    shape: str


@dataclass(frozen=True)
class Register:
    """The marks file as read. `entries` in file order."""

    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class Pieces:
    """`pieces` sorted by mark (letter, then number); `mark_of` by board path; `new_entries` to be appended to the
    register. `letters` gives each assembly definition ("" the job) its letter. `runs`: what is cut in sequence."""

    joined: Joined
    pieces: tuple[Piece, ...]
    mark_of: Mapping[str, str]
    letters: Mapping[str, str]
    new_entries: tuple[Entry, ...]
    runs: tuple[Run, ...] = ()
