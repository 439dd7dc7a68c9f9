"""What can't be reached from where it is written: places from constants, the room and the job from an assembly."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic, Label, error
from setout.read import model as r
from setout.resolve.problems.wording import listed
from setout.source import Span

__all__ = [
    "constant_placed",
    "default_inside",
    "let_loop",
    "loose_referred",
    "no_room",
    "outside_assembly",
    "room_in_assembly",
    "room_word",
]


def let_loop(names: Sequence[str], span: Span, others: Sequence[Span] = ()) -> Diagnostic:
    shown = [*names[:8], "…", names[-1]] if len(names) > 10 else names
    if len(names) == 2:
        return error(
            "rod178",
            f"`{names[0]}` is worked out from itself",
            span,
            "here",
            help="give it a value that doesn't come from its own",
        )
    return error(
        "rod178",
        "These are worked out from one another in a loop",
        span,
        " → ".join(shown),
        *(Label(other, "and here") for other in others[:8]),
        help=f"give one of {listed(list(dict.fromkeys(names)))} a value that doesn't come from the others",
    )


def constant_placed(path: r.Path) -> Diagnostic:
    return error(
        "rod179",
        "This value can't hang on where things stand",
        path.span,
        "its place is worked out later",
        help=f"write `{path.text}` where it is used; only sizes and places of parts may hang on places",
    )


def default_inside(path: r.Path, parameter: str) -> Diagnostic:
    own = path.text == parameter
    return error(
        "rod179",
        f"`{parameter}` can't be worked out from `{path.text}`",
        path.span,
        "that is itself" if own else "that is known only later",
        help="a parameter's default may use the parameters before it and what stands at the top level",
    )


def no_room(path: r.Path) -> Diagnostic:
    return error(
        "rod180",
        "There is no room",
        path.span,
        "its walls and sizes aren't known",
        help='say the space it goes into: `room "Study" { size wide 120, high 96, deep 130 }`',
    )


def room_word(path: r.Path) -> Diagnostic:
    return error(
        "rod181",
        f"`{path.text}` says nothing of the room" if len(path.parts) > 1 else "What of the room?",
        path.span,
        help="walls: `room.left`, `right`, `front`, `back`, `floor`, `ceiling`; sizes: `room.wide`, `high`, `deep`",
    )


def room_in_assembly(path: r.Path, assembly: str) -> Diagnostic:
    return error(
        "rod182",
        f"`{assembly}` doesn't know where in the room it stands",
        path.span,
        "a wall is known to the job alone",
        help="use the assembly's own faces here and place the assembly by the room; sizes (`room.wide`) may be used",
    )


def outside_assembly(path: r.Path, word: str, assembly: str) -> Diagnostic:
    return error(
        "rod182",
        f"`{word}` stands outside `{assembly}`",
        path.span,
        "an assembly sees only what it holds",
        help="give the assembly a parameter for what it needs, or move the part that needs it to the top level",
    )


def loose_referred(path: r.Path, name: str) -> Diagnostic:
    return error(
        "rod183",
        f"`{name}` is a loose part and has no place",
        path.span,
        "nothing can stop against it or be joined to it",
        help="say where it stands (`upright at left`, spans) instead of its `size`",
    )
