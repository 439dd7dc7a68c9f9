"""One piece laid flat with all that is to be cut and drilled in it."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from setout.drawing.ink.lettering import SMALL, wrapped
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import Canvas, Point
from setout.drawing.model import Drawing
from setout.drawing.piecing import wording
from setout.drawing.piecing.alongside import Surround
from setout.drawing.piecing.frame import Frame
from setout.drawing.piecing.key import draw_key
from setout.drawing.piecing.landing import Landed, draw_outlines
from setout.drawing.piecing.laying import SIDES, Lie, faces_to_draw, standing
from setout.drawing.piecing.machining import Kind, kinds
from setout.drawing.piecing.naming import draw_bands, draw_grain, draw_landed, draw_letters, draw_mitre_names
from setout.drawing.piecing.outline import draw_outline
from setout.drawing.piecing.stations import readings, rows, settled
from setout.drawing.piecing.working import draw_bores, draw_cavities
from setout.geometry import Face
from setout.join.model import Fastening, JoinedBoard
from setout.piece.model import Piece
from setout.place.model import Mitre
from setout.units import Style, say

LEAST = 44.0  # points; a narrower board is drawn wider than to scale
MOST_SCALE = 22.0  # points an inch
AROUND = 110.0  # points that numbers and names take on both sides together, about
LINE = 12.0
BOTH = 1.75  # times the height of one face's drawing that two may take
PAGE = 620.0  # points that any page has
APART = 16.0  # between two views
TRIALS = 6


@dataclass(frozen=True)
class Job:
    """What is drawn and how: the same for every trial at another scale. `beside`: two views stand side by side."""

    piece: Piece
    board: JoinedBoard
    lies: tuple[Lie, ...]
    beside: bool
    kinds: tuple[Kind, ...]
    style: Style
    width: float
    height: float
    landed: tuple[Landed, ...]
    others: tuple[JoinedBoard, ...]

    @property
    def grid(self) -> tuple[int, int]:
        """How many views stand side by side, and how many below each other."""
        return (len(self.lies), 1) if self.beside else (1, len(self.lies))


def piece(
    piece: Piece,
    style: Style,
    width: float,
    height: float,
    fastenings: Iterable[Fastening] = (),
    landed: Iterable[Landed] = (),
    others: Iterable[JoinedBoard] = (),
    titles: Mapping[str, str] | None = None,
    abreast: bool = False,
) -> Drawing | None:
    """The piece as its exemplar stands, flat on the page; None for a loose piece, which has no place.

    At most `width` wide, and no higher than `height` unless its numbers and key alone need more; a piece that is worked
    on both faces may be higher by three quarters. `fastenings` of the same scene give the drill stop's settings.
    `landed` is outlined where it lies on a face that is shown. `others` is the exemplar for other values of the
    measures that it hangs on: where a hole or cut isn't in the same place in all of them, its number stands in
    brackets. `titles` says what is fitted
    by a bore's source. Two faces stand side by side if `abreast`, else as they come out larger.
    """
    if piece.exemplar is None:
        return None
    holes = tuple(fastenings), titles or {}
    job = _job(piece, piece.exemplar, style, width, height, *holes, tuple(landed), tuple(others), abreast)
    seen = job.lies[0].face.word
    sizes = f"{say(piece.length.amount, style)} x {say(piece.width.amount, style)}"
    return _fitted(job).finished(f"Piece {piece.mark}, {sizes}, seen from {seen}")


def _job(
    piece: Piece,
    board: JoinedBoard,
    style: Style,
    width: float,
    height: float,
    fastenings: Iterable[Fastening],
    titles: Mapping[str, str],
    landed: tuple[Landed, ...],
    others: tuple[JoinedBoard, ...],
    abreast: bool,
) -> Job:
    faces = faces_to_draw(board)
    if len(faces) > 1:
        height = max(height, min(height * BOTH, PAGE))
    settings = {f.contact: f.setting for f in fastenings if f.setting is not None}
    upright = tuple(standing(board, f) for f in faces)
    ways = [(lies, beside) for lies in (upright, tuple(lie.turned() for lie in upright)) for beside in (False, True)]
    rated = [(_rough_scale(*way, width, height) if way[1] or not abreast else 0.0, *way) for way in ways]
    # as it stands, and one view below the other, unless another way is clearly larger
    best = max(range(len(rated)), key=lambda n: rated[n][0] * (1.25, 1.15, 1.0, 0.9)[n])
    _, lies, beside = rated[best]
    found = kinds(board, faces[0], settings, titles)
    return Job(piece, board, lies, beside, found, style, width, height, landed, others)


def _rough_scale(lies: tuple[Lie, ...], beside: bool, width: float, height: float) -> float:
    across, down = (len(lies), 1) if beside else (1, len(lies))
    lie = lies[0]
    wide, high = width / across - AROUND, (height - 50) / down - AROUND
    return min(max(wide, 30.0) / float(lie.wide), max(high, 30.0) / float(lie.high), MOST_SCALE)


def _fitted(job: Job) -> Canvas:
    """Drawn at the scale at which all of it fits, found by trying: what stands round the board hardly depends on it,
    and what is put where there is room on the board not at all, so that trials go without."""
    lie, (columns, lines) = job.lies[0], job.grid
    long, high = float(lie.wide) * columns, float(lie.high) * lines
    scale = min(MOST_SCALE, job.width / long)
    views = [_View(job, lie) for lie in job.lies]
    across, up = _scales(scale, lie)
    for _ in range(TRIALS):
        across, up = _scales(scale, lie)
        bounds = _drawn(job, views, across, up, trial=True).bounds
        if bounds.wide <= job.width - 3 and bounds.high <= job.height - 3:
            break
        spare = (job.width - 4 - bounds.wide + long * across) / long
        spare_up = (job.height - 4 - bounds.high + high * up) / high
        scale = max(min(scale * 0.98, spare, max(spare_up, LEAST / float(lie.high))), 1e-6)
    return _drawn(job, views, across, up)


def _scales(scale: float, lie: Lie) -> tuple[float, float]:
    """Points an inch along and up the page; a narrow board is drawn broad enough to write on."""
    long, high = float(lie.wide), float(lie.high)
    return max(scale, LEAST / long), max(scale, LEAST / high)


def _drawn(job: Job, views: Sequence[_View], across: float, up: float, trial: bool = False) -> Canvas:
    """The views, then what didn't fit on them in words, then the key."""
    canvas, left, top = Canvas(), 0.0, 0.0
    for view in views:
        view.draw(canvas, left, top, across, up, trial)
        if job.beside:
            left = canvas.bounds.right + APART
        else:
            top = canvas.bounds.bottom + APART
    left, top = canvas.bounds.left, canvas.bounds.bottom + APART
    if job.kinds:
        draw_key(canvas, job.kinds, job.board.board, job.style, (left, top), job.width - 4)
    return canvas


