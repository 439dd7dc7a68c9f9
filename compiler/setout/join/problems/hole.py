"""Holes, and what crosses in a board."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from setout.diagnostics import Diagnostic, Label, error, warning
from setout.join.ground import Ground
from setout.place.model import Board
from setout.source import Span

if TYPE_CHECKING:  # methods tell their problems through this folder
    from setout.join.methods.task import Way


def hole_in_the_air(board: Board, what: str, span: Span) -> Diagnostic:
    return error(
        "rod394",
        f"{what[0].upper()}{what[1:]} in `{board.path}` finds no wood",
        span,
        "off the board, or in a notch or housing of it",
        Label(board.head, "drilled here"),
        help="move it so that its middle lies on the board",
    )


def hole_comes_out(ground: Ground, board: Board, what: str, depth: Fraction, wood: Fraction, span: Span) -> Diagnostic:
    return error(
        "rod395",
        f"{what[0].upper()}{what[1:]}, {ground.say(depth)} deep, comes out of `{board.path}`",
        span,
        f"there is {ground.say(wood)} of wood",
        Label(board.head, "drilled here"),
        help="make it shallower, or leave the depth out to drill right through",
    )


def holes_cross(board: Board, first: Way, second: Way) -> Diagnostic:
    other = second.what if second.what != first.what else "another"
    others = [Label(second.span, other)] if second.span != first.span else []
    return warning(
        "rod390",
        f"Inside `{board.path}`, {first.what} and {other} hit each other",
        first.span,
        first.what if others else f"{first.what} and {other}",
        *others,
        Label(board.head, "in this board"),
        help="space one of them differently (`every …`), drill from the other face, or move a part",
    )
