"""What stands round a board: running dimensions, overall sizes, and each edge's name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any, NamedTuple

from setout.drawing.ink import dimension
from setout.drawing.ink.dimension import ROW, Station
from setout.drawing.ink.lettering import shortened, width
from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import Canvas
from setout.drawing.piecing import wording
from setout.drawing.piecing.frame import ACROSS, Frame
from setout.drawing.piecing.laying import SIDES, Lie
from setout.drawing.piecing.outline import corner_gone
from setout.drawing.piecing.stations import Row, Stop, value, zero_face
from setout.join.model import JoinedBoard
from setout.units import Style, say

BARE = 9.0  # from an edge without numbers to the middle of its name
OVERALL = 25.0  # from such an edge to its overall dimension
_LEAST_STATIONS = 12  # numbers that any side can hold, pushed outwards
_PLENTY = 16  # numbers, from which on those of an even row are not all given


@dataclass(frozen=True)
class Surround:
    """A view's rows, by side, and the board they belong to. `settled`: what the tape reads whatever a measure is."""

    board: JoinedBoard
    rows: Mapping[str, Row]
    style: Style
    settled: Mapping[str, frozenset[Fraction]]
    _known: dict[str, Any] = field(default_factory=dict, compare=False, repr=False)

    def reach(self, frame: Frame, side: str) -> float:
        """How much room a side needs outside the board."""
        if side in self.rows:
            stations = self._stations(frame, side)
            if stations:
                return dimension.reach(stations, across=side in ACROSS) + self._clear(frame, side) + BARE + 6
        overall = side in ("left", "bottom") and not self.rows.keys() & _parallel(side)
        return self._clear(frame, side) + (OVERALL + 8 if overall else BARE + 6)

    def draw(self, canvas: Canvas, frame: Frame, taken: Taken) -> None:
        for side in SIDES:
            out = 1 if side in ("right", "bottom") else -1
            clear = self._clear(frame, side)
            edge, reach = frame.line_of(side), clear
            stations = self._stations(frame, side) if side in self.rows else ()
            if stations:
                reach = dimension.running(canvas, stations, edge, out, across=side in ACROSS, clear=clear)
                _keep_off(taken, stations, edge, side)
            self._title(canvas, frame, side, edge + out * (reach + BARE))
        self._overall(canvas, frame)

    def _clear(self, frame: Frame, side: str) -> float:
        """How far out the top and bottom have to start, since numbers at the left and right reach past the corners."""
        if side not in ACROSS:
            return 0.0
        columns = [self._stations(frame, s) for s in ("left", "right") if s in self.rows]
        reaches = [dimension.overhang(c, frame.area.top, frame.area.bottom) for c in columns if c]
        return max((r[side == "bottom"] for r in reaches), default=0.0)

    def lists(self, frame: Frame) -> list[str]:
        """Rows with more numbers than their side can hold, in words."""
        out = []
        for side, row in self.rows.items():
            if not self._stations(frame, side):
                title = self._titles(frame.lie, side)[0]
                out.append(f"{title}: {'; '.join(self._listed(frame.lie, side, row))}")
        return out

    def _listed(self, lie: Lie, side: str, row: Row) -> Iterator[str]:
        """All its numbers, letter by letter where it has several."""
        lettered = len(row.letters) > 1
        for letter in (*row.letters, *([""] if any(not s.letters for s in row.stops) else [])):
            mine = [s.at for s in row.stops if letter in s.letters or not (letter or s.letters)]
            numbers = ", ".join(self._number(lie, side, at) for at in mine)
            yield f"{letter} at {numbers}" if lettered and letter else numbers

    def _stations(self, frame: Frame, side: str) -> Sequence[Station]:
        """Worked out once for a frame, and asked for by everything round the board."""
        if self._known.get("") is not frame:
            self._known.clear()
            self._known[""] = frame
        if side not in self._known:
            self._known[side] = self._worked_out(frame, side)
        return self._known[side]

    def _worked_out(self, frame: Frame, side: str) -> Sequence[Station]:
        """The row's numbers with both ends of the board. Evenly spaced ones are left out where there are many;
        where there still are, it is none at all."""
        lie, row = frame.lie, self.rows[side]
        across = side in ACROSS
        full = lie.wide if across else lie.high
        ends = {end: Stop(end, self._end_start(lie, side, end)) for end in (Fraction(0), full)}
        stops = ends | {s.at: s for s in row.stops}
        room = max(_LEAST_STATIONS, int((frame.area.wide if across else frame.area.high) / ROW))
        runs = _even_runs(row) if len(stops) > min(room, _PLENTY) else []
        lettered = len(row.letters) > 1
        kept = [self._station(frame, side, stops[at], lettered) for at in stops if not _is_within(stops[at], runs)]
        kept += [self._every(frame, side, run, lettered) for run in runs]
        return sorted(kept) if len(kept) <= room else ()

    def _station(self, frame: Frame, side: str, stop: Stop, lettered: bool) -> Station:
        """Its number, with the letters of what is there where the row has several."""
        across = side in ACROSS
        x, y = frame.at(stop.at, stop.start) if across else frame.at(stop.start, stop.at)
        end = stop.at in (0, frame.lie.wide if across else frame.lie.high)
        along, line_start = (x, y) if across else (y, x)
        letters = " ".join(stop.letters) if lettered else ""
        return Station(along, line_start, f"{self._number(frame.lie, side, stop.at, end)} {letters}".rstrip(), end)

    def _every(self, frame: Frame, side: str, run: _Even, lettered: bool) -> Station:
        """`every 6`, without a line, between the ends of an even run. A rounded step is not given: it adds up."""
        step = wording.pitch(run.step, self.style)
        words = f"every {step}" if step else "evenly spaced"
        many = f"{run.count} {run.letter} " if lettered else "" if step else f"{run.count} "
        middle = self._station(frame, side, Stop((run.first + run.last) / 2, Fraction(0)), False)
        return replace(middle, words=many + words, bold=False, lined=False)

    def _end_start(self, lie: Lie, side: str, end: Fraction) -> Fraction:
        """Where the line for an end of the board starts: at the corner, or where a notch has left some board."""
        across = side in ACROSS
        edge = {"top": lie.high, "right": lie.wide}.get(side, Fraction(0))
        gone = corner_gone(self.board, lie, *((end, edge) if across else (edge, end)))
        if gone is None:
            return edge
        by = gone[1] if across else gone[0]
        return edge - by if edge else edge + by

    def _number(self, lie: Lie, side: str, at: Fraction, end: bool = False) -> str:
        """What the tape reads; what hangs on a measure stands in brackets, as does the whole length of a held board."""
        read = value(lie, side, at)
        words = say(read, self.style)
        axis = (lie.right if side in ACROSS else lie.up).axis
        waits = read and self.board.board.held[axis] if end else read not in self.settled[side]
        return f"({words})" if waits else words

    def _titles(self, lie: Lie, side: str) -> tuple[str, ...]:
        edge, board = lie.edge(side), self.board.board
        if side not in self.rows:
            return (wording.edge_name(board, edge),)
        return wording.row_title(board, edge, zero_face(lie, side), self.rows[side].what)

    def _title(self, canvas: Canvas, frame: Frame, side: str, at: float) -> None:
        """The edge's name, and if there is room what its numbers are and where the tape hooks."""
        words = self._titles(frame.lie, side)
        room = frame.area.wide + 50 if side in ACROSS else frame.area.high + 20
        fitting = next((w for w in words if width(w) <= room), words[-1])
        x, y = frame.area.middle
        if side in ACROSS:
            canvas.text((x, at), fitting)
        else:
            canvas.text((at, y), shortened(fitting, max(room, 50.0)), turned=True)

    def _overall(self, canvas: Canvas, frame: Frame) -> None:
        """A dimension line for each way that has no running dimensions to tell it."""
        area, lie = frame.area, frame.lie
        if not self.rows.keys() & set(ACROSS):
            words = self._number(lie, "bottom", self._far(lie, "bottom"), True)
            y = area.bottom + OVERALL + self._clear(frame, "bottom")
            dimension.level(canvas, area.left, area.right, y, words, bold=True)
        if not self.rows.keys() & {"left", "right"}:
            words = self._number(lie, "left", self._far(lie, "left"), True)
            dimension.upright(canvas, area.top, area.bottom, area.left - OVERALL, words, bold=True)

    def _far(self, lie: Lie, side: str) -> Fraction:
        full = lie.wide if side in ACROSS else lie.high
        return full if value(lie, side, full) else Fraction(0)


