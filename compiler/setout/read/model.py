"""The tree of one file, as written: nothing is bound, nothing is worked out.

Every node carries the span it was read from. Comments are kept beside the tree for the formatter.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.source import Source, Span

# --- expressions -----------------------------------------------------------------------------------


@dataclass(frozen=True)
class Number:
    """A literal. `unit` is in mm cm m ft, or "" for a bare number. 3'4-1/2" reads as unit "in", 40-1/2."""

    value: Fraction
    unit: str
    text: str
    span: Span


@dataclass(frozen=True)
class Path:
    """A name or a dotted path: one token. Numbers in it are repeat members (`shelf.2`)."""

    parts: tuple[str, ...]
    span: Span

    @property
    def text(self) -> str:
        return ".".join(self.parts)


@dataclass(frozen=True)
class Unary:
    op: str  # "-" or "not"
    arg: Expr
    span: Span


@dataclass(frozen=True)
class Binary:
    op: str  # + - * / = != < <= > >= and or
    left: Expr
    right: Expr
    span: Span


@dataclass(frozen=True)
class Call:
    """min, max, floor, ceil, round."""

    name: str
    args: tuple[Expr, ...]
    span: Span


Expr = Number | Path | Unary | Binary | Call


@dataclass(frozen=True)
class Name:
    """An identifier where it is given or where a bare word is wanted (a face, an axis, an edge word)."""

    text: str
    span: Span


@dataclass(frozen=True)
class Text:
    """A string literal, its quotes and escapes taken off."""

    value: str
    span: Span


# --- clauses about one axis or position ------------------------------------------------------------


@dataclass(frozen=True)
class SpanClause:
    """`AXIS form`: how a thing stretches along one axis. `axis` is None only in a position-less repeat.

    kind      a, b                                     spelling
    between   paths of two things; extra = clear       wide between A and B [clear E]
    over      paths of two things; extra = plus        wide over A and B [plus E]
    from_to   two positions                            wide from X to Y
    size      a = length                               wide E
    size_from a = length, b = low end                  wide E from X
    size_to   a = length, b = high end                 wide E to X
    size_on   a = length, b = middle (or None)         wide E centred [on X]
    from      b = low end (place and repeat only)      wide from X
    to        b = high end (place only)                wide to X
    """

    axis: Name
    kind: str
    a: Expr | None
    b: Expr | None
    extra: Expr | None
    span: Span


@dataclass(frozen=True)
class Position:
    """One position of a thing's own face.

    kind      spelling             meaning
    at        at bottom + toe      its own face of the first face word in `target` stands there
    face_at   top at X             its own face `face` stands at X
    on        on shelf             its bottom at shelf.top
    under     under rail           its top at rail.bottom
    against   against side.right   its own opposite face at that face
    centred   centred [on X] [AXIS]   its middle at the middle of X, or of the assembly
    A list `at left, bottom, back` is read as three Positions.
    """

    kind: str
    face: Name | None
    target: Expr | None
    span: Span


@dataclass(frozen=True)
class Repeat:
    """`repeat N [AXIS] between A and B` or `repeat N [AXIS] every P from X`."""

    count: Expr
    axis: Name | None
    between: tuple[Path, Path] | None
    pitch: Expr | None
    start: Expr | None
    span: Span


# --- features of a part: face words in them are the part's own ---------------------------------------


@dataclass(frozen=True)
class Feature:
    """kind: notch, cutout, hole, mitre.

    notch deep 3 from front, high 3-1/2 from bottom      spans: two, each from/to one of the part's faces
    cutout wide 4 from left + 6, high 2 from bottom + 10  spans: two
    hole 1/2 at wide left + 3, high bottom + 2 [deep 3/8 into left]   `hole D at AXIS E, AXIS E [depth E into FACE]`
    mitre left 45 long front                              end face, degrees, the face that keeps its length
    """

    kind: str
    spans: tuple[SpanClause, ...]
    at: tuple[tuple[Name, Expr], ...]
    size: Expr | None  # hole diameter; mitre angle in degrees
    depth: Expr | None
    face: Name | None  # hole: face it is drilled into; mitre: the end
    long: Name | None  # mitre: the long side
    span: Span


