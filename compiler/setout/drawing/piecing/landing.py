"""Where other boards come to stand on the face seen: the lines to pencil."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from setout.drawing.ink.room import Taken
from setout.drawing.ink.svg import CHAIN, Canvas
from setout.drawing.piecing.frame import Frame
from setout.geometry import Box, Face


@dataclass(frozen=True)
class Landed:
    """`area` of the board's `face` that another board covers, called `words`."""

    face: Face
    area: Box
    words: str


def draw_outlines(canvas: Canvas, frame: Frame, landed: Iterable[Landed], taken: Taken) -> None:
    """Chain lines across the face. None along the board's own edges, and each once."""
    lines: dict[tuple, None] = {}
    for one in landed:
        left, low, right, high = frame.lie.rect(one.area)
        lines.update({((x, low), (x, high)): None for x in (left, right) if 0 < x < frame.lie.wide})
        lines.update({((left, y), (right, y)): None for y in (low, high) if 0 < y < frame.lie.high})
    for a, b in lines:
        canvas.line(frame.at(*a), frame.at(*b), CHAIN)
        taken.line(frame.at(*a), frame.at(*b))
