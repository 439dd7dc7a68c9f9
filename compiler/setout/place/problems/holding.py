"""Assemblies: what they are placed in, and what stands in them."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, note
from setout.geometry import Axis, Face
from setout.place.problems.words import amount
from setout.resolve.model import AssemblyDef, MeasureDef, PlaceDef
from setout.source import Span
from setout.units import Style
from setout.values import Value


def place_unlike_gap(
    style: Style, name: str, axis: Axis, gap: Fraction, size: Fraction, at: Span, head: Span
) -> Diagnostic:
    return error(
        "rod262",
        f"`{name}` doesn't fill the space it is given",
        at,
        f"this leaves {amount(style, gap)}",
        Label(head, f"it is {amount(style, size)} {axis.word}"),
        help=f"place one end (`{axis.word} from ...`), or give the assembly the size of the gap as an argument",
    )


def outside(
    style: Style, path: str, holder: str, room: bool, stands: Sequence[tuple[Face, Fraction]], at: Span, around: Span
) -> Diagnostic:
    """`stands`: by how much it stands out at each face. `room`: the holder is the room, with its walls."""
    out = ", ".join(f"{amount(style, by)} at the {face.word}" for face, by in stands)
    faces = ", ".join(face.word for face, _ in stands)
    meant = f"; if it is meant to stand out, a part says `proud {faces}`"
    return error(
        "rod263",
        f"`{path}` stands out of {holder}",
        at,
        f"by {out}",
        Label(around, f"{holder} ends here"),
        help="move it or make it smaller" + ("" if room else meant),
    )


def no_size(axis: Axis, at: Span) -> Diagnostic:
    return error(
        "rod269",
        f"The job has no size along {axis.word}",
        at,
        "this needs one",
        help="say `size wide ..., high ..., deep ...` at the top level, or describe the `room` it goes into",
    )


def assembly_without_size(definition: AssemblyDef, missing: Sequence[Axis], placed: Span) -> Diagnostic:
    words = [axis.word for axis in missing]
    return error(
        "rod270",
        f"Assembly `{definition.name}` doesn't say how {' and how '.join(words)} it is",
        definition.head,
        "",
        Label(placed, "placed here, so that what stands around it counts on its size"),
        help=f"say all three in it: `size {', '.join(f'{axis.word} ...' for axis in Axis)}`",
    )


def not_a_quarter(degrees: Value, at: Span) -> Diagnostic:
    why = "hangs on a measure" if degrees.held else f"is {degrees.amount} degrees"
    return error(
        "rod271",
        "An assembly is turned by quarters",
        at,
        f"this {why}",
        help="write `turned 90`, `turned 180` or `turned 270` (clockwise from above)",
    )


def nested_too_deep(most: int, place: PlaceDef) -> Diagnostic:
    return error(
        "rod273",
        f"Assemblies stand in one another more than {most} deep",
        place.head,
        "here it goes too deep",
        help="place some of them side by side",
    )


def no_boards(unplaced: Sequence[str], at: Span | None) -> Diagnostic:
    if not unplaced:
        return error(
            "rod305",
            "This job has no boards",
            at,
            help="look at what `when` and `repeat` leave out",
        )
    named = ", ".join(f"`{name}`" for name in unplaced)
    return error(
        "rod305",
        f"{named} {'is' if len(unplaced) == 1 else 'are'} never placed; this job has no boards",
        at,
        "says how it is made, not where it stands",
        help=f"`place {unplaced[0]} {{ at left, bottom, back }}`",
    )


def never_placed(definition: AssemblyDef) -> Diagnostic:
    return note(
        "rod306",
        f"`{definition.name}` is never placed, so none of its boards is made",
        definition.head,
        help=f"`place {definition.name} {{ at left, bottom, back }}`, or take the assembly out",
    )


def nothing_hangs_on(measure: MeasureDef) -> Diagnostic:
    return note(
        "rod307",
        f"`{measure.name}` is to be measured, and nothing hangs on it",
        measure.span,
        help=f"let a size or a position go by it (`top at top - {measure.name}`), or take the measure out",
    )
