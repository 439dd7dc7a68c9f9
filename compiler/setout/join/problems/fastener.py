"""Screws, brads and dowels."""

from __future__ import annotations

from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, note, warning
from setout.geometry import Face
from setout.join.ground import Ground
from setout.join.model import Contact
from setout.join.problems.paths import written
from setout.place.model import Board, Joint, Method


def comes_out(
    ground: Ground,
    joint: Joint,
    method: Method,
    driven: Board,
    second: Board,
    through: Fraction,
    wood: Fraction,
    least: Fraction,
) -> Diagnostic:
    return error(
        "rod385",
        f"Driven through `{driven.path}`, {method.kind} would come out of `{second.path}`",
        method.span,
        f"{ground.fine(through)} and {ground.fine(wood)} of wood; the shortest that holds is {ground.say(least)}",
        Label(driven.head, "driven through this"),
        Label(second.head, "into this"),
        help=f"drive them the other way (`through {written(joint, second)}`), or glue this joint",
    )


def dowel_finds_no_room(ground: Ground, method: Method, a: Board, b: Board, length: Fraction) -> Diagnostic:
    return error(
        "rod385",
        f"A dowel {ground.say(length)} long would come out of `{a.path}` or `{b.path}`",
        method.span,
        "too little wood for the holes",
        Label(a.head, "drilled here"),
        Label(b.head, "and here"),
        help="use screws or glue for this joint",
    )


def none_long_enough(
    ground: Ground, method: Method, driven: Board, through: Fraction, longest: Fraction, wall: bool = False
) -> Diagnostic:
    """`wall`: into a wall or the floor, where there is no other way round and nothing but screws."""
    what = method.kind
    other = "drive them the other way (`through …`), or use pockets or dowels"
    thinner = f"fasten a thinner part to the room (a cleat), and `{driven.name}` to that"
    return error(
        "rod386",
        f"No {what} are long enough to go through `{driven.path}` and hold",
        method.span,
        f"{ground.say(through)} to go through; the longest on sale are {ground.say(longest)}",
        Label(driven.head, "driven through this"),
        help=thinner if wall else other,
    )


def too_narrow(ground: Ground, method: Method, a: Board, b: Board, contact: Contact) -> Diagnostic:
    sizes = sorted(contact.area.size(k) for k in range(3) if k != contact.face_a.axis)
    return warning(
        "rod387",
        f"`{a.path}` and `{b.path}` meet in too little for {method.kind}",
        method.span,
        f"{ground.say(sizes[1])} x {ground.say(sizes[0])}: none are counted here",
        Label(a.head),
        Label(b.head),
        help="move the parts so that more of them meets, or use glue alone",
    )


def too_close(ground: Ground, method: Method, spacing: Fraction, closest: Fraction) -> Diagnostic:
    return error(
        "rod388",
        f"With {method.kind} every {ground.say(spacing)} the wood would split",
        method.span,
        f"at least {ground.say(closest)} apart",
        help="`every` says how far apart they are at most",
    )


def too_many(ground: Ground, method: Method, length: Fraction, most: Fraction) -> Diagnostic:
    return error(
        "rod388",
        f"More than {most} {method.kind} in one contact",
        method.span,
        f"{ground.say(length)} long",
        help="set them farther apart (`every …`), or check the sizes of the parts",
    )


def through_neither(joint: Joint, method: Method, a: Board, b: Board) -> Diagnostic:
    return error(
        "rod389",
        f"The {method.kind} between `{a.path}` and `{b.path}` can't go through another part",
        method.span,
        f"`through` takes `{written(joint, a)}` or `{written(joint, b)}` here",
        Label(a.head),
        Label(b.head),
        help="split the joint, so that each says what its screws go through",
    )


def no_studs_here(method: Method, a: Board, b: Board) -> Diagnostic:
    return error(
        "rod396",
        f"`{a.path}` meets `{b.path}` here, not a wall: there are no studs",
        method.span,
        "`into studs` is for joints to the room",
        help="leave out `into studs`, or join to `room.back`",
    )


def good_face_pierced(
    joint: Joint, method: Method, driven: Board, second: Board, face: Face, turnable: bool
) -> Diagnostic:
    """`turnable`: it can be driven through `second` just as well."""
    if method.kind == "pockets":
        help = f"write `pockets on {face.opposite.word}`, or leave `on` out: the face that isn't shown takes them then"
    else:
        other = f"drive them from the other side (`through {written(joint, second)}`), " if turnable else ""
        help = f"plug the heads, {other}or use pockets, dowels or a housing"
    return note(
        "rod399",
        f"{method.kind.capitalize()} show in the good face of `{driven.path}`",
        method.span,
        f"its {face.word} is the face to be seen",
        Label(driven.head, "its good face is pierced"),
        help=help,
    )
