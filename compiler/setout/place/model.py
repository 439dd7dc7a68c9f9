"""Every board at its place. Coordinates are the job's own, in inches, exact; nothing is optional but what has no
place."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from setout.geometry import Axis, Box, Face, Motion, Vec
from setout.resolve.model import Hardware, Project, Stock
from setout.source import Span
from setout.values import Trace


@dataclass(frozen=True)
class Notch:
    """Material taken off: `box` is the volume gone, cut through the thickness. kind "notch" (open to an edge) or
    "cutout"."""

    kind: str
    box: Box
    span: Span


@dataclass(frozen=True)
class Hole:
    """A round hole drilled into `face` at `at` (a point on that face); `depth` None goes through."""

    face: Face
    at: Vec
    diameter: Fraction
    depth: Fraction | None
    span: Span


@dataclass(frozen=True)
class Mitre:
    """The end `end` is cut at `angle` degrees from square; the face `long` keeps the full length."""

    end: Face
    angle: Fraction
    long: Face
    span: Span


Feature = Notch | Hole | Mitre


@dataclass(frozen=True)
class Banding:
    """One edge with edge banding. Not `added`: the board's box has it within, and is cut less by its thickness."""

    face: Face
    edging: Hardware
    added: bool

    @property
    def thick(self) -> Fraction:
        assert self.edging.edging is not None
        return self.edging.edging.thick


@dataclass(frozen=True)
class Board:
    """One part in place (a repeat makes several Boards). All axes and faces are the job's.

    `name` is the path's last step(s) in its assembly: "shelf.2"; `path` the whole: "left_base.shelf.2". `owner` is
    the path of the Instance it belongs to ("" for the job). `definition` is "base.shelf". `thick` the thickness
    axis; `run` a stick's length axis (None for sheet parts). `grain` an axis, "any" (free to turn) or None (the
    stock has none). `why` one Trace for the size on each axis; `held` per axis the measures the size hangs on.
    `where` one Trace for the left, bottom and front face's place, on the axes and in the coordinates of its own
    assembly. `sequence` names the run that it is cut in, side by side with the others of its repeat, in their
    order.
    """

    path: str
    name: str
    owner: str
    definition: str
    stock: Stock
    box: Box
    thick: Axis
    run: Axis | None
    grain: Axis | str | None
    show: Face | None
    proud: frozenset[Face]
    features: tuple[Feature, ...]
    why: tuple[Trace, Trace, Trace]
    held: tuple[frozenset[str], frozenset[str], frozenset[str]]
    span: Span
    head: Span
    where: tuple[Trace, ...] = ()
    sequence: str | None = None
    bands: tuple[Banding, ...] = ()
    load: Fraction | None = None  # lb/ft2 that is to stand on it, as the spec says

    @property
    def banded(self) -> Box:
        """Its box with the banding that comes on top of it."""
        box = self.box
        for band in self.bands:
            box = box.stretched(band.face, band.thick) if band.added else box
        return box


@dataclass(frozen=True)
class LooseBoard:
    """A part given by size and count alone: length × width × thick, grain along "length", "any" or None."""

    path: str
    name: str
    owner: str
    definition: str
    stock: Stock
    length: Fraction
    width: Fraction
    count: int
    grain: str | None
    why: tuple[Trace, Trace]
    held: tuple[frozenset[str], frozenset[str]]
    span: Span


@dataclass(frozen=True)
class Instance:
    """One placed assembly. `box` is its placing box in the job; `motion` takes its own coordinates to the job's.

    The job itself is the Instance with path "". `box` is None only for a job that has neither size nor room."""

    path: str
    definition: str
    title: str
    parent: str | None
    box: Box | None
    motion: Motion
    span: Span
    where: tuple[Trace, ...] = ()  # as a Board's, on the axes of the assembly that holds it

    @property
    def name(self) -> str:
        """The path's last step(s) in the assembly that holds it."""
        return self.path.removeprefix(f"{self.parent}.") if self.parent else self.path


@dataclass(frozen=True)
class Opening:
    path: str
    owner: str
    box: Box
    span: Span


@dataclass(frozen=True)
class Method:
    """A joint's method with its numbers worked out (inches) and its faces turned to the job's."""

    kind: str
    face: Face | None
    through: frozenset[str]  # paths of the boards driven through; empty: not said
    studs: bool
    every: Fraction | None
    depth: Fraction | None
    gap: Fraction | None
    stopped: tuple[tuple[Face, Fraction], ...]
    span: Span


@dataclass(frozen=True)
class Side:
    """One thing named by a joint: the boards it stands for. `text` as written; a wall of the room has `wall` and no
    boards."""

    text: str
    boards: tuple[str, ...]
    wall: Face | None
    single: bool  # a part named outright: it must touch; else any of the boards may
    span: Span