def even_stretches(ats: Sequence[Fraction], least: int = 5) -> list[tuple[Fraction, Fraction]]:
    """First and last of each stretch of at least `least` places with one and the same distance between them."""
    out = []
    start = 0
    for i in range(1, len(ats)):
        if i + 1 == len(ats) or ats[i + 1] - ats[i] != ats[start + 1] - ats[start]:
            if i - start + 1 >= least:
                out.append((ats[start], ats[i]))
            start = i
    return out


class _Even(NamedTuple):
    """Work of one letter, evenly spaced."""

    letter: str
    first: Fraction
    last: Fraction
    step: Fraction
    count: int


def _even_runs(row: Row) -> list[_Even]:
    found = []
    for letter in row.letters:
        ats = [stop.at for stop in row.stops if letter in stop.letters]
        for first, last in even_stretches(ats):
            start = ats.index(first)
            found.append(_Even(letter, first, last, ats[start + 1] - first, ats.index(last) - start + 1))
    return found


def _is_within(stop: Stop, runs: Sequence[_Even]) -> bool:
    """Whether all the work at the stop is told by runs that begin before it and end after it."""
    told = {run.letter for run in runs if run.first < stop.at < run.last}
    return bool(stop.letters) and told.issuperset(stop.letters)


def _parallel(side: str) -> set[str]:
    return set(ACROSS) if side in ACROSS else {"left", "right"}


def _keep_off(taken: Taken, stations: Sequence[Station], edge: float, side: str) -> None:
    """Keeps words off the lines that run into the board."""
    for s in stations:
        if s.lined and abs(s.start - edge) > 1:
            a, b = (s.along, s.start), (s.along, edge)
            taken.line(*((a, b) if side in ACROSS else (a[::-1], b[::-1])))