# --- statements --------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Setting:
    """`units inch`, `mark to 1/32`, `paper a4` inside `project`."""

    key: Name
    value: Expr | Name
    span: Span


@dataclass(frozen=True)
class ProjectStatement:
    title: Text
    settings: tuple[Setting, ...]
    span: Span


@dataclass(frozen=True)
class IncludeStatement:
    path: Text
    span: Span


@dataclass(frozen=True)
class StockClause:
    """key: sheet (L, W, T), stick (W, T, then the lengths), grain_along (L), grain_none, price (amount[, each]),
    on_hand (count[, of length]), at_most (count[, of length]); title-less values are in `values`. density (1),
    stiffness (1), species and panel (none; `words`)."""

    key: str
    values: tuple[Expr, ...]
    span: Span
    words: Name | Text | None = None  # species and panel: what it is called


@dataclass(frozen=True)
class StockStatement:
    name: Name
    title: Text | None
    clauses: tuple[StockClause, ...]
    span: Span


@dataclass(frozen=True)
class HardwareStatement:
    """`hardware foot "levelling foot" { price 3.20; hole 5/16 depth 1; raises 1 }` keys: price (1), pack (1), hole
    (D[, depth]), raises (1). Slides: slide_side, slide_under or slide_runner (none), length (1), clearance (E[,
    plus]), height (E[, clear]), setback (1), slide_load (1), slide_screws (places from the front end). Hinges: cup
    (D, depth, from the edge), plate (from the front, apart). on_hand (1), pack_box (how many in a box), edging (W,
    T, length of a roll), serves_pockets and serves_brads (length), serves_screws (gauge, length), serves_dowels
    (diameter, length), serves_glue (area that one covers)."""

    name: Name
    title: Text | None
    clauses: tuple[StockClause, ...]
    span: Span


@dataclass(frozen=True)
class Offcut:
    """`2 of 60 x 11 grain along 60`: `size` is length and width, or a stick's length alone."""

    count: Expr | None
    size: tuple[Expr, ...]
    along: Expr | None
    span: Span


@dataclass(frozen=True)
class RackLine:
    """`ply: 41 x 22-1/2, 2 of 60 x 11`"""

    stock: Path
    offcuts: tuple[Offcut, ...]
    span: Span


@dataclass(frozen=True)
class RackStatement:
    """`rack { ply: 41 x 22-1/2; lath: 40, 2 of 61 }`: offcuts on hand."""

    lines: tuple[RackLine, ...]
    span: Span


@dataclass(frozen=True)
class SawStatement:
    """`saw table_saw "table saw" { kerf 1/8; rips up to 24; crosscuts up to 24; takes up to 100 x 30 }`
    keys: kerf (1), rips (1), crosscuts (1), takes (L, W), breaks (none), sticks (1)."""

    name: Name
    title: Text | None
    clauses: tuple[StockClause, ...]
    span: Span


@dataclass(frozen=True)
class LetStatement:
    name: Name
    value: Expr
    span: Span


@dataclass(frozen=True)
class MeasureStatement:
    """`measure bed "what it is" expect 2 to 5`"""

    name: Name
    title: Text
    low: Expr
    high: Expr
    span: Span


@dataclass(frozen=True)
class PracticeStatement:
    """`practice { pocket_spacing 6; screw_tip_margin 1/8 }`"""

    rows: tuple[tuple[Name, Expr], ...]
    span: Span


@dataclass(frozen=True)
class RoomBox:
    """`keep clear "door swing" { spans }` (kind "keep clear") or `obstacle "radiator" { spans }`."""

    kind: str
    title: Text
    spans: tuple[SpanClause, ...]
    span: Span


