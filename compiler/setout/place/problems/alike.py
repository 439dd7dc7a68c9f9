"""Several alike, and too many of anything."""

from __future__ import annotations

from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error
from setout.geometry import Axis
from setout.place.problems.words import amount
from setout.source import Span
from setout.units import Style, inches_per


def repeat_does_not_fit(style: Style, name: str, n: int, size: Fraction, gap: Fraction, at: Span) -> Diagnostic:
    return error(
        "rod264",
        f"{n} of `{name}` don't fit",
        at,
        f"they take {amount(style, n * size)}, the gap is {amount(style, gap)}",
        help=f"{max(int(gap / size), 0)} at most stand in it, with nothing between them",
    )


def shelves_do_not_fit(
    style: Style, name: str, n: int, most: int, holes: Fraction, gap: Fraction, at: Span
) -> Diagnostic:
    return error(
        "rod264",
        f"{n} of `{name}` don't fit",
        at,
        f"the opening is {amount(style, gap)} high, with pin holes every {amount(style, holes)}",
        help=f"{most} at most stand in it, each at a hole of its own and clear of the next",
    )


def pins_too_far_apart(style: Style, name: str, holes: Fraction, gap: Fraction, at: Span, head: Span) -> Diagnostic:
    metric = not style.metric and holes.denominator == 1 and holes * inches_per("mm") < gap / 2
    ask = f"was `{holes}mm` meant?" if metric else "say a smaller one: pin holes are often `32mm` apart"
    return error(
        "rod272",
        f"Pin holes every {amount(style, holes)} are too far apart for `{name}`",
        at,
        f"the opening is {amount(style, gap)} high",
        Label(head, "these shelves come down to the next hole"),
        help=ask,
    )


def pitch_too_small(style: Style, name: str, pitch: Fraction, size: Fraction, at: Span) -> Diagnostic:
    return error(
        "rod265",
        f"`{name}` would stand in the next one",
        at,
        f"every {amount(style, pitch)}, but each is {amount(style, size)}",
        help="`every` counts from one low face to the next: it holds the thing and the opening after it",
    )


def too_many_members(name: str, n: int, most: int, at: Span) -> Diagnostic:
    return error(
        "rod266", f"{n} of `{name}` are too many", at, f"at most {most}", help="look at what this is counted from"
    )


def repeated_without_size(name: str, axis: Axis, at: Span) -> Diagnostic:
    return error(
        "rod267",
        f"`{name}` is repeated along {axis.word}, but how {axis.word} each is isn't said",
        at,
        "",
        help=f"give each its length, `{axis.word} 3-1/2`, or repeat it along another axis: `repeat 4 high between ...`",
    )


def too_large(most: int, at: Span | None) -> Diagnostic:
    return error(
        "rod268",
        "The job is too large",
        at,
        f"more than {most} boards, or far too many assemblies, notches or sizes",
        help="look for a count or a repeat that is larger than meant; else split the job into several specs",
    )


def too_many_measures(most: int, at: Span) -> Diagnostic:
    return error(
        "rod268",
        "The job is too large",
        at,
        f"more than {most} measures are still to be taken",
        help="split it into several specs",
    )
