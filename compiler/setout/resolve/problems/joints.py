"""Joints and fitted hardware."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic, Label, error
from setout.geometry import Axis, Face
from setout.read import model as r
from setout.resolve.model import ThingPath
from setout.resolve.problems.wording import listed
from setout.source import Span

__all__ = [
    "face_in_joint",
    "inset_of_nothing",
    "joined_to_itself",
    "methods_at_odds",
    "methods_wanted",
    "row_out_of_face",
    "through_stranger",
    "wall_enters",
]


def methods_wanted(joint: r.JointStatement) -> Diagnostic:
    a, b = joint.entering[0].text, joint.receiving[0].text
    return error(
        "rod230",
        "This joint doesn't say how it holds",
        joint.entering[0].span.to(joint.receiving[-1].span),
        help=f"write how: `{{ pockets on bottom }}`, `{{ dado depth 1/4 }}`; what only lies there: `{a} rests on {b}`",
    )


def methods_at_odds(first: r.Method, second: r.Method) -> Diagnostic:
    both_screw = {first.kind, second.kind} == {"pockets", "screws"}
    why = "both drive screws through the same contact" if both_screw else "both let the one part into the other"
    return error(
        "rod231",
        f"`{first.kind}` and `{second.kind}` in one joint",
        second.span,
        why,
        Label(first.span, "and this"),
        help="keep one of them; parts that are joined in two ways get two joints",
    )


def through_stranger(path: r.Path, joined: Sequence[str]) -> Diagnostic:
    return error(
        "rod233",
        f"`{path.text}` isn't in this joint",
        path.span,
        "screws are driven through one of the joined parts",
        help=f"name one of {listed(joined, 'or')}" if joined else "name one of the joined parts",
    )


def wall_enters(path: r.Path) -> Diagnostic:
    return error(
        "rod235",
        "A wall of the room can't be the part that enters",
        path.span,
        help=f"name it behind `to`: `joint cleat to {path.text} {{ … }}`",
    )


def joined_to_itself(thing: ThingPath, first: Span, second: Span) -> Diagnostic:
    name = ".".join(thing)
    return error(
        "rod236",
        f"`{name}` stands in this twice",
        second,
        "and here again",
        Label(first, "here"),
        help="name two different parts",
    )


def face_in_joint(path: r.Path) -> Diagnostic:
    thing = ".".join(path.parts[:-1])
    return error(
        "rod237",
        "A joint names parts, not faces",
        path.span,
        "where they touch is worked out",
        help=f"write `{thing}`; which face is drilled stands with the method: `pockets on {path.parts[-1]}`",
    )


def row_out_of_face(name: r.Name, face: Face, others: Sequence[Axis]) -> Diagnostic:
    return error(
        "rod240",
        f"The {face.word} has no room for a row along {name.text}",
        name.span,
        f"the {face.word} looks along {name.text}",
        help=f"write `row along {others[0].word}` or `row along {others[1].word}`",
    )


def inset_of_nothing(span: Span) -> Diagnostic:
    return error(
        "rod241",
        "Inset from what?",
        span,
        "nothing is set out along an edge here",
        help="`inset` goes with `at corners` or `row along wide`",
    )