@dataclass(frozen=True)
class RoomStatement:
    """`room "Spare room" { size wide 120, high 96, deep 100; studs every 16 from left + 3; door wide 30, high 80; …
    }`"""

    title: Text | None
    size: tuple[tuple[Name, Expr], ...]
    studs: tuple[Expr, Expr | None] | None  # spacing, first stud's distance (an expression from `left`)
    span: Span
    door: tuple[tuple[Name, Expr], ...] = ()  # the smallest doorway on the way in: wide and high, in the order written
    ceiling: Expr | None = None  # the lowest on the way in
    boxes: tuple[RoomBox, ...] = ()


@dataclass(frozen=True)
class Parameter:
    name: Name
    default: Expr | None
    span: Span


@dataclass(frozen=True)
class SizeStatement:
    """`size wide w, high h, deep d`; in a loose part `size 30 x 11-1/4` is LooseSize."""

    sizes: tuple[tuple[Name, Expr], ...]
    span: Span


@dataclass(frozen=True)
class DefaultStatement:
    clause: SpanClause
    span: Span


@dataclass(frozen=True)
class BandClause:
    """`band front, left with edging [added]`"""

    faces: tuple[Name, ...]
    edging: Path
    added: bool
    span: Span


@dataclass(frozen=True)
class PartStatement:
    """A board. `orient`: one word for a panel (upright level facing), two for a stick (`up facing`).

    `of` is None in `part X mirrors Y`, where `mirrors` and perhaps `across` are set.
    """

    name: Name
    of: Path | None
    mirrors: Path | None
    across: Name | None
    orient: tuple[Name, ...]
    spans: tuple[SpanClause, ...]
    positions: tuple[Position, ...]
    repeat: Repeat | None
    grain: Name | None  # an axis word, `any`
    show: Name | None
    proud: tuple[Name, ...]
    rip: Expr | None
    loose_size: tuple[Expr, ...]  # length and width as given: `size 30 x 11-1/4`
    count: Expr | None
    features: tuple[Feature, ...]
    span: Span
    head: Span  # `part NAME of STOCK`, for carets
    sequence: Span | None = None  # `in sequence`
    bands: tuple[BandClause, ...] = ()
    load: Expr | None = None  # lb/ft2, in a metric file kg/m2


@dataclass(frozen=True)
class PlaceStatement:
    """`place base (w = 36) turned 90 mirrored as big_base { at left, bottom }`"""

    assembly: Path
    args: tuple[tuple[Name, Expr], ...]
    turned: Expr | None
    mirrored: bool
    name: Name | None
    spans: tuple[SpanClause, ...]
    positions: tuple[Position, ...]
    repeat: Repeat | None
    span: Span
    head: Span


@dataclass(frozen=True)
class Method:
    """One way of joining inside a joint's braces.

    kind: pockets screws brads glue dado rabbet groove dowels only
    face      pockets on FACE
    through   screws through PART
    into      screws into studs  ("studs")
    every     spacing override
    depth, gap   dado/rabbet/groove depth E, gap E;
    stopped   (FACE, E): dado stopped front 1/2
    word      only butt | lap | face
    """

    kind: str
    face: Name | None
    through: Path | None
    into: Name | None
    every: Expr | None
    depth: Expr | None
    gap: Expr | None
    stopped: tuple[tuple[Name, Expr], ...]
    word: Name | None
    span: Span


@dataclass(frozen=True)
class JointStatement:
    entering: tuple[Path, ...]
    receiving: tuple[Path, ...]
    methods: tuple[Method, ...]
    span: Span


@dataclass(frozen=True)
class RestsStatement:
    """`A rests on B`: they touch and are meant to be left unfastened."""

    upper: Path
    lower: Path
    span: Span


@dataclass(frozen=True)
class OpeningStatement:
    name: Name
    spans: tuple[SpanClause, ...]
    span: Span