@dataclass(frozen=True)
class Joint:
    """`id` is stable within a run: owner path and number, "left_base#1"."""

    id: str
    owner: str
    entering: tuple[Side, ...]
    receiving: tuple[Side, ...]
    methods: tuple[Method, ...]
    only: str | None
    span: Span


@dataclass(frozen=True)
class Rest:
    upper: tuple[str, ...]
    lower: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class Fitting:
    """`count` pieces of hardware on the board `board`'s face; `points` where they sit (on that face), or () when only
    counted."""

    id: str
    owner: str
    hardware: Hardware
    count: int
    board: str
    face: Face
    points: tuple[Vec, ...]
    span: Span


@dataclass(frozen=True)
class Drawer:
    """One of a bank, 1 at the top. Heights count from the opening's floor. `box` is wide, high and long over all,
    `bottom` the bottom panel's wide and deep without its tongues; None of both for a dummy, no `front` for a tray.
    `slide` is the lower edge of its slides; `boards` the paths of what it is made of."""

    path: str
    number: int
    front: tuple[Fraction, Fraction] | None  # wide, high
    front_low: Fraction | None
    box: tuple[Fraction, Fraction, Fraction] | None
    box_low: Fraction | None
    bottom: tuple[Fraction, Fraction] | None
    slide: Fraction | None
    boards: tuple[str, ...]


@dataclass(frozen=True)
class Spacer:
    """A block cut from scrap, `size` in one direction that counts. kind "slides": stands on the opening's floor, the
    slides of drawer `number` stand on it; "fronts": lies between two fronts, or between front and case."""

    kind: str
    size: Fraction
    number: int | None
    count: int


@dataclass(frozen=True)
class DrawerBank:
    """The drawers of an opening, from the top. `opening` is wide, high and deep; `sides` the boards that the slides are
    screwed to, left and right, `gaps` how far they stand back from the opening, `packers` the boards that fill it up.
    `left_over` is by how much fronts and gaps fall short of the opening (0 when right)."""

    path: str
    owner: str
    opening: tuple[Fraction, Fraction, Fraction]
    style: str  # inset, overlay, integral, or "" for trays
    hardware: Hardware | None
    reveal: Fraction
    clearance: Fraction
    drawers: tuple[Drawer, ...]
    sides: tuple[str, ...]
    gaps: tuple[Fraction, ...]
    packers: tuple[str, ...]
    spacers: tuple[Spacer, ...]
    load: Fraction | None
    span: Span


@dataclass(frozen=True)
class HungDoor:
    """Doors of an opening. `cups` are the heights of the hinges above the door's lower edge."""

    path: str
    owner: str
    boards: tuple[str, ...]
    hardware: Hardware | None
    overlay: bool
    cups: tuple[Fraction, ...]
    sides: tuple[str, ...]  # for each board, the case side that it hangs on
    span: Span


def plates_of(door: str) -> str:
    """The id of the fitting that drills a door's hinge plates into its side."""
    return f"{door}!plates"


@dataclass(frozen=True)
class ShelfBay:
    """Shelves of an opening. `pins` are the heights of the pin holes above the opening's floor; () for fixed ones."""

    path: str
    owner: str
    boards: tuple[str, ...]
    pins: tuple[Fraction, ...]
    sides: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class ItemFit:
    """A thing kept in an opening: its size and what is left clear, wide, high and deep."""

    title: str
    opening: str
    size: tuple[Fraction, Fraction, Fraction]
    spare: tuple[Fraction, Fraction, Fraction]
    span: Span


@dataclass(frozen=True)
class Scene:
    """The whole job for one set of values of its measures. `taken` maps each measure to the value used."""

    taken: Mapping[str, Fraction]
    boards: Mapping[str, Board]
    loose: tuple[LooseBoard, ...]
    instances: Mapping[str, Instance]
    openings: Mapping[str, Opening]
    joints: tuple[Joint, ...]
    rests: tuple[Rest, ...]
    fittings: tuple[Fitting, ...]
    room: Box | None
    banks: tuple[DrawerBank, ...] = ()
    doors: tuple[HungDoor, ...] = ()
    shelves: tuple[ShelfBay, ...] = ()
    items: tuple[ItemFit, ...] = ()

    @cached_property
    def unit_of(self) -> Mapping[str, str]:
        """For each board the outermost assembly that it belongs to, or the board itself."""
        return {path: self._outermost(board.owner) or path for path, board in self.boards.items()}

    def _outermost(self, instance: str) -> str:
        while outer := self.instances[instance].parent:
            instance = outer
        return instance


@dataclass(frozen=True)
class Placed:
    """`scenes` has one Scene when nothing is unmeasured. Else: first every measure at its low end, then each in turn
    at its high end with the others low, then (with two measures or more) all at their high ends. All scenes hold the
    same paths. The last scene is the one drawn. A measure already taken has the same value in all of them."""

    project: Project
    scenes: tuple[Scene, ...]
    open_measures: tuple[str, ...]

    @property
    def drawn(self) -> Scene:
        return self.scenes[-1]
