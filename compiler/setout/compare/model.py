"""What changed between two plans. Inches, exact. Everything that stands in one of them alone has None for the other.

Words for directions are those of the assembly a board belongs to, each plan's own.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.diagnostics import Severity
from setout.geometry import Vec


@dataclass(frozen=True)
class Extent:
    """A size or a place; `low` < `high` where it waits for a measure."""

    low: Fraction
    high: Fraction

    @property
    def held(self) -> bool:
        return self.low != self.high


@dataclass(frozen=True)
class Sized:
    """One size before and after. `axis`: "wide" "high" "deep", of loose boards "long" "wide"; "thick" across the
    thickness."""

    axis: str
    old: Extent
    new: Extent

    @property
    def by(self) -> Fraction:
        """How much it grew, at the low end of what a measure may be."""
        return self.new.low - self.old.low


@dataclass(frozen=True)
class Machined:
    """Work on a board, counted by kind: "hole" "pocket" "cut" (housings, notches, cut-outs) "mitre" "band". `gone` is
    no longer there, `added` is new, `moved` the same elsewhere, at the best alignment of the two."""

    kind: str
    gone: int
    added: int
    moved: int
    kept: int


@dataclass(frozen=True)
class Method:
    """How a board is held to `partner`, another board's path in its own plan or `room.FACE`."""

    partner: str
    kind: str
    gauge: int | None = None
    length: Fraction | None = None
    depth: Fraction | None = None


@dataclass(frozen=True)
class BoardSide:
    """A board in one of the plans. `sizes` are what it is cut to, length × width × thick, as the cut list has them.
    `material` is what its stock is called on paper."""

    path: str
    name: str
    owner: str
    stock: str
    mark: str
    shape: str
    sizes: tuple[Extent, Extent, Extent]
    count: int
    material: str


@dataclass(frozen=True)
class BoardChange:
    """What became of a board, or of one that is new (`old` None) or left out (`new` None).

    how         with
    added gone  -
    renamed     it is the same under another name
    restocked   the stock's name or material
    resized     sized: the axes that changed
    counted     (loose boards) another number of copies
    regrained   grain: before, after (an axis word, "any", or "" for none)
    refaced     face: the good face before, after ("" where none is said)
    other-hand  it is the mirror image now
    machined    machined
    rejoined    unjoined, joined: methods to boards that both plans have
    turned      it lies another way in its assembly
    moved       moved: how far in its assembly (wide, high, deep)
    marked      the same board bears another mark; not told of one that waits for a measure, as nobody has cut it
    """

    how: tuple[str, ...]
    old: BoardSide | None
    new: BoardSide | None
    sized: tuple[Sized, ...] = ()
    grain: tuple[str, str] | None = None
    face: tuple[str, str] | None = None
    machined: tuple[Machined, ...] = ()
    unjoined: tuple[Method, ...] = ()
    joined: tuple[Method, ...] = ()
    moved: Vec | None = None


ANEW = frozenset({"restocked", "resized", "regrained", "refaced", "other-hand", "machined"})
"""How a board is another one to cut."""


@dataclass(frozen=True)
class AssemblyChange:
    """A placed assembly. how: added gone renamed resized turned mirrored moved; `boards` that stand in it, its own
    assemblies' with them."""

    how: tuple[str, ...]
    old: str | None
    new: str | None
    title: str
    boards: int
    sized: tuple[Sized, ...] = ()
    moved: Vec | None = None


# --- boards that are cut already -------------------------------------------------------------------------


@dataclass(frozen=True)
class Trim:
    """A cut that takes `by` off. `end` is the old board's own face there; "" where its faces have no names (loose
    boards). `along` "length" or "width" of the old piece, or "thick" where a square stick is rolled on its side.
    `shaving`: less than the thinnest blade of the shop takes, so that no strip falls off."""

    along: str
    end: str
    by: Fraction
    shaving: bool


@dataclass(frozen=True)
class Task:
    """Work still to be done on a board to make another of it. kind: hole pocket cut mitre band, `widened` (an old hole
    drilled larger or deeper), `enlarged` (an old housing or notch made larger), `unband` (the banding comes off),
    `plug` (old holes that stay in it, in the face behind the good one)."""

    kind: str
    count: int