@dataclass(frozen=True)
class DrawersStatement:
    """`drawers in bay { heights 4, 7, rest; slides slide20; box of half; bottom of thin in groove; fronts of ply
    inset reveal 1/16 }`

    mode given (`heights` top to bottom, None for `rest`), equal, shares (`heights 1 to 2 to 3`), or "" where
    nothing is said. style inset, overlay, integral or "" (not said); corners pockets rabbet dado screws or "" (not
    said).
    """

    opening: Path
    mode: str
    heights: tuple[Expr | None, ...]
    count: Expr | None
    slides: tuple[Path, ...]
    box: Path | None
    bottom: Path | None
    groove: bool
    fronts: Path | None
    style: str
    overlay: Expr | None
    reveal: Expr | None
    corners: str
    brace: bool
    dummies: tuple[Expr, ...]
    trays: bool
    packers: Path | None
    load: Expr | None
    span: Span
    head: Span


@dataclass(frozen=True)
class DoorStatement:
    """`door in bay of ply { overlay 1/2; reveal 1/8; hinges hinge on left; pair }`"""

    opening: Path
    of: Path
    overlay: Expr | None  # None: inset
    reveal: Expr | None
    hinges: Path | None
    side: Name | None  # the face it hangs on
    pair: bool
    span: Span
    head: Span


@dataclass(frozen=True)
class ShelvesStatement:
    """`shelves in bay of ply { count 3; pins pin every 32mm from bottom + 4 inset 2; clear 1/16 }`"""

    opening: Path
    of: Path
    count: Expr | None
    pin: Path | None
    pitch: Expr | None
    start: Expr | None
    inset: Expr | None
    clear: Expr | None
    span: Span
    head: Span


@dataclass(frozen=True)
class ItemStatement:
    """`item "sewing machine" 18 x 8 x 13 in bay clear 1/2`: wide x deep x high."""

    title: Text
    sizes: tuple[Expr, Expr, Expr]
    opening: Path
    clear: Expr | None
    span: Span


@dataclass(frozen=True)
class FitStatement:
    """`fit 4 foot { under bottom_panel; at corners; inset 2 }`.

    where: `on` PART.FACE, `under` PART or `on` PART (its top); layout: corners, row (along axis), centred, or None.
    """

    count: Expr
    hardware: Path
    where: Position
    layout: str | None
    along: Name | None
    inset: Expr | None
    span: Span


@dataclass(frozen=True)
class StepRef:
    """`fit slides`, `hang base`, `cut machine_deck`; a builder's own step is named by its text."""

    verb: Name | None
    target: Path | None
    text: Text | None
    span: Span


@dataclass(frozen=True)
class OrderRule:
    """`A before B` (or `B after A`, read as the same with before/after swapped)."""

    first: StepRef
    then: StepRef
    span: Span


@dataclass(frozen=True)
class OwnStep:
    """`step "Paint the insides" [after STEP, STEP] [before STEP, STEP]`"""

    text: Text
    after: tuple[StepRef, ...]
    before: tuple[StepRef, ...]
    span: Span


@dataclass(frozen=True)
class OrderStatement:
    rules: tuple[OrderRule | OwnStep, ...]
    span: Span


@dataclass(frozen=True)
class WhenStatement:
    condition: Expr
    body: tuple[Statement, ...]
    span: Span


@dataclass(frozen=True)
class AssemblyStatement:
    name: Name
    title: Text | None
    parameters: tuple[Parameter, ...]
    body: tuple[Statement, ...]
    span: Span
    head: Span
    derived: bool = False  # made of a clause of the spec: its names hide none


Statement = (
    ProjectStatement
    | IncludeStatement
    | StockStatement
    | HardwareStatement
    | RackStatement
    | SawStatement
    | LetStatement
    | MeasureStatement
    | PracticeStatement
    | RoomStatement
    | AssemblyStatement
    | SizeStatement
    | DefaultStatement
    | PartStatement
    | PlaceStatement
    | JointStatement
    | RestsStatement
    | OpeningStatement
    | DrawersStatement
    | DoorStatement
    | ShelvesStatement
    | ItemStatement
    | FitStatement
    | OrderStatement
    | WhenStatement
)


@dataclass(frozen=True)
class Comment:
    """A `#` comment, its text without the newline. `own_line` when nothing stands before it on its line."""

    text: str
    own_line: bool
    span: Span


@dataclass(frozen=True)
class Tree:
    source: Source
    statements: tuple[Statement, ...]
    comments: tuple[Comment, ...]
