"""Notches, cut-outs, holes and mitres."""

from __future__ import annotations

from fractions import Fraction

from setout.diagnostics import Diagnostic, error
from setout.geometry import Axis, Box, Face
from setout.place.problems.words import amount
from setout.resolve.model import SpanDef
from setout.source import Span
from setout.units import Style


def feature_off_board(
    style: Style, name: str, kind: str, board: Box, span: SpanDef, low: Fraction, high: Fraction
) -> Diagnostic:
    word = _KINDS[kind]
    if low >= high:
        return error(
            "rod280",
            f"The {word} in `{name}` cuts nothing",
            span.span,
            f"its two ends are the wrong way round along {span.axis.word}",
            help="say the lower end first",
        )
    past = [
        f"{amount(style, by)} past the {Face(span.axis, sign).word}"
        for sign, by in ((-1, board.lo[span.axis] - low), (1, high - board.hi[span.axis]))
        if by > 0
    ]
    return error(
        "rod280",
        f"The {word} reaches out of `{name}`",
        span.span,
        " and ".join(past),
        help=f"the board is {amount(style, board.size(span.axis))} {span.axis.word}; {_FACES}",
    )


def notch_inside(name: str, at: Span) -> Diagnostic:
    return error(
        "rod281",
        f"This notch in `{name}` reaches no edge",
        at,
        "it lies inside the board",
        help="a hole inside the board is a `cutout`; a notch starts at an edge",
    )


def notch_right_across(name: str, at: Span) -> Diagnostic:
    return error(
        "rod282",
        f"This notch goes right across `{name}`",
        at,
        "it would cut the board in two, or shorter",
        help="make the board shorter instead, or leave something standing beside the notch",
    )


def cutout_at_edge(name: str, face: Face, at: Span) -> Diagnostic:
    return error(
        "rod283",
        f"This cut-out reaches the {face.word} of `{name}`",
        at,
        "it is open there",
        help="say `notch` for what is open at an edge",
    )


def hole_off_board(style: Style, name: str, axis: Axis, centre: Fraction, size: Fraction, at: Span) -> Diagnostic:
    return error(
        "rod284",
        f"This hole breaks out of `{name}`",
        at,
        f"its middle is {amount(style, centre)} from the {Face(axis, -1).word} of {amount(style, size)} {axis.word}",
        help=f"half the hole's diameter has to stay inside; {_FACES}",
    )


def hole_too_deep(style: Style, name: str, depth: Fraction, size: Fraction, at: Span) -> Diagnostic:
    return error(
        "rod285",
        f"This hole is deeper than `{name}`",
        at,
        f"{amount(style, depth)} into {amount(style, size)}",
        help="leave `depth` out for a hole right through",
    )


def no_such_mitre(name: str, angle: Fraction, at: Span) -> Diagnostic:
    return error(
        "rod286",
        f"`{name}` can't be mitred so",
        at,
        f"{angle} degrees from square",
        help="an angle lies between 0 and 90; a square frame has 45",
    )


_FACES = "face words mean the part's own faces here"
_KINDS = {"notch": "notch", "cutout": "cut-out"}
