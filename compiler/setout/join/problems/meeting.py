"""Where parts touch that shouldn't, and don't where they should."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, note, warning
from setout.geometry import Axis, Box, Face
from setout.join.ground import Ground
from setout.join.problems.paths import seen_together
from setout.join.solid import Meeting
from setout.place.model import Board, Joint, Rest, Side


def parts_overlap(ground: Ground, a: Board, b: Board, shared: Box) -> Diagnostic:
    axis = min(Axis, key=lambda k: shared.size(k))
    by = ground.say(shared.size(axis))
    return error(
        "rod350",
        f"`{a.path}` and `{b.path}` share the same wood, {by} of it on {axis.word}",
        b.head,
        f"runs {by} into `{a.name}`",
        Label(a.head, "this is there already"),
        help="let one stop at the other (`between`, `on`, `against`), notch it, or join them with a dado or rabbet",
    )


def parts_apart(
    ground: Ground, entering: Side, receiving: Side, a: Board, b: Board, gaps: Sequence[tuple[Face, Fraction]]
) -> Diagnostic:
    if not gaps:
        return error(
            "rod351",
            f"`{a.path}` and `{b.path}` meet in no face, so nothing can join them",
            entering.span,
            f"meets `{b.name}` along an edge or across a notch only",
            Label(receiving.span, "this one"),
            help="move one of them so that a face of each lies on the other, or leave this pair out of the joint",
        )
    told = [f"its {face.word} is {ground.say(gap)} short of `{b.name}`'s {face.opposite.word}" for face, gap in gaps]
    return error(
        "rod351",
        f"`{a.path}` doesn't touch `{b.path}`: {ground.say(gaps[0][1])} apart on {gaps[0][0].axis.word}",
        entering.span,
        " and ".join(told),
        Label(receiving.span, "this one"),
        help=f"let `{a.name}` end at `{b.name}` (`between`, `on`, `against`), or leave this pair out of the joint",
    )


def nothing_touches(joint: Joint, entering: Side, receiving: Side) -> Diagnostic:
    return error(
        "rod352",
        f"Nothing of `{entering.text}` touches anything of `{receiving.text}`",
        entering.span,
        f"{len(entering.boards)} {_boards(len(entering.boards))} looked at",
        Label(receiving.span, f"{len(receiving.boards)} {_boards(len(receiving.boards))} looked at"),
        help="check where both are placed, or leave this pair out of the joint",
    )


def only_leaves_nothing(joint: Joint, entering: Side, receiving: Side) -> Diagnostic:
    return error(
        "rod353",
        f"`{entering.text}` and `{receiving.text}` touch, but not in a {joint.only} joint",
        joint.span,
        f"`only {joint.only}` leaves no contact",
        Label(entering.span),
        Label(receiving.span),
        help="butt: an edge against a face; lap: a face against an edge; face: two faces. Correct the `only`",
    )


def touch_unfastened(ground: Ground, a: Board, b: Board, meeting: Meeting) -> Diagnostic:
    sizes = sorted(meeting.area.size(k) for k in range(3) if k != meeting.face.axis)
    one, other, where = seen_together(ground, a, b)
    upper, lower = (one, other) if meeting.face == Face(Axis.HIGH, -1) else (other, one)
    return note(
        "rod354",
        f"`{a.path}` and `{b.path}` touch, and nothing is said of how they are joined",
        b.head,
        f"lies against `{a.name}` over {ground.say(sizes[1])} x {ground.say(sizes[0])}",
        Label(a.head, "this one"),
        help=f"write `joint {other} to {one} {{ … }}`, or `{upper} rests on {lower}` if it is to stay loose{where}",
    )


def hangs_in_the_air(
    ground: Ground, board: Board, count: int, near: Board | None, axis: Axis | None, gap: Fraction
) -> Diagnostic:
    """`count` boards that touch each other alone, `board` the first; `near` the nearest other, `gap` away on `axis`."""
    whole = "" if count == 1 else f" and what it is joined to, {count} boards in all,"
    what = f"`{board.path}`{whole} {'touches' if count == 1 else 'touch'} nothing"
    if near is None or axis is None:
        says = "no wall, no floor, no other board"
    elif gap:
        says = f"the nearest is `{near.path}`, {ground.say(gap)} away on {axis.word}"
    else:
        says = f"meets `{near.path}` along an edge only"
    return warning(
        "rod397",
        f"{what}: it would hang in the air" if count == 1 else f"{what}: they would hang in the air",
        board.head,
        says,
        help="let it reach what holds it (`between`, `on`, `against`), or stand it on the floor or at a wall",
    )


def too_intricate(a: Board, b: Board) -> Diagnostic:
    return error(
        "rod355",
        f"`{a.path}` and `{b.path}` are cut up too finely to work out how they meet",
        a.head,
        "too many notches and cut-outs",
        Label(b.head, "against this one"),
        help="leave out the notches that don't matter to how the boards meet",
    )


def too_many_touch(ground: Ground) -> Diagnostic:
    return error(
        "rod355",
        f"So many of the {len(ground.scene.boards)} boards touch each other that the job can't be worked out",
        None,
        help="boards in one place usually come of a `repeat` with no distance between its members",
    )


def rests_on_nothing(rest: Rest) -> Diagnostic:
    upper, lower = rest.upper[0], rest.lower[0]
    others = " or what belongs with it" if len(rest.lower) > 1 else ""
    return error(
        "rod357",
        f"`{upper}` doesn't touch `{lower}`{others}, so it can't rest on it",
        rest.span,
        "nothing touches here",
        help="check where both are placed (`on`, `under`), or take the line away",
    )


def not_at_wall(ground: Ground, entering: Side, receiving: Side, between: tuple[Board, Board] | None) -> Diagnostic:
    """`between`: a rail of the entering side, and the panel of its assembly between it and the wall."""
    assert receiving.wall is not None and ground.scene.room is not None
    wall = receiving.wall
    at = ground.scene.room.face(wall)
    boards = [ground.scene.boards[path] for path in entering.boards if path in ground.scene.boards]
    gap = min(abs(at - board.box.face(wall)) for board in boards)
    return error(
        "rod356",
        f"`{entering.text}` doesn't touch `{receiving.text}`",
        entering.span,
        f"ends {ground.say(gap)} from it",
        Label(receiving.span, "this side of the room"),
        help=f"join it flat to the panel behind it, `joint {between[0].name} to {between[1].name} {{ glue }}`: "
        "the screws go through both then"
        if between
        else f"place it `at {wall.word}` of the room, or join it to the part that it does touch",
    )


def _boards(count: int) -> str:
    return "board" if count == 1 else "boards"
