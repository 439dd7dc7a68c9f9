"""Dimension lines, and running dimensions measured from one end as a hooked tape reads them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from setout.drawing.ink.lettering import SMALL, width
from setout.drawing.ink.svg import FINE, HAIR, Canvas, Point

TICK = 2.6
_KNEE = 5.0  # a running dimension's line goes straight out this far
ROW = 11.0  # least distance between two numbers side by side


def level(canvas: Canvas, left: float, right: float, y: float, words: str, *, bold: bool = False) -> None:
    """A dimension line from `left` to `right` at height `y`, its number in the line, or beside it where it is short."""
    _ticked(canvas, (left, y), (right, y))
    long = width(words, SMALL, bold)
    if long + 10 > right - left:
        canvas.text((right + 4, y), words, anchor="start", bold=bold)
        return
    area = canvas.text(((left + right) / 2, y), words, bold=bold)
    canvas.mask(area.grown(1.5))


def upright(canvas: Canvas, top: float, bottom: float, x: float, words: str, *, bold: bool = False) -> None:
    """A dimension line from `top` to `bottom` at `x`; the number reads upwards, or stands above a short line."""
    _ticked(canvas, (x, top), (x, bottom))
    if width(words, SMALL, bold) + 10 > bottom - top:
        canvas.text((x, top - 8), words, bold=bold)
        return
    area = canvas.text((x, (top + bottom) / 2), words, bold=bold, turned=True)
    canvas.mask(area.grown(1.5))


def _ticked(canvas: Canvas, a: Point, b: Point) -> None:
    canvas.line(a, b, HAIR)
    for x, y in (a, b):
        canvas.line((x - TICK, y + TICK), (x + TICK, y - TICK), FINE)


@dataclass(frozen=True, order=True)
class Station:
    """One running dimension: where it is along the edge, where its line starts, its number; a note has no line."""

    along: float
    start: float
    words: str
    bold: bool = False
    lined: bool = True


@dataclass(frozen=True)
class _Row:
    """Stations with the places found for their numbers; how far the jog goes out, and how far the numbers come."""

    stations: Sequence[Station]
    places: Sequence[float]
    turned: bool
    jog: float
    reach: float


def reach(stations: Sequence[Station], *, across: bool) -> float:
    """How far out from the edge the numbers will come."""
    return _row(stations, across).reach


def overhang(stations: Sequence[Station], low: float, high: float) -> tuple[float, float]:
    """How far the numbers along an upright edge from `low` to `high` were pushed out past its two ends."""
    places = _row(stations, False).places
    return max(low - places[0] - ROW / 2, 0.0), max(places[-1] + ROW / 2 - high, 0.0)


def running(
    canvas: Canvas, stations: Sequence[Station], edge: float, out: int, *, across: bool, clear: float = 0.0
) -> float:
    """Running dimensions outside an edge. `across`: the edge is level, its stations run along x; else along y.

    `edge` is the edge's own coordinate, `out` the direction away from the board (+1 or -1). Each station's line starts
    at its own `start`, jogs when its number had to move aside, and ends at its number. `clear` keeps the numbers that
    much farther out. Says how far out they come.
    """
    row = _row(stations, across)
    for station, place in zip(row.stations, row.places):
        _station(canvas, row, station, place, edge + out * clear, out, across)
    return row.reach + clear


def _row(stations: Sequence[Station], across: bool) -> _Row:
    stations = sorted(stations)
    turned = across and not _level_fits(stations)
    places = spread([s.along for s in stations], _needs(stations, across, turned))
    aside = max(abs(p - s.along) for p, s in zip(places, stations))
    jog = min(5 + aside / 3, 16.0) if aside > 0.3 else 0.0
    longest = max(width(s.words, SMALL, s.bold) for s in stations)
    return _Row(stations, places, turned, jog, _KNEE + jog + 4 + (longest if turned or not across else SMALL))


def _station(canvas: Canvas, row: _Row, s: Station, place: float, edge: float, out: int, across: bool) -> None:
    knee, end = edge + out * _KNEE, edge + out * (_KNEE + row.jog + 2)
    points = [(s.along, s.start), (s.along, knee), (place, edge + out * (_KNEE + row.jog)), (place, end)]
    if abs(place - s.along) <= 0.3:
        points = [points[0], (s.along, end)]
    if s.lined:
        canvas.polyline(points if across else [(b, a) for a, b in points], HAIR)
    at = end + out * (2 if row.turned or not across else SMALL / 2 + 1.5)
    if not across:
        canvas.text((at, place), s.words, anchor="start" if out > 0 else "end", bold=s.bold)
    elif row.turned:
        canvas.text((place, at), s.words, anchor="start" if out < 0 else "end", bold=s.bold, turned=True)
    else:
        canvas.text((place, at), s.words, bold=s.bold)


def _level_fits(stations: Sequence[Station]) -> bool:
    """Whether the numbers can stand level without being pushed far aside."""
    places = spread([s.along for s in stations], _needs(stations, True, False))
    return all(abs(p - s.along) <= 9 for p, s in zip(places, stations))


def _needs(stations: Sequence[Station], across: bool, turned: bool) -> list[float]:
    """The least distance between each number and the next."""
    if turned or not across:
        return [ROW] * (len(stations) - 1)
    wide = [width(s.words, SMALL, s.bold) for s in stations]
    return [(a + b) / 2 + 5 for a, b in pairwise(wide)]


def spread(wanted: Sequence[float], gaps: Sequence[float]) -> list[float]:
    """Places near those wanted (ascending) that keep `gaps[i]` between place i and the next; least squares, exactly.

    With the gaps taken off, it is fitting a rising sequence: neighbours that press on each other pool their mean.
    """
    offsets = [0.0]
    for gap in gaps:
        offsets.append(offsets[-1] + gap)
    pools: list[tuple[float, int]] = []
    for want, offset in zip(wanted, offsets):
        pools.append((want - offset, 1))
        while len(pools) > 1 and pools[-2][0] > pools[-1][0]:
            (a, m), (b, n) = pools[-2:]
            pools[-2:] = [((a * m + b * n) / (m + n), m + n)]
    level_places = [mean for mean, n in pools for _ in range(n)]
    return [p + o for p, o in zip(level_places, offsets)]
