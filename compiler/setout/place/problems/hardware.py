"""Hardware that is set out on a board."""

from __future__ import annotations

from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, warning
from setout.geometry import Axis
from setout.place.problems.words import amount
from setout.resolve.model import Hardware
from setout.source import Span
from setout.units import Style, exact, inches_per, said


def layout_unlike_count(hardware: Hardware, n: int, layout: str, want: int, at: Span) -> Diagnostic:
    where = {"corners": "`at corners`", "centred": "`centred`"}[layout]
    return error(
        "rod290",
        f"{where} takes {want}, not {n}",
        at,
        f"{n} of `{hardware.name}`",
        help=f"fit {want}, or set them out with `row along wide`",
    )


def odd_load(name: str, at: Span) -> Diagnostic:
    return error(
        "rod589",
        f"`{name}` can't be meant to carry this",
        at,
        "",
        help="a load is in lb/ft2 (in a metric file kg/m2), 0 or more: `load 40` is a shelf of things, `load 50` one"
        " of books",
    )


def inset_missing(hardware: Hardware, at: Span) -> Diagnostic:
    return error(
        "rod291",
        f"How far in from the corners does `{hardware.name}` sit?",
        at,
        "",
        help="add `inset 2`, measured to the middle from both edges",
    )


def inset_too_large(
    style: Style, hardware: Hardware, path: str, axis: Axis, inset: Fraction, size: Fraction, at: Span
) -> Diagnostic:
    return error(
        "rod292",
        f"`{hardware.name}` can't sit {amount(style, inset)} in on `{path}`",
        at,
        f"it is {amount(style, size)} {axis.word}",
        help="an inset of less than half the board",
    )


def banding_too_narrow(style: Style, path: str, edge: Fraction, tape: Hardware, at: Span) -> Diagnostic:
    assert tape.edging is not None
    width, thick = (_fine(style, size) for size in (tape.edging.width, edge))
    return warning(
        "rod287",
        f"`{tape.name}` is too narrow for the edges of `{path}`",
        at,
        f"they are {thick} wide",
        Label(tape.span, f"{width} wide"),
        help="banding is bought a little wider than the board is thick, and trimmed flush; or band with another",
    )


def _fine(style: Style, value: Fraction) -> str:
    """So that two sizes that differ by less than the mark don't read alike."""
    return said(value, Style(True, inches_per("mm") / 10)) if style.metric else f"{exact(value)} in"
