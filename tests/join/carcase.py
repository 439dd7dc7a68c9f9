"""A plain open box with shelves, as `place` would set it: parts stop at shoulders."""

from __future__ import annotations

from fractions import Fraction

from joinscenes import board, frac

from setout.place.model import Board


def carcase(wide, high, deep, thick, back, shelves: int = 1, toe=3) -> list[Board]:
    """Sides full height and depth; bottom and shelves between them, in front of a back between the sides."""
    w, h, d, t, b, toe = map(frac, (wide, high, deep, thick, back, toe))
    inner, front = (t, w - t), (0, d - b)
    boards = [
        board("left", (0, t), (0, h), (0, d), thick="wide", show="left"),
        board("right", (w - t, w), (0, h), (0, d), thick="wide", show="right"),
        board("bottom", inner, (toe, toe + t), front, thick="high", show="top"),
        board("back", inner, (toe, h), (d - b, d), thick="deep", show="front"),
    ]
    clear = (h - toe - t - shelves * t) / (shelves + 1)
    for n in range(shelves):
        low = toe + t + clear * (n + 1) + t * n
        boards.append(board(f"shelf.{n + 1}", inner, (low, low + t), front, thick="high", show="top"))
    return boards


def shelf_names(shelves: int) -> tuple[str, ...]:
    return tuple(f"shelf.{n + 1}" for n in range(shelves))


def half(value) -> Fraction:
    return Fraction(value) / 2
