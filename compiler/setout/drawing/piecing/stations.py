"""Which running dimensions stand along which side of a piece, exactly."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from setout.drawing.piecing.frame import ACROSS
from setout.drawing.piecing.laying import SIDES, Lie
from setout.geometry import Box, Face
from setout.join.model import Bore, Cavity, JoinedBoard
from setout.place.model import Notch


@dataclass(frozen=True)
class Stop:
    """One station: `at` inches from the page's left (or bottom), its line starting `start` inches from the other.
    `letters` are those of the work there, as the key has them; `works` names it, in every scene alike."""

    at: Fraction
    start: Fraction
    letters: tuple[str, ...] = ()
    works: tuple[Hashable, ...] = ()


@dataclass(frozen=True)
class Row:
    """The stations along one side, and what they lead to: "cuts", "holes", "pockets" …"""

    side: str
    stops: tuple[Stop, ...]
    what: tuple[str, ...]

    @property
    def letters(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(letter for stop in self.stops for letter in stop.letters))


def rows(
    board: JoinedBoard,
    lie: Lie,
    cuts: Sequence[tuple[str, Cavity]],
    bores: Sequence[tuple[str, Bore]],
    edges_too: bool,
) -> tuple[Row, ...]:
    """Rows for the work on the face seen, each with its letter; with `edges_too` also for holes in the board's
    edges."""
    found: dict[str, list[tuple[Stop, str]]] = {side: [] for side in SIDES}
    named = _named((cut.kind, cut.face, cut.joint, cut.for_board) for _, cut in cuts)
    for (letter, cut), work in zip(cuts, named):
        _box_stops(lie, cut.box, found, "cuts", work, (letter,))
    if edges_too:
        notches = [f for f in board.features if isinstance(f, Notch)]
        for notch, work in zip(notches, _named(f.kind for f in notches)):
            _box_stops(lie, notch.box, found, "notches" if notch.kind == "notch" else "cut-outs", work)
    named = _named((bore.kind, bore.face, bore.toward, bore.source) for _, bore in bores)
    for (letter, bore), work in zip(bores, named):
        _bore_stops(lie, letter, bore, found, work)
    return tuple(_row(lie, side, stops) for side, stops in found.items() if stops)


def _named(alike: Iterable[Hashable]) -> list[Hashable]:
    """A name for each piece of work, which it has in every scene: which of how many it is of those that are alike.
    Where a measure decides how many there are, none is told to be another scene's."""
    kinds = list(alike)
    counts = Counter(kinds)
    so_far: Counter[Hashable] = Counter()
    names: list[Hashable] = []
    for kind in kinds:
        names.append((kind, so_far[kind], counts[kind]))
        so_far[kind] += 1
    return names


def _row(lie: Lie, side: str, stops: Iterable[tuple[Stop, str]]) -> Row:
    """Stations at one place made one: its line starts where the work nearest to the side is."""
    inward = side in ("left", "bottom")
    nearest: dict[Fraction, Stop] = {}
    for stop, _ in stops:
        known = nearest.get(stop.at, stop)
        start = (min if inward else max)(known.start, stop.start)
        letters = tuple(dict.fromkeys(known.letters + stop.letters))
        nearest[stop.at] = Stop(stop.at, start, letters, tuple(dict.fromkeys(known.works + stop.works)))
    what = tuple(dict.fromkeys(w for _, w in stops))
    return Row(side, tuple(nearest[at] for at in sorted(nearest)), what)


def _box_stops(
    lie: Lie,
    box: Box,
    found: dict[str, list[tuple[Stop, str]]],
    what: str,
    work: Hashable,
    letters: tuple[str, ...] = (),
) -> None:
    """A housing's side nearest to where the tape hooks, and its ends where it stops short; of a notch both edges."""
    left, low, right, high = lie.rect(box)
    housing = what == "cuts"
    for ends, whole, side, start in (
        ((left, right), lie.wide, "bottom", low),
        ((low, high), lie.high, "left", left),
    ):
        inner = [(e, n) for n, e in enumerate(ends) if 0 < e < whole]
        if housing and len(inner) == 2 and _narrow(lie, box, side):
            inner = [inner[0] if lie.zero(side == "bottom") in ("left", "bottom") else inner[1]]
        found[side] += [(Stop(e, start, letters, ((work, n),)), what) for e, n in inner]


def _narrow(lie: Lie, box: Box, side: str) -> bool:
    """Whether the side's direction is the one across the housing, whose width the key gives."""
    left, low, right, high = lie.rect(box)
    return (right - left <= high - low) == (side == "bottom")


def _bore_stops(
    lie: Lie, letter: str, bore: Bore, found: dict[str, list[tuple[Stop, str]]], work: Hashable
) -> None:
    x, y = lie.x(bore.at), lie.y(bore.at)
    side = lie.side(bore.toward) if bore.toward else lie.side(bore.face)
    if side is None:
        found["top"].append((Stop(x, y, (letter,), (work,)), "holes"))
        found["right"].append((Stop(y, x, (letter,), (work,)), "holes"))
        return
    what = "pockets" if bore.toward else "holes in the edge"
    along = (
        Stop(x, lie.high if side == "top" else Fraction(0), (letter,), (work,))
        if side in ACROSS
        else Stop(y, lie.wide if side == "right" else Fraction(0), (letter,), (work,))
    )
    found[side].append((along, what))


def value(lie: Lie, side: str, at: Fraction) -> Fraction:
    """What the tape reads at a station of that side."""
    across = side in ACROSS
    if lie.zero(across) in ("left", "bottom"):
        return at
    return (lie.wide if across else lie.high) - at


def readings(found: Iterable[Row], lie: Lie) -> Mapping[tuple[str, Hashable], Fraction]:
    """What the tape reads for each piece of work, by side."""
    stops = [(row.side, stop) for row in found for stop in row.stops]
    return {(side, work): value(lie, side, stop.at) for side, stop in stops for work in stop.works}


def settled(
    found: Iterable[Row], lie: Lie, others: Sequence[Mapping[tuple[str, Hashable], Fraction]]
) -> Mapping[str, frozenset[Fraction]]:
    """What the tape reads, by side, where all the work there is found in every other scene too, and stays put: that
    other work comes to where this was doesn't make a number final."""

    def stays(side: str, stop: Stop) -> bool:
        read = value(lie, side, stop.at)
        return all(other.get((side, work)) == read for other in others for work in stop.works)

    return {row.side: frozenset(value(lie, row.side, s.at) for s in row.stops if stays(row.side, s)) for row in found}


def zero_face(lie: Lie, side: str) -> Face:
    return lie.edge(lie.zero(side in ACROSS))
