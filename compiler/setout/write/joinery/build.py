"""What is drilled and milled in each piece, and a drawing of each piece that is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from setout.drawing import Drawing
from setout.geometry import Face
from setout.join.model import Bore, JoinedBoard
from setout.piece.model import Piece
from setout.place.model import Mitre, Notch
from setout.units import Style
from setout.write.facts import Facts
from setout.write.facts.faces import own_face
from setout.write.facts.paths import Where
from setout.write.facts.sizes import Length, bored, bought, deep, length, size
from setout.write.facts.ticks import ticks
from setout.write.joinery.layout import Lines, lay_out, stand_beside

HOLES = ("dowel", "clearance", "pilot", "hole", "hardware")
KINDS = ("mitre", "notch", "cutout", "rabbet", "dado", "groove", "pocket", *HOLES)
"""In the order in which a shop goes about them: shapes, housings, holes."""


@dataclass(frozen=True)
class Row:
    """One face of one piece at one set-up: `each` cuts on a board, `total` on all of them.

    `toward` pairs an edge with how many pockets come out of it. `ticks` as in pieces.Row; `waits` when there may
    be more or fewer of them, by a measure."""

    mark: str
    boards: int
    ticks: int
    face: str
    waits: bool
    each: int
    toward: tuple[tuple[str, int], ...]
    total: int


@dataclass(frozen=True)
class SetUp:
    """All that is made with a machine set once. `kind` as in join.model.Bore and Cavity, or "notch", "cutout", "mitre".

    Pockets have `stop` and `screw` (None: not known); holes and housings `across` and `depth` (None: right through)."""

    kind: str
    across: Length | None
    depth: Length | None
    stop: Length | None
    screw: Length | None
    rows: tuple[Row, ...]
    total: int


@dataclass(frozen=True)
class Machined:
    """`beside`: the lines to pencil stand beside the drawing."""

    mark: str
    count: int
    length: Length
    width: Length
    thick: Length
    where: tuple[Where, ...]
    drawing: Drawing | None
    lay_out: tuple[Lines, ...]
    beside: bool


@dataclass(frozen=True)
class Joinery:
    """`lined` are pieces that are only marked out: nothing is cut or drilled in them. `banded`: some are yet
    to be banded, and their numbers count from the sawn edge."""

    set_ups: tuple[SetUp, ...]
    machined: tuple[Machined, ...]
    lined: tuple[Machined, ...]
    banded: bool


def build(facts: Facts, drawings: Mapping[str, Drawing]) -> Joinery | None:
    """`drawings` by mark. None when nothing is drilled, milled or laid out."""
    pieces = machined(facts)
    worked = {piece.mark for piece, _ in pieces}
    others = (_machined(facts, p, None) for p in facts.plan.pieces.pieces if p.mark not in worked)
    lined = tuple(piece for piece in others if piece.lay_out)
    if not (pieces or lined):
        return None
    return Joinery(
        set_ups=_set_ups(facts, pieces),
        machined=tuple(_machined(facts, piece, drawings.get(piece.mark)) for piece, _ in pieces),
        lined=lined,
        banded=any(piece.bands for piece in facts.plan.pieces.pieces),
    )


def machined(facts: Facts) -> tuple[tuple[Piece, JoinedBoard], ...]:
    """Pieces with something to cut or drill, each with the board that shows it."""
    boards = ((piece, piece.exemplar) for piece in facts.plan.pieces.pieces)
    return tuple((p, b) for p, b in boards if b is not None and (b.bores or b.cuts or b.features))


_Key = tuple[int, str, Fraction | None, Fraction | None, Fraction | None, Fraction | None]
"""What a machine is set to: rank of the kind, kind, across, depth, stop, screw."""


def _set_ups(facts: Facts, pieces: tuple[tuple[Piece, JoinedBoard], ...]) -> tuple[SetUp, ...]:
    """Rows gathered under the set-up they need, so that each is made once."""
    under: dict[_Key, list[Row]] = {}
    for piece, board in pieces:
        elsewhere = [_cuts(facts, scene.boards[board.board.path]) for scene in facts.other_scenes]
        for (key, face), edges in _cuts(facts, board).items():
            others = [cuts.get((key, face), []) for cuts in elsewhere]
            under.setdefault(key, []).append(_row(facts, piece, board, face, edges, others))
    return tuple(_set_up(facts, key, under[key]) for key in sorted(under, key=_in_order))


def _in_order(key: _Key) -> tuple:
    rank, _, *sizes = key
    return rank, *((value is None, value or 0) for value in sizes)


def _set_up(facts: Facts, key: _Key, rows: list[Row]) -> SetUp:
    _, kind, across, depth, stop, screw = key
    return SetUp(
        kind=kind,
        across=_printed(facts, across, bored if kind in HOLES else length),
        depth=_printed(facts, depth, deep if kind in HOLES else length),
        stop=_printed(facts, stop, bought),
        screw=_printed(facts, screw, bought),
        rows=tuple(rows),
        total=sum(row.total for row in rows),
    )


def _printed(facts: Facts, value: Fraction | None, by: Callable[[Fraction, Style], Length]) -> Length | None:
    return None if value is None else by(value, facts.style)


def _cuts(facts: Facts, board: JoinedBoard) -> dict[tuple[_Key, Face | None], list[Face | None]]:
    """Every cut in a board by set-up and face; for each the edge it comes out of, if it does."""
    found: dict[tuple[_Key, Face | None], list[Face | None]] = {}
    for bore in board.bores:
        found.setdefault((_bore_key(facts, board, bore), bore.face), []).append(bore.toward)
    for cut in board.cuts:
        found.setdefault((_key(cut.kind, cut.width, cut.depth), cut.face), []).append(None)
    for feature in board.features:
        if isinstance(feature, Notch):
            found.setdefault((_key(feature.kind), None), []).append(None)
        elif isinstance(feature, Mitre):
            found.setdefault((_key("mitre"), feature.end), []).append(None)
    return found


def _bore_key(facts: Facts, board: JoinedBoard, bore: Bore) -> _Key:
    if bore.kind != "pocket":
        return _key(bore.kind, bore.diameter, bore.depth)
    by = facts.pocketed.get((bore.source, board.board.path))
    return _key("pocket") if by is None else _key("pocket", stop=by.setting, screw=by.length)


def _key(
    kind: str,
    across: Fraction | None = None,
    depth: Fraction | None = None,
    stop: Fraction | None = None,
    screw: Fraction | None = None,
) -> _Key:
    return KINDS.index(kind), kind, across, depth, stop, screw


def _row(
    facts: Facts,
    piece: Piece,
    board: JoinedBoard,
    face: Face | None,
    edges: list[Face | None],
    others: list[list[Face | None]],
) -> Row:
    """`others`: the edges in the other scenes."""
    toward = Counter(_word(facts, board, edge) for edge in edges if edge is not None)
    return Row(
        mark=piece.mark,
        boards=piece.count,
        ticks=ticks(piece.count),
        face="" if face is None else _word(facts, board, face),
        waits=any(Counter(other) != Counter(edges) for other in others),
        each=len(edges),
        toward=tuple(toward.items()),
        total=len(edges) * piece.count,
    )


def _word(facts: Facts, board: JoinedBoard, face: Face) -> str:
    return own_face(facts.scene, board.board, face).word


def _machined(facts: Facts, piece: Piece, drawing: Drawing | None) -> Machined:
    sides = (size(piece.length, facts.style), size(piece.width, facts.style), length(piece.thick, facts.style))
    beside = drawing is not None and stand_beside(facts, drawing)
    lines = lay_out(facts, piece, drawing is not None)
    return Machined(piece.mark, piece.count, *sides, facts.where(piece), drawing, lines, beside)
