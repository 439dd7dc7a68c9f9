"""Pocket holes."""

from __future__ import annotations

from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, warning
from setout.geometry import Face
from setout.join.ground import Ground
from setout.join.problems.paths import written
from setout.place.model import Board, Joint, Method


def pocket_face(method: Method, a: Board) -> Diagnostic:
    low, high = Face(a.thick, -1).word, Face(a.thick, 1).word
    said = method.face
    return error(
        "rod380",
        f"The {said.word} of `{a.path}` takes no pockets" if said else f"Which face of `{a.path}` takes the pockets?",
        method.span,
        f"{said.word} is an edge of it" if said else "no face is said, and neither is shown",
        Label(a.head, f"its broad faces are {low} and {high}"),
        help=f"write `pockets on {low}` or `pockets on {high}`: the one that won't be seen",
    )


def pockets_in_a_flat(joint: Joint, method: Method, a: Board, b: Board) -> Diagnostic:
    other_way = f"joint {written(joint, b)} to {written(joint, a)} …"
    return error(
        "rod381",
        f"`{a.path}` lies with its face against `{b.path}`, and pocket holes come out of an edge",
        method.span,
        "no pocket hole can reach this contact",
        Label(a.head, "the part that is named first is drilled"),
        Label(b.head, "it lies against this one"),
        help=f"name the part first whose edge meets the other (`{other_way}`), or use screws",
    )


def no_pockets_in(ground: Ground, method: Method, a: Board, thick: Fraction) -> Diagnostic:
    least, most = (ground.say(ground.practice.value(f"pocket_{end}")) for end in ("thinnest", "thickest"))
    return error(
        "rod382",
        f"`{a.path}` is {ground.say(thick)}: no board for pocket holes",
        method.span,
        f"they are drilled in boards from {least} to {most}",
        Label(a.head, "drilled here"),
        help="use screws, brads or a housing for this joint",
    )


def pocket_comes_out(
    ground: Ground, method: Method, a: Board, b: Board, screw: Fraction, reach: Fraction, wood: Fraction
) -> Diagnostic:
    return error(
        "rod383",
        f"The pocket screws of `{a.path}` would come out of `{b.path}`",
        method.span,
        f"a {ground.say(screw)} screw reaches {ground.fine(reach)} deep; `{b.name}` has {ground.fine(wood)}",
        Label(a.head, "drilled here"),
        Label(b.head, "they would come out here"),
        help=f"join the other way round, with pockets in `{b.name}`, or use glue and brads, or a thicker `{b.name}`",
    )


def pocket_tip_near(
    ground: Ground, method: Method, a: Board, b: Board, screw: Fraction, reach: Fraction, wood: Fraction
) -> Diagnostic:
    return warning(
        "rod384",
        f"The pocket screws of `{a.path}` end {ground.fine(wood - reach)} short of the far face of `{b.path}`",
        method.span,
        f"a {ground.say(screw)} screw reaches {ground.fine(reach)} deep; `{b.name}` has {ground.fine(wood)}",
        Label(a.head, "drilled here"),
        Label(b.head, "they may show here"),
        help=f"try one in scrap first; {ground.say(ground.practice.value('screw_tip_margin'))} should be left",
    )
