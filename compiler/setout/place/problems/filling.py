"""What openings hold."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error
from setout.geometry import Axis, Face
from setout.place.problems.words import amount
from setout.resolve.model import Hardware
from setout.source import Span
from setout.units import Style

Sizes = tuple[Fraction, Fraction, Fraction]


def slide_longer_than_bay(
    style: Style, bay: str, hardware: Hardware, length: Fraction, deep: Fraction, at: Span
) -> Diagnostic:
    return error(
        "rod293",
        f"The slides are longer than `{bay}` is deep",
        at,
        f"it is {amount(style, deep)} deep",
        Label(hardware.span, f"these are {amount(style, length)} long"),
        help="name shorter slides; of several, `slides slide16, slide18`, the longest that fits is taken",
    )


def drawer_too_deep(
    style: Style, path: str, needed: Fraction, deep: Fraction, length: Fraction, hardware: Hardware, at: Span
) -> Diagnostic:
    return error(
        "rod304",
        f"`{path}` is deeper than its bay",
        at,
        f"front, setback and slide need {amount(style, needed)} of {amount(style, deep)}",
        Label(hardware.span, f"the box is as long as its slides, {amount(style, length)}"),
        help=f"name slides at least {amount(style, needed - deep)} shorter, or make the opening deeper",
    )


def heights_left_over(style: Style, bay: str, short: Fraction, high: Fraction, at: Span) -> Diagnostic:
    too = "more" if short < 0 else "less"
    mend = "make a front lower" if short < 0 else "make a front higher"
    return error(
        "rod294",
        f"Fronts and gaps make {amount(style, abs(short))} {too} than `{bay}` has",
        at,
        f"the opening is {amount(style, high)} high",
        help=f"{mend}, or write `rest` for one of the heights: it takes what is left",
    )


def drawer_too_low(
    style: Style, path: str, high: Fraction, slide: Fraction, hardware: Hardware | None, at: Span
) -> Diagnostic:
    others = (Label(hardware.span, f"these are {amount(style, slide)} high"),) if hardware is not None else ()
    return error(
        "rod295",
        f"The box of `{path}` is too low for its slides",
        at,
        f"it comes out {amount(style, high)} high",
        *others,
        help=f"its front must be at least {amount(style, slide - high)} higher",
    )


def nothing_for_slides(bay: str, face: Face, hardware: Hardware, at: Span) -> Diagnostic:
    return error(
        "rod296",
        f"There is nothing at the {face.word} of `{bay}` to screw `{hardware.name}` to",
        at,
        "",
        help="the opening must reach to a case side or a divider that is as deep as the slides are long",
    )


def nothing_for_hinges(bay: str, face: Face, hardware: Hardware, at: Span) -> Diagnostic:
    return error(
        "rod296",
        f"There is nothing at the {face.word} of `{bay}` to hang the door on",
        at,
        f"`{hardware.name}` is screwed to the side of the opening",
        help="the opening must reach to a case side or a divider",
    )


def nothing_for_pins(bay: str, face: Face, hardware: Hardware, at: Span) -> Diagnostic:
    return error(
        "rod296",
        f"There is nothing at the {face.word} of `{bay}` to bore for `{hardware.name}`",
        at,
        "",
        help="the opening must reach to a case side or a divider",
    )


def packers_wanted(style: Style, bay: str, side: str, gap: Fraction, at: Span) -> Diagnostic:
    return error(
        "rod297",
        f"`{side}` stands back from the edge of `{bay}`",
        at,
        f"by {amount(style, gap)}, and slides must sit flush with the opening",
        help="say what the packers behind the slides are cut from: `packers of ply`",
    )


def fronts_collide(style: Style, a: str, b: str, by: Fraction, at: Span, other: Span) -> Diagnostic:
    how = f"they overlap by {amount(style, by)}" if by else "there is no gap between them"
    return error(
        "rod298",
        f"`{a}` and `{b}` collide",
        at,
        how,
        *([Label(other, "the other")] if other != at else []),
        help="let them overlay less, or move the cabinets apart: fronts want about 1/8 in (3 mm) between them",
    )


def front_hits(style: Style, front: str, board: str, shared: Sizes, at: Span, head: Span) -> Diagnostic:
    wide, high, deep = (amount(style, size) for size in shared)
    return error(
        "rod298",
        f"`{front}` collides with `{board}`",
        at,
        f"they share {wide} x {high} x {deep}",
        Label(head, "in the way"),
        help="let the fronts overlay less, end the opening at that part, or move it back",
    )


def doors_foul(style: Style, a: str, b: str, by: Fraction, at: Span, other: Span) -> Diagnostic:
    how = f"they overlap by {amount(style, by)}" if by else "there is no gap between them"
    return error(
        "rod299",
        f"The doors `{a}` and `{b}` foul each other",
        at,
        how,
        *([Label(other, "the other")] if other != at else []),
        help="let them overlay less than half the board between them, or set the cabinets apart",
    )


def item_too_large(
    style: Style,
    title: str,
    bay: str,
    short: Sequence[tuple[Axis, Fraction]],
    size: Sizes,
    opening: Sizes,
    clear: Fraction,
    at: Span,
) -> Diagnostic:
    ways = ", ".join(
        f"{axis.word} by {amount(style, by)} "
        f"(it is {amount(style, size[axis])}, the opening {amount(style, opening[axis])})"
        for axis, by in short
    )
    around = f" with {amount(style, clear)} clear" if clear else ""
    return error(
        "rod300",
        f"“{title}” doesn't go into `{bay}`{around}",
        at,
        f"too large: {ways}",
        help="make the opening larger; the sizes are wide x deep x high",
    )


def opening_not_clear(
    style: Style, bay: str, board: str, shared: Sizes, ends: tuple[str, str, str] | None, at: Span, head: Span
) -> Diagnostic:
    """`ends`: the axis on which the opening is best cut short, and what it then goes from and to."""
    wide, high, deep = (amount(style, size) for size in shared)
    cut = f"`{ends[0]} from {ends[1]} to {ends[2]}`" if ends else ""
    return error(
        "rod301",
        f"`{board}` stands in the opening `{bay}`",
        at,
        f"{wide} x {high} x {deep} of it",
        Label(head, "this part"),
        help=f"end the opening at that part: {cut}" if ends else "move the one or the other",
    )


def slide_too_weak(hardware: Hardware | None, load: Fraction, most: Fraction, metric: bool, at: Span) -> Diagnostic:
    unit = "kg" if metric else "lb"
    assert hardware is not None
    return error(
        "rod302",
        f"`{hardware.name}` is too weak for {float(load):g} {unit}",
        at,
        "",
        Label(hardware.span, f"a pair carries {float(most):g} {unit}"),
        help="name stronger slides, or spread what the drawer holds over two",
    )