@dataclass(frozen=True)
class Way:
    """How an old piece becomes a new one. Both lie flat: `axes` are the old piece's axes that become length, width
    and thickness, each with its sign in `signs`; `offset` is where the new board's low corner lies in the old one so
    turned. `turned`: (old face, new face) pairs, in their assemblies' words. `look`: what to see to first, "grain",
    "face" (the old board was cut without regard to it)."""

    axes: tuple[int, int, int]
    signs: tuple[int, int, int]
    offset: tuple[Fraction, Fraction]
    trims: tuple[Trim, ...]
    tasks: tuple[Task, ...]
    turned: tuple[tuple[str, str], ...]
    look: tuple[str, ...]


@dataclass(frozen=True)
class Fate:
    """What becomes of `count` boards of one old piece.

    kind       with
    right      right as it is: `new` is the mark it serves as
    reworked   becomes what its place wants now: way; only then may old holes be left in it, plugged
    serves     becomes another board: way; why it isn't made what its own place wants, as of lost ones
    lost       why: "unwanted" (its like is no longer wanted), "thickness", "stock", "small", "grain", "face", "holes"
               (they would show or clash: the fewest of them that do are `blocked`), "taken" (another board serves
               there), "held" (it waits for a measure now)
    uncut      it waited for a measure, so nobody has cut it

    `hint`: of one lost to its grain, of which the spec says nothing: the axis along which, said, it would be of use.
    """

    kind: str
    old: str
    new: str | None
    count: int
    boards: tuple[str, ...]
    becomes: tuple[str, ...]
    way: Way | None = None
    why: str = ""
    blocked: tuple[Task, ...] = ()
    hint: str = ""


@dataclass(frozen=True)
class ToCut:
    """New boards that no old one serves as. `waits`: for a measure."""

    mark: str
    count: int
    boards: tuple[str, ...]
    material: str
    waits: bool


@dataclass(frozen=True)
class Loss:
    """Of one stock: square inches of boards cut already (length × width), and how much of them is of no more use."""

    stock: str
    cut: Fraction
    lost: Fraction


@dataclass(frozen=True)
class Reuse:
    """The least loss over the whole job, supposing every board was cut that could be. `narrowed`: the boards were so
    many and so much worked on that each was tried at its own place only."""

    fates: tuple[Fate, ...]
    to_cut: tuple[ToCut, ...]
    losses: tuple[Loss, ...]
    narrowed: bool = False


# --- numbers ---------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Delta:
    """A number before and after. kind: boards pieces holes screws buy weight money steps. `name` and `size` tell what
    is counted (hole diameters, fastener lengths in inches; stock and hardware by title). `least`: by area alone."""

    kind: str
    name: str
    old: Fraction
    new: Fraction
    sizes: tuple[Fraction, ...] = ()
    least: bool = False

    @property
    def by(self) -> Fraction:
        return self.new - self.old


@dataclass(frozen=True)
class StepChange:
    """A step that only one of the plans has ("gone", "added"), or a line of the spec's own order that does
    ("line gone", "line added": `verb target` before the step `then`)."""

    how: str
    verb: str
    target: str
    then: tuple[str, str] | None = None


@dataclass(frozen=True)
class Told:
    """A warning or note that was cleared or is new."""

    how: str
    severity: Severity
    code: str
    message: str


@dataclass(frozen=True)
class Pair:
    """A board in both plans."""

    old: str
    new: str


@dataclass(frozen=True)
class Changes:
    """`metric` and `mark` are what the paper of the new spec is printed in, `old_metric` and `old_mark` that of the
    old one. `pairs` are all boards that both plans have, changed or not; `boards` those of which there is something to
    say, in the new plan's order, what is gone where it stood. `numbers` only those that changed."""

    old_title: str
    new_title: str
    metric: bool
    mark: Fraction
    old_metric: bool
    old_mark: Fraction
    pairs: tuple[Pair, ...]
    boards: tuple[BoardChange, ...]
    assemblies: tuple[AssemblyChange, ...]
    reuse: Reuse
    numbers: tuple[Delta, ...]
    steps: tuple[StepChange, ...]
    told: tuple[Told, ...]

    @property
    def changed(self) -> bool:
        """Whether there is anything to say. Boards that bear another mark count: somebody may have pencilled it."""
        print_ = (self.old_title, self.old_metric, self.old_mark) != (self.new_title, self.metric, self.mark)
        return bool(print_ or self.boards or self.assemblies or self.numbers or self.steps or self.told)