def _readings(
    board: JoinedBoard, lie: Lie, shown: set[Face], first: bool
) -> Mapping[tuple[str, Hashable], Fraction]:
    """What the tape reads on the same board in another scene."""
    there = replace(lie, box=board.box)
    cuts = [("", cut) for cut in board.cuts if cut.face in shown]
    bores = [("", bore) for bore in board.bores if bore.face in shown]
    return readings(rows(board, there, cuts, bores, first), there)


class _View:
    """One face of the board. On the first one the work in its edges is shown as well."""

    def __init__(self, job: Job, lie: Lie) -> None:
        self.job, self.lie = job, lie
        first = lie is job.lies[0]
        shown = {lie.face} if not first else {lie.face} | {lie.edge(s) for s in SIDES}
        self.cuts = [(k, c) for k in job.kinds for c in k.cuts if c.face in shown]
        self.bores = [(k, b) for k in job.kinds for b in k.bores if b.face in shown]
        self.landed = [one for one in job.landed if one.face == lie.face]
        self.mitred = any(isinstance(f, Mitre) for f in job.board.features)  # their names may stand outside
        self.mitres: list[tuple[Point, Mitre]] = []
        cuts, bores = [(k.letter, c) for k, c in self.cuts], [(k.letter, b) for k, b in self.bores]
        found = rows(job.board, lie, cuts, bores, first)
        again = [_readings(other, lie, shown, first) for other in job.others]
        self.surround = Surround(job.board, {r.side: r for r in found}, job.style, settled(found, lie, again))

    def draw(self, canvas: Canvas, left: float, top: float, across: float, up: float, trial: bool) -> None:
        """With its outermost left and top at `left` and `top`. A trial is for its bounds alone."""
        taken, room = Taken(), self.job.width / self.job.grid[0] - APART / 2
        caption = wrapped(self._caption(across, up), room, 3, bold=True)
        frame = Frame(self.lie, across, up, 0.0, 0.0)
        above = LINE * len(caption) + 3 + self.surround.reach(frame, "top")
        start, base = left + self.surround.reach(frame, "left"), top + above + float(self.lie.high) * up
        frame = Frame(self.lie, across, up, start, base)
        if trial and not self.mitred:
            canvas.area(frame.area)
        else:
            self._board(canvas, frame, taken)
        self.surround.draw(canvas, frame, taken)
        if not trial or self.mitred:
            self._name(canvas, frame, taken)
        for n, line in enumerate(caption):
            canvas.text((left, top + SMALL / 2 + LINE * n), line, anchor="start", bold=True)
        self._lists(canvas, frame, left, room)

    def _board(self, canvas: Canvas, frame: Frame, taken: Taken) -> None:
        draw_cavities(canvas, frame, [c for _, c in self.cuts], taken)
        self.mitres = draw_outline(canvas, frame, self.job.board, taken)
        draw_outlines(canvas, frame, self.landed, taken)
        draw_bores(canvas, frame, [b for _, b in self.bores], taken)

    def _name(self, canvas: Canvas, frame: Frame, taken: Taken) -> None:
        """All that is written on the board itself, what matters most first."""
        board = self.job.board.board
        draw_letters(canvas, frame, self.cuts, self.bores, taken)
        draw_mitre_names(canvas, frame, self.mitres, taken)
        draw_landed(canvas, frame, self.landed, taken)
        draw_bands(canvas, frame, board, taken)
        draw_grain(canvas, frame, board, taken)

    def _lists(self, canvas: Canvas, frame: Frame, left: float, room: float) -> None:
        """Numbers that found no room along their side."""
        for words in self.surround.lists(frame):
            top = canvas.bounds.bottom + LINE
            for n, line in enumerate(wrapped(words, room, 12)):
                canvas.text((left, top + LINE * n), line, anchor="start")

    def _caption(self, across: float, up: float) -> str:
        words = wording.seen_from(self.job.board.board, self.lie, self.job.piece.measures)
        if across != up:
            words += " " + wording.out_of_scale(up > across)
        return words
