"""Joints to the room."""

from __future__ import annotations

from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, warning
from setout.geometry import Face
from setout.join.ground import Ground
from setout.place.model import Board, Method


def not_on_a_wall(a: Board, method: Method) -> Diagnostic:
    return error(
        "rod391",
        f"`{a.path}` can't be held to the room by {_method(method)}",
        method.span,
        "only screws hold to a wall or floor",
        Label(a.head),
        help="write `screws into studs` for a wall, `screws` for the floor",
    )


def no_stud_behind(ground: Ground, method: Method, a: Board, spacing: Fraction, first: Fraction) -> Diagnostic:
    return warning(
        "rod392",
        f"There is no stud behind `{a.path}`",
        method.span,
        f"studs stand every {ground.say(spacing)}, the first {ground.say(first)} from the left",
        Label(a.head, "ends between two studs"),
        help=f"make `{a.name}` long enough to reach a stud, or move it",
    )


def wall_without_studs(method: Method, a: Board, wall: Face) -> Diagnostic:
    return warning(
        "rod393",
        f"The screws of `{a.path}` go into the {wall.word} wall, and nothing says that there is wood behind",
        method.span,
        "drywall alone holds nothing",
        Label(a.head),
        help="write `screws into studs`",
    )


def heads_covered(method: Method, a: Board, cover: Board) -> Diagnostic:
    return warning(
        "rod358",
        f"The wall screws of `{a.path}` can't be driven: `{cover.path}` is in front of their heads",
        method.span,
        "all of their places are covered",
        Label(a.head, "driven through this"),
        Label(cover.head, "lies over it"),
        help=f"join `{cover.name}` flat to `{a.name}`, and they go through both, or move it away from the studs",
    )


def one_stud_screw(a: Board) -> Diagnostic:
    return warning(
        "rod398",
        f"One single screw holds `{a.path}` to the wall: it can turn",
        a.head,
        "reaches one stud",
        help=f"make `{a.name}` long enough to reach a second stud, or move it; or stand what it carries on the floor",
    )


def _method(method: Method) -> str:
    return f"a {method.kind}" if method.kind in ("dado", "groove", "rabbet") else method.kind
