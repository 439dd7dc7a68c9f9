"""What stocks weigh and carry, banding, and boxes in the room."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error
from setout.geometry import Face
from setout.read import model as r
from setout.resolve.suggest import nearest
from setout.source import Span
from setout.units import Style, said, say

__all__ = [
    "band_on_broad_face",
    "box_not_in_room",
    "box_outside",
    "box_span",
    "no_edging",
    "odd_doorway",
    "odd_number_of",
    "odd_strength",
    "species_and_panel",
    "unknown_wood",
]


def unknown_wood(clause: r.StockClause, said: str, known: Sequence[str]) -> Diagnostic:
    near = nearest(said, known)
    listed = ", ".join(f'"{name}"' for name in (near or known[:8]))
    what = "wood" if clause.key == "species" else "kind of sheet"
    return error(
        "rod580",
        f"No {what} in the table is called `{said}`",
        clause.span,
        "not known",
        help=f"{'did you mean' if near else 'there are'} {listed}{'?' if near else ' …'} "
        f"`setout practice {clause.key}` lists them all; or say `density` and `stiffness` yourself",
    )


def species_and_panel(span: Span, other: Span) -> Diagnostic:
    return error(
        "rod581",
        "Solid wood has a species, a sheet is of a kind: not both",
        span,
        "and this too",
        Label(other, "this"),
        help="keep `species` for solid wood, `panel` for plywood, MDF and the like",
    )


def odd_strength(clause: r.StockClause, metric: bool, least: Fraction, most: Fraction) -> Diagnostic:
    unit = {"density": ("lb/ft3", "kg/m3"), "stiffness": ("psi", "N/mm2")}[clause.key][metric]
    return error(
        "rod582",
        f"No board has this {clause.key}",
        clause.span,
        f"it is in {unit}, in a file of {'metric' if metric else 'inch'} units",
        help=f"between {float(least):.4g} and {float(most):.8g} {unit}; plywood has about "
        + {"density": "580" if metric else "36", "stiffness": "6600" if metric else "950000"}[clause.key],
    )


def no_edging(path: r.Path, defined: Span) -> Diagnostic:
    return error(
        "rod583",
        f"`{path.text}` is no edge banding",
        path.span,
        "its width, thickness and length aren't said",
        Label(defined, "defined here"),
        help=f'say how it is sold: `hardware {path.text} "birch edging" {{ edging 13/16 x 1/32 long 300 }}`',
    )


def band_on_broad_face(word: r.Name, part: str) -> Diagnostic:
    return error(
        "rod584",
        f"The {word.text} of `{part}` is a broad face: banding goes on edges",
        word.span,
        "not an edge",
        help="name edges: a level board's are left, right, front and back",
    )


def odd_number_of(span: Span, what: str, example: str) -> Diagnostic:
    return error("rod585", f"This is not {what}", span, help=f"write one plain number: {example}")


def odd_doorway(span: Span) -> Diagnostic:
    return error(
        "rod586",
        "A doorway has a width and a height, both above nothing",
        span,
        help="`door wide 30, high 78`: the smallest that it must come through",
    )


def box_span(span: Span, title: str) -> Diagnostic:
    return error(
        "rod587",
        f'Where "{title}" is, is said from the walls of the room',
        span,
        "this isn't",
        help="give a length and an end, or two ends: `wide 30 from left + 12`, `high from bottom to bottom + 80`",
    )


def box_not_in_room(title: str, span: Span, missing: Sequence[str]) -> Diagnostic:
    return error(
        "rod588",
        f'Nothing of the room is left for "{title}"',
        span,
        f"{' and '.join(missing)}: the one end is not before the other" if missing else "",
        help="count from the room's left, floor and front: `wide 30 from left + 12`",
    )


def box_outside(
    kind: str,
    title: str,
    span: r.SpanClause,
    face: Face,
    by: Fraction,
    size: Fraction,
    turned: str | None,
    style: Style,
) -> Diagnostic:
    """`face`: the wall that it passes by most; `turned`: the word with which the same `size` counts inward from it."""
    axis, wall = face.axis.word, face.word
    whole = by >= size
    return error(
        "rod189",
        f'`{kind} "{title}"` is {"outside" if whole else "partly outside"} the room',
        span.span,
        f"{said(by, style)} beyond the room's {wall}",
        help=f"write `{axis} {say(size, style)} {turned} {wall}`: `from` counts towards right, top and back, "
        "`to` towards left, bottom and front"
        if turned
        else f"let it end at the wall: `{axis} from … to {wall}`"
        if face.sign > 0
        else f"let it end at the wall: `{axis} from {wall} to …`",
    )
