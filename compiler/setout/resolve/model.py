"""The project with every name bound and every constant worked out. What hangs on a place waits for `place`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Box, Face
from setout.practice import Practice
from setout.read.model import OrderRule, OwnStep
from setout.source import Source, Span
from setout.values import Value

# --- bound expressions: what a path means is decided, not yet what it is worth -----------------------

ThingPath = tuple[str, ...]
"""Names from the scope where it is written inwards: ("left_base", "left_side"), ("shelf", "2"). ("room",) is the
room.

() is the enclosing assembly itself. A path that names a repeat without a member number means all its members, and
is allowed only where several things may stand (joints, between/over neighbours never).
"""


@dataclass(frozen=True)
class Lit:
    """`dim` 0 for a bare number (then `flex` is inches per one of its file's units), 1 for a length in inches."""

    amount: Fraction
    dim: int
    flex: Fraction | None
    text: str
    span: Span


@dataclass(frozen=True)
class LetRef:
    name: str
    span: Span


@dataclass(frozen=True)
class ParamRef:
    name: str
    span: Span


@dataclass(frozen=True)
class MeasureRef:
    name: str
    span: Span


@dataclass(frozen=True)
class FaceRef:
    """A position on the face's axis, in the coordinates of the assembly where it is written."""

    thing: ThingPath
    face: Face
    span: Span


@dataclass(frozen=True)
class SizeRef:
    """How long a thing is along an axis: `left_side.high`, `bay.wide`."""

    thing: ThingPath
    axis: Axis
    span: Span


@dataclass(frozen=True)
class StockRef:
    """`ply.thick`, `ply.wide`, `ply.long`; `stock` may name a parameter that holds a stock."""

    stock: str
    field: str
    span: Span


@dataclass(frozen=True)
class Op:
    """op: + - * / = != < <= > >= and or not neg min max floor ceil round."""

    op: str
    args: tuple[BoundExpr, ...]
    span: Span


BoundExpr = Lit | LetRef | ParamRef | MeasureRef | FaceRef | SizeRef | StockRef | Op

# --- definitions ---------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Stock:
    """A material to be bought. Sizes in inches, exact.

    Sheets: `long` × `short` × `thick`, `grain` "long", "short" or None. Sticks: `short` is the width, `lengths`
    what is on sale. `price` is for one sheet, or for one stick of length `price_each` (None: no price said).
    `on_hand` counts the whole ones there are, `at_most` those that can be bought (not listed: any number), as (a
    stick's length or None for sheets, how many).
    """

    name: str
    title: str
    kind: str  # "sheet" or "stick"
    long: Fraction | None
    short: Fraction
    thick: Fraction
    grain: str | None
    lengths: tuple[Fraction, ...]
    prices: tuple[tuple[Fraction | None, Fraction], ...]  # (length or None, price)
    span: Span
    on_hand: tuple[tuple[Fraction | None, int], ...] = ()
    at_most: tuple[tuple[Fraction | None, int], ...] = ()
    density: Fraction | None = None  # lb/ft3; None: its weight isn't known
    stiffness: Fraction | None = None  # psi, the modulus of elasticity; None: its sag isn't known
    species: str | None = None  # solid wood: a row of strength's table
    panel: str | None = None  # a kind of sheet: a row of strength's table
    creep: Fraction = Fraction(2)  # sag after months of load, in first sags


@dataclass(frozen=True)
class RackBoard:
    """`count` offcuts alike of the stock named `stock`. Sheets: `length` >= `width`, and `grain` "length", "width" or
    None says which of the two it runs along; sticks: no width, grain "length"."""

    stock: str
    length: Fraction
    width: Fraction | None
    grain: str | None
    count: int
    span: Span


@dataclass(frozen=True)
class Saw:
    """What a saw can do, in inches; None: it doesn't. `rips`: the farthest its fence or guide is set from the edge.
    `crosscuts`: the widest board it cuts across. `takes`: the largest board it can take, long side first; None: any.
    `breaks_down`: it is brought to the board, and cuts whole sheets. `sticks`: the widest stick. `span` is empty on a
    saw of the usual shop, which stands in where the spec names none."""

    name: str
    title: str
    kerf: Fraction
    rips: Fraction | None
    crosscuts: Fraction | None
    takes: tuple[Fraction, Fraction] | None
    breaks_down: bool
    sticks: Fraction | None
    span: Span


@dataclass(frozen=True)
class Slide:
    """What drawer slides need, in inches, each of a pair. kind: side, under or runner.

    `clearance` on each side of the box, at most `plus` more. `height` is the slide's own; `clear` what the box
    leaves free below itself (None: the usual). `setback` from the front of the case, or from the back of an inset
    front. `load` in pounds or kilograms as the spec's unit has it, a pair. `screws`: how far from its front end.
    """

    kind: str
    length: Fraction
    clearance: Fraction
    plus: Fraction
    height: Fraction
    clear: Fraction | None
    setback: Fraction
    load: Fraction | None
    screws: tuple[Fraction, ...]


@dataclass(frozen=True)
class Hinge:
    """A cup hinge: the cup's diameter, its depth, its rim from the door's edge; the plate's screws from the case's
    front edge and how far apart its two screws are (None: no plate holes)."""

    cup: Fraction
    depth: Fraction
    edge: Fraction
    plate: tuple[Fraction, Fraction] | None


@dataclass(frozen=True)
class Edging:
    """Edge banding by the roll: inches."""

    width: Fraction
    thick: Fraction
    length: Fraction


@dataclass(frozen=True)
class Serves:
    """What joints use it up. kind: pockets brads (length), screws (gauge, length), dowels (diameter, length), glue
    (square inches that one covers)."""

    kind: str
    gauge: int | None
    length: Fraction | None
    diameter: Fraction | None
    covers: Fraction | None


@dataclass(frozen=True)
class Hardware:
    """Bought things fitted by the piece. `hole` is (diameter, depth or None for through) or None."""

    name: str
    title: str
    price: Fraction | None
    pack: int
    hole: tuple[Fraction, Fraction | None] | None
    raises: Fraction  # how far it lifts what stands on it; feet
    span: Span
    slide: Slide | None = None
    hinge: Hinge | None = None
    boxed: bool = False  # `box N`: the price is that of all the `pack` together
    on_hand: int = 0
    edging: Edging | None = None
    serves: Serves | None = None
    load: Fraction | None = None  # lb that it carries, a pair where it is sold by the pair


@dataclass(frozen=True)
class MeasureDef:
    """A value to be taken on site. `taken` is set when the command line or a later record gives it."""

    name: str
    title: str
    low: Fraction
    high: Fraction
    taken: Fraction | None
    span: Span


@dataclass(frozen=True)
class RoomBox:
    """Part of the room: kind "keep clear" or "obstacle", in the room's own coordinates."""

    kind: str
    title: str
    box: Box
    span: Span


@dataclass(frozen=True)
class Room:
    """The space it goes into; `studs` is (spacing, first from the left wall) or None. `door` (wide, high) is the
    smallest doorway on the way in, `ceiling` the lowest."""

    title: str
    sizes: Mapping[Axis, Fraction]
    studs: tuple[Fraction, Fraction] | None
    span: Span
    door: tuple[Fraction, Fraction] | None = None
    ceiling: Fraction | None = None
    boxes: tuple[RoomBox, ...] = ()


@dataclass(frozen=True)
class SpanDef:
    """A SpanClause with its words bound; kinds as in read.model.SpanClause. For between and over, `a` and `b` are
    ThingPaths; for size_on, `b` is a ThingPath, a BoundExpr or None (the assembly's middle)."""

    axis: Axis
    kind: str
    a: BoundExpr | ThingPath | None
    b: BoundExpr | ThingPath | None
    extra: BoundExpr | None
    span: Span


@dataclass(frozen=True)
class PositionDef:
    """The thing's own `face` stands at `target`; or, with `face` None, its middle on `axis` at the middle of `target`
    (a ThingPath, a position, or None for the assembly). `axis` None with `centred`: the thing's only free axis."""

    face: Face | None
    axis: Axis | None
    target: BoundExpr | ThingPath | None
    span: Span


@dataclass(frozen=True)
class RepeatDef:
    """`axis` None: the panel's thickness axis."""

    count: BoundExpr
    axis: Axis | None
    between: tuple[ThingPath, ThingPath] | None
    pitch: BoundExpr | None
    start: BoundExpr | None
    span: Span


@dataclass(frozen=True)
class FeatureDef:
    """Faces are the part's own, named in the assembly's directions. Distances inside `spans` and `at` hold
    FaceRef(("self",), face)."""

    kind: str
    spans: tuple[SpanDef, ...]
    at: tuple[tuple[Axis, BoundExpr], ...]
    size: BoundExpr | None
    depth: BoundExpr | None
    face: Face | None
    long: Face | None
    span: Span


@dataclass(frozen=True)
class BandDef:
    """One edge banded with the hardware `edging`; `added`: on top of the board's size, else within it."""

    face: Face
    edging: str
    added: bool
    span: Span


@dataclass(frozen=True)
class PartDef:
    """`mirror` is (name of the part mirrored, axis) and then the fields given override the reflected ones."""

    name: str
    stock: str | None  # a stock's or a stock parameter's name
    mirror: tuple[str, Axis] | None
    run: Axis | None  # sticks: along which axis
    # panels: their thickness axis; sticks: the axis their broad face looks along; None: loose or mirrored
    thick: Axis | None
    spans: tuple[SpanDef, ...]
    positions: tuple[PositionDef, ...]
    repeat: RepeatDef | None
    grain: Axis | str | None  # "any": free to turn; None: along the longer side
    show: Face | None
    proud: frozenset[Face]
    rip: BoundExpr | None
    loose: tuple[BoundExpr, ...]  # length and width of a loose part
    count: BoundExpr | None
    features: tuple[FeatureDef, ...]
    when: tuple[BoundExpr, ...]
    span: Span
    head: Span
    sequence: bool = False  # its members are cut side by side, in order, so that the grain runs on
    bands: tuple[BandDef, ...] = ()
    load: BoundExpr | None = None  # lb/ft2; kg/m2 where its file is metric
    load_unit: Fraction = Fraction(1)  # lb/ft2 in one of the load's units


@dataclass(frozen=True)
class PlaceDef:
    name: str
    assembly: str
    args: Mapping[str, BoundExpr | str]  # a str is a stock's name, or that of a parameter of the scope that holds one
    turned: BoundExpr | None  # degrees, clockwise from above
    mirrored: bool
    spans: tuple[SpanDef, ...]
    positions: tuple[PositionDef, ...]
    repeat: RepeatDef | None
    when: tuple[BoundExpr, ...]
    span: Span
    head: Span


@dataclass(frozen=True)
class OpeningDef:
    name: str
    spans: tuple[SpanDef, ...]
    when: tuple[BoundExpr, ...]
    span: Span


@dataclass(frozen=True)
class MethodDef:
    """kind: pockets screws brads glue dado rabbet groove dowels. `stopped` pairs (face, distance)."""

    kind: str
    face: Face | None
    through: ThingPath | None
    studs: bool
    every: BoundExpr | None
    depth: BoundExpr | None
    gap: BoundExpr | None
    stopped: tuple[tuple[Face, BoundExpr], ...]
    span: Span


@dataclass(frozen=True)
class JointDef:
    """Paths with the span each was written at. A path to an assembly, a repeat or ("room", FACE) is allowed."""

    entering: tuple[tuple[ThingPath, Span], ...]
    receiving: tuple[tuple[ThingPath, Span], ...]
    methods: tuple[MethodDef, ...]
    only: str | None  # butt lap face
    when: tuple[BoundExpr, ...]
    span: Span


@dataclass(frozen=True)
class RestsDef:
    upper: ThingPath
    lower: ThingPath
    when: tuple[BoundExpr, ...]
    span: Span


@dataclass(frozen=True)
class FitDef:
    """Hardware on the face `face` of `thing`. layout: "corners", "row", "centred" or None (counted, not set out)."""

    hardware: str
    count: BoundExpr
    thing: ThingPath
    face: Face
    layout: str | None
    along: Axis | None
    inset: BoundExpr | None
    when: tuple[BoundExpr, ...]
    span: Span


@dataclass(frozen=True)
class BankDef:
    """`drawers in OPENING`, beside the placings that it was made into: `places` by number, `hardware` the slides to
    choose from. `heights` as given, None for `rest`; () where they follow from the opening. `mode`, `style` as in
    DrawersStatement."""

    opening: ThingPath
    places: tuple[str, ...]
    dummies: frozenset[int]
    hardware: tuple[str, ...]
    mode: str
    style: str
    heights: tuple[BoundExpr | None, ...]
    reveal: BoundExpr | None
    overlay: BoundExpr | None
    load: BoundExpr | None
    packers: str | None
    when: tuple[BoundExpr, ...]
    span: Span
    head: Span


@dataclass(frozen=True)
class DoorDef:
    """`door in OPENING`, beside the parts it was made into. `side` is the face it hangs on; a pair hangs on both."""

    opening: ThingPath
    parts: tuple[str, ...]
    hinge: str | None
    side: Face
    overlay: bool
    when: tuple[BoundExpr, ...]
    span: Span
    head: Span


@dataclass(frozen=True)
class ShelvesDef:
    """`shelves in OPENING`, beside the part `part` they were made into. `pitch` None: fixed."""

    opening: ThingPath
    part: str
    pin: str | None
    pitch: BoundExpr | None
    start: BoundExpr | None
    inset: BoundExpr | None
    when: tuple[BoundExpr, ...]
    span: Span
    head: Span


@dataclass(frozen=True)
class ItemDef:
    """A thing that an opening is for: wide, deep, high, and what is to stay clear all round."""

    title: str
    sizes: tuple[BoundExpr, BoundExpr, BoundExpr]
    opening: ThingPath
    clear: BoundExpr | None
    when: tuple[BoundExpr, ...]
    span: Span


@dataclass(frozen=True)
class Body:
    """What stands in an assembly, in the order written."""

    size: Mapping[Axis, BoundExpr]
    size_span: Span | None
    defaults: Mapping[Axis, SpanDef]
    parts: tuple[PartDef, ...]
    places: tuple[PlaceDef, ...]
    openings: tuple[OpeningDef, ...]
    joints: tuple[JointDef, ...]
    rests: tuple[RestsDef, ...]
    fits: tuple[FitDef, ...]
    banks: tuple[BankDef, ...] = ()
    doors: tuple[DoorDef, ...] = ()
    shelves: tuple[ShelvesDef, ...] = ()
    items: tuple[ItemDef, ...] = ()


@dataclass(frozen=True)
class AssemblyDef:
    """`parameters`: defaults by name, None where one must be given; a str default is a stock's name."""

    name: str
    title: str
    parameters: Mapping[str, BoundExpr | str | None]
    body: Body
    span: Span
    head: Span


@dataclass(frozen=True)
class OrderLine:
    """A rule or own step, and the assembly in whose `order` block it stands ("" for the job's)."""

    rule: OrderRule | OwnStep
    scope: str


@dataclass(frozen=True)
class Project:
    """`mark` is the finest division printed, in inches; `metric` says which system it is written in. `lets` stand in
    an order in which each comes after those it hangs on. Not `whole`: what had a mistake, and all that hangs on
    it, has been left out."""

    title: str
    metric: bool
    mark: Fraction
    paper: str  # "letter" or "a4"
    stocks: Mapping[str, Stock]
    hardware: Mapping[str, Hardware]
    lets: Mapping[str, BoundExpr]
    let_spans: Mapping[str, Span]
    measures: Mapping[str, MeasureDef]
    practice: Practice
    room: Room | None
    assemblies: Mapping[str, AssemblyDef]
    job: Body
    order: tuple[OrderLine, ...]
    sources: Mapping[str, Source]
    settings: Mapping[str, Value]  # values given with --set, by name
    whole: bool = True
    saws: tuple[Saw, ...] = ()  # in the order written; the usual shop's where the spec names none
    rack: tuple[RackBoard, ...] = ()  # offcuts on hand, in the order written
