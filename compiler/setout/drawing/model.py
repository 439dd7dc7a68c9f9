"""What a drawing is once drawn."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Drawing:
    """SVG text for print. `width` and `height` are points; `title` is also in the SVG, for those who can't see it.
    `aside` is how much of what belongs on it stood beside it for want of room."""

    svg: str
    width: float
    height: float
    title: str
    aside: int = 0
