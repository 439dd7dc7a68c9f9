"""What a drawing is once drawn."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Drawing:
    """SVG text for print. `width` and `height` are points; `title` is also in the SVG, for those who can't see it."""

    svg: str
    width: float
    height: float
    title: str
