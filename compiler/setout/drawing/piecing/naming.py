"""Letters, notes and the grain arrow, put where there is room on the board."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import islice

from setout.drawing.ink.arrows import arrow
from setout.drawing.ink.lettering import SMALL, width
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import FINE, HAIR, OVER, Area, Canvas, Point
from setout.drawing.piecing import wording
from setout.drawing.piecing.frame import ACROSS, INWARD, Frame
from setout.drawing.piecing.landing import Landed
from setout.drawing.piecing.machining import Kind
from setout.join.model import Bore, Cavity
from setout.place.model import Board, Mitre

LETTER = 10.0
BAND = 2.6  # points from a banded edge to the line that marks it
BANDED = "band"
MOST_LETTERS = 80  # on one view; with more there is no telling them apart
MOST_TRIED = 8  # holes of a line that a letter may stand at
CLOSE = 4.0  # words no farther than this from what they name need no line to it


def draw_letters(
    canvas: Canvas, frame: Frame, cuts: Sequence[tuple[Kind, Cavity]], bores: Sequence[tuple[Kind, Bore]], taken: Taken
) -> None:
    """One at every housing, and one for each line of holes that are alike."""
    for kind, cut in cuts:
        _letter(canvas, frame, kind.letter, [frame.of(cut.box)], taken)
    rows = Counter((k.letter, "y", frame.lie.y(b.at)) for k, b in bores)
    columns = Counter((k.letter, "x", frame.lie.x(b.at)) for k, b in bores)
    lines: dict[tuple[object, ...], list[Area]] = {}
    for kind, bore in bores:
        side = frame.lie.side(bore.toward or bore.face)
        row, column = (kind.letter, "y", frame.lie.y(bore.at)), (kind.letter, "x", frame.lie.x(bore.at))
        line = (kind.letter, "side", side) if side else row if rows[row] >= columns[column] else column
        lines.setdefault(line, []).append(_spot(frame, bore, side))
    for (letter, *_), spots in list(lines.items())[:MOST_LETTERS]:
        _letter(canvas, frame, str(letter), spots[:: max(1, len(spots) // MOST_TRIED)], taken)


def _spot(frame: Frame, bore: Bore, side: str | None) -> Area:
    """The middle of what a letter points at."""
    if side is None:
        x, y = frame.place(bore.at)
        return Area(x, y, x, y).grown(3)
    (x, y), (dx, dy) = frame.on_edge(bore.at, side), INWARD[side]
    return Area(x + dx * 8, y + dy * 8, x + dx * 8, y + dy * 8).grown(4)


def _letter(canvas: Canvas, frame: Frame, letter: str, targets: Sequence[Area], taken: Taken) -> None:
    """Beside the first of the targets with room close by, else beside the one with room the least far off."""
    best: tuple[float, Area, Area] | None = None
    for target in targets:
        area = taken.nearest(target.middle, width(letter, LETTER, True) + 3, LETTER, frame.area.grown(-1))
        gap = _gap(area, target) if area else 0.0
        if area and (best is None or gap < best[0]):
            best = gap, area, target
        if best and best[0] <= CLOSE:
            break
    if best is None:
        return
    _, area, target = best
    canvas.text(area.middle, letter, LETTER, bold=True)
    taken.add(area)
    _line_to(canvas, area, target)


def _gap(area: Area, target: Area) -> float:
    b = target.nearest(area.middle)
    a = area.nearest(b)
    return abs(a[0] - b[0]) + abs(a[1] - b[1])


def _line_to(canvas: Canvas, area: Area, target: Area) -> None:
    """A thin line from words to what they name, unless that is plain to see."""
    b = target.nearest(area.middle)
    a = area.nearest(b)
    if _gap(area, target) > CLOSE:
        canvas.line(a, b, HAIR, OVER)


def draw_landed(canvas: Canvas, frame: Frame, landed: Iterable[Landed], taken: Taken) -> None:
    """Each partner's name within its outline, else beside it; of very many the first."""
    for one in islice(landed, MOST_LETTERS):
        area = frame.of(one.area)
        words = taken.nearest(area.middle, width(one.words) + 4, SMALL + 1, frame.area.grown(-1))
        if words is None:
            continue
        canvas.text(words.middle, one.words)
        taken.add(words)
        _line_to(canvas, words, area)


def draw_mitre_names(canvas: Canvas, frame: Frame, mitres: Iterable[tuple[Point, Mitre]], taken: Taken) -> None:
    for at, mitre in mitres:
        words = wording.mitre(mitre)
        area = taken.nearest(at, width(words) + 6, SMALL + 3, frame.area.grown(-1))
        if area is None:
            bounds = canvas.bounds
            area = Area(bounds.right + 4, at[1] - 6, bounds.right + 10 + width(words), at[1] + 6)
        canvas.text(area.middle, words)
        taken.add(area)
        _line_to(canvas, area, Area(*at, *at))


def draw_bands(canvas: Canvas, frame: Frame, board: Board, taken: Taken) -> None:
    """A second line within each banded edge, and the word at it where there is room."""
    area = frame.area
    for side in dict.fromkeys(frame.lie.side(band.face) for band in board.bands):
        if side is None:
            continue
        dx, dy = INWARD[side]
        at, edge = frame.line_of(side), area.grown(-BAND)
        if side in ACROSS:
            canvas.line((edge.left, at + dy * BAND), (edge.right, at + dy * BAND), FINE)
        else:
            canvas.line((at + dx * BAND, edge.top), (at + dx * BAND, edge.bottom), FINE)
        x, y = area.middle
        want = (x, at + dy * 10) if side in ACROSS else (at + dx * (width(BANDED) / 2 + 6), y)
        words = taken.nearest(want, width(BANDED) + 3, SMALL + 2, area.grown(-BAND - 1))
        if words is not None:
            canvas.text(words.middle, BANDED)
            taken.add(words)


def draw_grain(canvas: Canvas, frame: Frame, board: Board, taken: Taken) -> None:
    """A double-headed arrow along the grain where there is room, the word beside it."""
    grain = board.grain
    if not isinstance(grain, int) or grain == frame.lie.face.axis:
        return
    level = grain == frame.lie.right.axis
    word = width("grain")
    for long in (70.0, 44.0, 28.0):
        size = (long + word + 10, SMALL + 4) if level else (word + 4, long + 14)
        area = taken.nearest(frame.area.middle, *size, frame.area.grown(-2))
        if area is None:
            continue
        x, y = area.middle
        if level:
            arrow(canvas, (area.left + long / 2 + 1, y), (1.0, 0.0), long)
            canvas.text((area.right - 3, y), "grain", anchor="end")
        else:
            arrow(canvas, (x, area.bottom - long / 2), (0.0, 1.0), long)
            canvas.text((x, area.top + 6), "grain")
        taken.add(area)
        return
