"""Boards to pieces: gathered, marked, compared."""

from __future__ import annotations

from setout.diagnostics import Checked
from setout.geometry import Motion
from setout.join.model import Joined, JoinedBoard
from setout.piece.alike import near_misses, similar
from setout.piece.gather import Group, gather
from setout.piece.letters import mark_order
from setout.piece.marks import give_marks
from setout.piece.model import EdgeBand, Piece, Pieces, Register
from setout.piece.outline import outline
from setout.piece.runs import runs_of
from setout.piece.shape import laying, lays, shape
from setout.units import Style


def piece(joined: Joined, register: Register) -> Checked[Pieces]:
    """Gather equal boards into pieces, each with its mark: the register's where it knows the shape, else a new one."""
    project = joined.placed.project
    style = Style(project.metric, project.mark)
    groups = gather(joined)
    taken = {m: value for m, value in joined.drawn.scene.taken.items() if m not in joined.placed.open_measures}
    marks = give_marks(groups, register, taken)
    others = similar(groups, marks.marks, style)
    pieces = [_piece(group, mark, others.get(mark, ())) for group, mark in zip(groups, marks.marks)]
    mark_of = {path: p.mark for p in pieces for path in p.boards}
    found = Pieces(
        joined,
        tuple(sorted(pieces, key=lambda p: mark_order(p.mark))),
        {path: mark_of[path] for path in (*joined.drawn.boards, *(b.path for b in joined.drawn.scene.loose))},
        marks.letters,
        marks.fresh,
        runs_of(joined, mark_of),
    )
    return Checked(found, near_misses(groups, marks.marks, style))


def flat(board: JoinedBoard) -> Motion:
    """The motion that lays a board (job coordinates) as its piece lies: length, width, thickness on axes 0, 1, 2, low
    corner at 0. All boards of a piece then look the same; never a reflection."""
    made = shape(outline(board))
    return laying(made.axes, made.signs, board.box.lo, board.box.hi)


def ways_flat(board: JoinedBoard) -> tuple[Motion, ...]:
    """All motions as `flat` is one: several when a turn of the board leaves it the same."""
    return tuple(laying(*lay, board.box.lo, board.box.hi) for lay in lays(outline(board)))


def _piece(group: Group, mark: str, others: tuple[str, ...]) -> Piece:
    made = group.is_
    return Piece(
        mark=mark,
        stock=group.stock,
        length=made.length,
        width=made.width,
        thick=made.thick,
        grain=made.grain,
        count=group.count,
        boards=group.boards,
        exemplar=group.exemplar,
        loose=group.loose,
        shape=made.shape,
        measures=made.measures,
        similar=others,
        why_length=group.why_length,
        why_width=group.why_width,
        bands=() if group.exemplar is None else _bands(group.exemplar),
    )


def _bands(board: JoinedBoard) -> tuple[EdgeBand, ...]:
    if not board.board.bands:
        return ()
    lie = flat(board)
    faces = ((lie.face(band.face), band) for band in board.board.bands)
    made = (EdgeBand("width" if f.axis == 0 else "length", f.sign, b.edging, b.added) for f, b in faces)
    return tuple(sorted(made, key=lambda band: (band.along, band.sign, band.edging.name)))
